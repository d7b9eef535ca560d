"""What fitting answers: the allowance to leave, and what to take off which face."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from backspring import _core
from backspring.design.design import Design
from backspring.fit.levers import Levers, knife_levers, levers
from backspring.notice import Notice, all_from_core
from backspring.question.budget import error_budget
from backspring.question.whole_back import WholeBack, whole_back
from backspring.report.budget import budget_data
from backspring.report.result import Reported

FACES = ("open", "half_stop", "closed", "kick")
_CALLED = {"half_stop": "half-stop face", "closed": "closed face", "kick": "kick"}


@dataclass(frozen=True, repr=False)
class Allowance(Reported):
    """Unloaded readings to leave so that loaded ones come out at the target [mm].

    `half_stop_mm` is None without a half-stop.
    """

    _report_by = "fit:allowance_report"

    design: Design
    result: _core.Allowance

    @property
    def target_mm(self) -> float:
        """Loaded reading wanted at both [mm]."""
        return self.result.target_mm

    @property
    def half_stop_mm(self) -> float | None:
        """Unloaded reading to leave at half-stop [mm]."""
        return self.result.half_stop_mm

    @property
    def closed_mm(self) -> float:
        """Unloaded reading to leave at closed [mm]."""
        return self.result.closed_mm

    @cached_property
    def along(self) -> WholeBack:
        """The whole back, pins in, of the knife fitted for the target."""
        core = self.design.core
        return WholeBack(_core.fitted_back(core, self.target_mm), _core.flush_targets(core))

    @property
    def notices(self) -> tuple[Notice, ...]:
        """What to know besides; nothing."""
        return ()

    def to_dict(self) -> dict[str, Any]:
        """Results as plain data, ready for JSON."""
        return {
            "design": self.design.identity(),
            "target_mm": self.target_mm,
            "allowance": {"half_stop_mm": self.half_stop_mm, "closed_mm": self.closed_mm},
            "tang": tang_data(self.result.tang),
            "levers": self.levers.rows_data(),
            "along": self.along.to_dict(),
            **budget_data(self.error_budget),
        }

    @cached_property
    def error_budget(self) -> _core.ErrorBudget:
        """What the readings, and the pull, leave out; the plan's readings have it, too."""
        return error_budget(self.design)

    @cached_property
    def levers(self) -> Levers:
        """What grinding each face moves, for the knife as drawn."""
        return levers(self.design)


