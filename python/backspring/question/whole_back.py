"""Flush is a line: the whole back against open, and readings to fit for that keep it flat."""

from __future__ import annotations

from typing import Any, NamedTuple

from backspring import _core

_ENDS = ("least_mm", "least_at_mm", "greatest_mm", "greatest_at_mm", "per_dial_mm")


class WholeBack(NamedTuple):
    """The back from the middle pin to the spring's end, pins in, against open.

    `back` holds least and greatest by position, `targets` the readings at the dial that leave
    nothing low, or keep it nowhere far from open.
    """

    back: _core.WholeBack
    targets: _core.FlushTargets

    @property
    def positions(self) -> dict[str, _core.BackAlong]:
        """Positions the blade has besides open, by name."""
        both = {"half_stop": self.back.half_stop, "closed": self.back.closed}
        return {name: each for name, each in both.items() if each is not None}

    @property
    def per_dial_mm(self) -> float | None:
        """Reading gained per mm the dial is set ahead, where it gains most [mm/mm]."""
        gains = (each.per_dial_mm for each in self.positions.values())
        return max(gains, key=abs, default=None)

    def to_dict(self) -> dict[str, Any]:
        """Results as plain data, ready for JSON; every name carries its unit."""
        targets = self.targets
        return {
            **{
                position: {name: getattr(each, name) for name in _ENDS}
                for position, each in self.positions.items()
            },
            "nowhere_low_target_mm": targets.nowhere_low_mm,
            "flattest_target_mm": targets.flattest_mm,
            "flattest_off_mm": targets.flattest_off_mm,
            "flattest_dial_mm": targets.flattest_dial_mm,
            "per_dial_mm": self.per_dial_mm,
        }


def whole_back(design: _core.Design) -> WholeBack:
    """Look along the whole back of a design."""
    return WholeBack(_core.whole_back(design), _core.flush_targets(design))
