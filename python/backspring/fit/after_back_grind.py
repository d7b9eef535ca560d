"""What grinding the back does to a fit."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from backspring import _core
from backspring.design.arguments import input_faults, length
from backspring.design.design import Design
from backspring.fit.result import Allowance
from backspring.notice import Notice
from backspring.report.result import Reported

TARGET = "0.001 in"


@dataclass(frozen=True, repr=False)
class BackGround(Reported):
    """Readings and allowance before and after the back is ground by `depth_mm`.

    The tang stays as it is. The thinner spring presses less; what it drops when loaded follows
    how its bending is shared out, and on a taper is often more.
    """

    _report_by = "fit:back_ground_report"

    design: Design
    depth_mm: float
    result: _core.BackGrindReadings

    @property
    def before(self) -> _core.FitReadings:
        """Readings as it stands, loaded and unloaded."""
        return self.result.before

    @property
    def after(self) -> _core.FitReadings:
        """Readings of the same tang under the thinner spring."""
        return self.result.after

    @property
    def allowance_before(self) -> Allowance:
        """What to leave unloaded for the target."""
        return Allowance(self.design, self.result.allowance_before)

    @property
    def allowance_after(self) -> Allowance:
        """What to leave unloaded for the target under the thinner spring."""
        return Allowance(self.design, self.result.allowance_after)

    @property
    def notices(self) -> tuple[Notice, ...]:
        """What to know besides; nothing."""
        return ()

    def to_dict(self) -> dict[str, Any]:
        """Results as plain data, ready for JSON; the allowance is that of the thinner spring."""
        data = self.allowance_after.to_dict()
        data["allowance_before"] = self.allowance_before.to_dict()["allowance"]
        data["back_removed_mm"] = self.depth_mm
        data["readings_before"] = _data(self.before)
        data["readings_after"] = _data(self.after)
        return data


def readings_after_back_grind(design: Design, depth: Any, target: Any = TARGET) -> BackGround:
    """Tell readings and allowance before and after the back is ground by a depth."""
    depth_mm, target_mm = length(depth, "depth"), length(target, "target")
    with input_faults():
        result = _core.readings_after_back_grind(design.core, depth_mm, target_mm)
    return BackGround(design, depth_mm, result)


def _data(both: _core.FitReadings) -> dict[str, Any]:
    return {
        f"{name}_{state}_mm": getattr(getattr(both, state), f"{name}_mm")
        for state in ("unloaded", "loaded")
        for name in ("half_stop", "closed")
    }