@dataclass(frozen=True, repr=False)
class FitPlan(Reported):
    """What to take off which face, in what order; measure again after every pass.

    Readings after a step are in the state they were measured in; with `_loaded_` pins in.
    `tip_mm` is the blade's tip against where it stands now, positive out of the handle. Where
    `read_again` names positions nothing is planned before these are read once more.
    """

    _report_by = "fit:plan_report"

    design: Design
    state: str
    rules: _core.PlanRules
    allowance: Allowance
    result: _core.FitPlan
    more: tuple[Notice, ...] = ()
    unknowns: _core.FitUnknowns | None = None
    read_again: tuple[str, ...] = ()

    @property
    def target_mm(self) -> float:
        """Loaded reading wanted at both [mm]."""
        return self.rules.target_mm

    @property
    def steps(self) -> list[_core.FitStep]:
        """Steps in turn; none when the fit is done."""
        return self.result.steps

    @property
    def passes(self) -> int:
        """Passes in the plan."""
        return self.result.passes

    @property
    def moves_tip(self) -> bool:
        """Whether the tip ends farther from where it is than the allowance."""
        tip_mm = self.result.tip_mm
        return tip_mm is not None and abs(tip_mm) > self.rules.tip_allowance_mm

    @cached_property
    def levers(self) -> Levers:
        """What grinding each face moves, for the knife as it stands."""
        now = self.result.now
        if self.unknowns is None:
            return Levers(self.design, _core.levers(now))
        return knife_levers(self.design, now, self.unknowns)

    @property
    def done(self) -> bool:
        """Whether there is nothing to grind."""
        return not self.result.steps and not self.read_again

    @cached_property
    def along(self) -> WholeBack:
        """The whole back, pins in, of the knife when the plan is carried out."""
        return whole_back(self.result.done)

    @property
    def notices(self) -> tuple[Notice, ...]:
        """What to know before starting."""
        found = (*all_from_core(self.result.notices), *self._left_standing())
        shown = loaded_now(self.result)
        if self.read_again:
            lowest = {"reading": min(shown[each] for each in self.read_again)}
            found = (Notice("read-again", {"names": position_names(self.read_again), **lowest}),)
        if all(each >= self.target_mm for each in shown.values()):
            # Below what is aimed at, where a plan stops short, is not below the target.
            short = ("slightly-low", "short-of-target")
            found = tuple(each for each in found if each.code not in short)
        return (*self.more, *found)

    def to_dict(self) -> dict[str, Any]:
        """Results as plain data, ready for JSON."""
        result, left = self.result, _depths(self.result.left_standing)
        return self.allowance.to_dict() | {
            "state": self.state,
            "loaded_now": {
                "half_stop_mm": result.half_stop_loaded_mm,
                "closed_mm": result.closed_loaded_mm,
            },
            "aim_mm": result.aim_mm,
            "done": self.done,
            "read_again": list(self.read_again),
            "passes": result.passes,
            "tip": self._tip(),
            "plan": [step_data(step) for step in result.steps],
            "removed": _depths(result.removed),
            "left_standing": {"least_mm": self.rules.least_off_mm, **left},
            "tang": tang_data(result.now.tang),
            "tang_after": tang_data(result.done.tang),
            "preload_after_mm": result.done.fit.preload_mm,
            "levers": self.levers.rows_data(),
            "along": self.along.to_dict(),
        }

    def _left_standing(self) -> Iterator[Notice]:
        """Tell what stays on faces, for it is too little to grind."""
        left = _depths(self.result.left_standing)
        names = [name for face, name in _CALLED.items() if left[f"{face}_mm"]]
        if names:
            *others, last = names
            told = f"{', '.join(others)} and {last}" if others else last
            yield Notice("left-standing", {"names": told, "least": self.rules.least_off_mm})

    def _tip(self) -> dict[str, Any]:
        result, short = self.result, self.result.tip_runs_out
        level = result.level_removed
        return {
            "moves_mm": result.tip_mm,
            "wanted_mm": self.rules.tip_mm,
            "allowance_mm": self.rules.tip_allowance_mm,
            "beyond_allowance": self.moves_tip,
            "runs_out": None if short is None else short.name,
            "level_removed": level and _depths(level),
        }


def loaded_now(result: _core.FitPlan) -> dict[str, float]:
    """Return loaded readings as a plan finds them, by position."""
    shown = {"half_stop": result.half_stop_loaded_mm, "closed": result.closed_loaded_mm}
    return {name: each for name, each in shown.items() if each is not None}


def position_names(positions: tuple[str, ...]) -> str:
    """Name positions as people do."""
    return " and ".join(each.replace("_", "-") for each in positions)


def _depths(depths: _core.FaceDepths) -> dict[str, float]:
    return {f"{face}_mm": getattr(depths, f"{face}_mm") for face in FACES}


def step_data(step: _core.FitStep) -> dict[str, Any]:
    """Write a step as plain data."""
    return {
        "step": step.step,
        "pass": step.pass_number,
        "face": step.face.name,
        "remove_mm": step.remove_mm,
        "half_stop_mm": step.half_stop_mm,
        "closed_mm": step.closed_mm,
        "tip_mm": step.tip_mm,
        "half_stop_loaded_mm": step.half_stop_loaded_mm,
        "closed_loaded_mm": step.closed_loaded_mm,
    }


def tang_data(tang: _core.Tang) -> dict[str, Any]:
    """Faces of a tang as a design file has them."""
    return {
        "open_mm": tang.open_mm,
        "half_stop_mm": tang.half_stop_mm,
        "closed_mm": tang.closed_mm,
        "kick_height_mm": None if tang.kick is None else tang.kick.height_mm,
    }
