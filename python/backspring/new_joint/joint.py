"""A joint by its chief sizes: the tables of its design file follow from them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from backspring.new_joint.file_text import Tables
from backspring.new_joint.rounding import between, fine
from backspring.units import System

# Common practice, no source: how a spring is drawn about its pins.
REAR_SHARE = 0.8
_LEVEL_MM = 3.0
_PAD_BEHIND = 1.2


@dataclass(frozen=True, slots=True)
class Joint:
    """Chief sizes of a joint [mm]: pins from the middle one, thickness at it and at the end ahead.

    `tail_mm` is what the spring goes on behind the rear pin.
    """

    pivot_mm: float
    rear_mm: float
    tail_mm: float
    middle_mm: float
    end_mm: float
    width_mm: float
    hole_mm: float
    open_mm: float
    front_mm: float
    corner_mm: float
    preload_mm: float
    half_stop: bool
    pin_mm: float
    nick_mm: float

    def tables(self, steel: dict[str, Any], units: System) -> Tables:
        """Write it as the tables of a design file, rounded to what can be set."""
        pivot, rear = between(self.pivot_mm, units), between(self.rear_mm, units)
        open_mm, front = fine(self.open_mm, units), fine(self.front_mm, units)
        pad = [between(pivot - _PAD_BEHIND * open_mm, units), between(pivot + front, units)]
        tang: dict[str, Any] = {"pivot": pivot, "open": open_mm}
        if self.half_stop:
            tang["half_stop"] = open_mm
        tang |= {"closed": open_mm, "corner_radius": fine(self.corner_mm, units), "front": front}
        return {
            "spring": {
                **steel,
                "width": fine(self.width_mm, units),
                "thickness": self._thickness(pad, rear, units),
                "rear_pin": rear,
                "pin_hole": fine(self.hole_mm, units),
                "hole_finish": "reamed",
                "pad": pad,
            },
            "tang": tang,
            "fit": {"preload": fine(self.preload_mm, units), "dial": pivot},
            "blade": {"nail_nick": between(self.nick_mm, units)},
            "friction": {"spring": 0.12, "pivot": 0.12, "pivot_pin": fine(self.pin_mm, units)},
        }

    def _thickness(self, pad: list[float], rear: float, units: System) -> list[list[float]]:
        middle, end = fine(self.middle_mm, units), fine(self.end_mm, units)
        level = between(_LEVEL_MM, units)
        return [
            [between(-rear - self.tail_mm, units), fine(REAR_SHARE * self.middle_mm, units)],
            [-level, middle],
            [level, middle],
            [pad[0], end],
            [pad[1], end],
        ]


def corner_for_rise(open_mm: float, rise_mm: float) -> float:
    """Corner radius with which the crest of square faces lifts the spring by so much.

    About the corner's centre the crest is at (o - r) sqrt(2) + r from the pivot, o open.
    """
    return float(open_mm - rise_mm / (2.0**0.5 - 1.0))


def rise_of(open_mm: float, corner_mm: float) -> float:
    """Rise of the spring over such a crest."""
    return float((2.0**0.5 - 1.0) * (open_mm - corner_mm))


def drawn_about(tables: Tables, **changes: Any) -> Tables:
    """Change keys by their place, as tang__open, and leave the tables given as they are."""
    changed = {name: dict(keys) for name, keys in tables.items()}
    for place, value in changes.items():
        table, _, key = place.partition("__")
        changed.setdefault(table, {})[key] = value
    return changed
