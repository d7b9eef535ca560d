"""What fitting several blades on one spring answers: each blade's own, and how they go together."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from typing import Any

from backspring import _core
from backspring.core_record import changed
from backspring.design.design import Design
from backspring.fit.result import Allowance, FitPlan, step_data
from backspring.notice import Notice
from backspring.report.result import Reported
from backspring.unit_table import THOU_MM


@dataclass(frozen=True, repr=False)
class BladesAllowance(Reported):
    """The allowances of all blades, fitted together: `left.blades["pen"]` is that blade's."""

    _report_by = "fit_blades:blades_allowance_report"

    design: Design
    blades: dict[str, Allowance]

    @property
    def target_mm(self) -> float:
        """Loaded reading wanted of every blade, in its lowest case [mm]."""
        return next(iter(self.blades.values())).target_mm

    @cached_property
    def moves(self) -> list[_core.BladeLever]:
        """What 0.1 mm off each face moves on every blade, for the fitted knife."""
        pairs = zip(self.design.core.blades, self.blades.values(), strict=True)
        fitted = [changed(blade, tang=left.result.tang) for blade, left in pairs]
        return _core.blade_levers(changed(self.design.core, blades=fitted))

    @property
    def notices(self) -> tuple[Notice, ...]:
        """What to know besides; nothing."""
        return ()

    def to_dict(self) -> dict[str, Any]:
        """Results as plain data, ready for JSON."""
        return {
            "design": {"name": self.design.name, "sha256": self.design.sha256},
            "target_mm": self.target_mm,
            "moves": moves_data(self.moves),
            "blades": {name: each.to_dict() for name, each in self.blades.items()},
        }


@dataclass(frozen=True, repr=False)
class BladesPlan(Reported):
    """What to take off which face of which blade; measure every blade again after every pass.

    `plan.blades["pen"]` has that blade's own steps.
    """

    _report_by = "fit_blades:blades_plan_report"

    design: Design
    result: _core.BladesPlan
    blades: dict[str, FitPlan]
    more: tuple[Notice, ...] = ()

    @property
    def state(self) -> str:
        """State that the readings after a step are expected in."""
        return next(iter(self.blades.values())).state

    @property
    def target_mm(self) -> float:
        """Loaded reading wanted of every blade, in its lowest case [mm]."""
        return next(iter(self.blades.values())).target_mm

    @property
    def steps(self) -> list[_core.FitStep]:
        """Steps of all blades in turn; none when the fit is done."""
        return self.result.steps

    @property
    def passes(self) -> int:
        """Passes in the plan."""
        return self.result.passes

    @property
    def done(self) -> bool:
        """Whether there is nothing to grind, for every reading is as wanted."""
        return not self.result.steps and not self.unmet and not self.read_again

    @property
    def read_again(self) -> dict[str, tuple[str, ...]]:
        """Positions by blade that are to be read once more before anything is planned."""
        return {name: each.read_again for name, each in self.blades.items() if each.read_again}

    @cached_property
    def unmet(self) -> list[tuple[str, str, float]]:
        """Blade, position and loaded reading that no plan mends: proud, or low, by over a thou."""
        if self.result.steps or self.read_again:
            return []
        return [
            (name, place, value)
            for name, each in self.blades.items()
            for place, value in (
                ("half-stop", each.result.half_stop_loaded_mm),
                ("closed", each.result.closed_loaded_mm),
            )
            if value is not None and abs(value - self.target_mm) > THOU_MM
        ]

    @cached_property
    def moves(self) -> list[_core.BladeLever]:
        """What 0.1 mm off each face moves on every blade, for the knife as it stands."""
        return _core.blade_levers(self.result.now)

    @property
    def notices(self) -> tuple[Notice, ...]:
        """What to know before starting, of each blade."""
        found = (
            Notice(notice.code, {"blade": name, **notice.values})
            for name, each in self.blades.items()
            for notice in each.notices
            if not ((self.unmet or self.read_again) and notice.code == "fit-done")
        )
        return (*self.more, *found)

    def to_dict(self) -> dict[str, Any]:
        """Results as plain data, ready for JSON."""
        return {
            "design": {"name": self.design.name, "sha256": self.design.sha256},
            "state": self.state,
            "target_mm": self.target_mm,
            "aim_mm": self.result.aim_mm,
            "done": self.done,
            "passes": self.passes,
            "plan": [{"blade": step.blade, **step_data(step)} for step in self.steps],
            "moves": moves_data(self.moves),
            "blades": {name: each.to_dict() for name, each in self.blades.items()},
        }


def moves_data(levers: list[_core.BladeLever]) -> list[dict[str, Any]]:
    """Write what each face moves on every blade as plain data."""
    return [
        {
            "blade": row.blade,
            "face": row.face.name,
            "per_mm": _core.LEVER_DEPTH_MM,
            "blades": {
                each.blade: {"half_stop_mm": each.half_stop_mm, "closed_mm": each.closed_mm}
                for each in row.moves
            },
        }
        for row in levers
    ]
