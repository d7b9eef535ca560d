"""Fits a tang on paper: the allowance to leave, and what to take off which face.

Lengths are bare numbers in mm, or text with a unit as "0.001 in". Readings are proud positive.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from statistics import fmean
from typing import Any, Literal, overload

from backspring import _core
from backspring.design.arguments import length, refusal
from backspring.design.design import Design
from backspring.fit.blades_plan import as_measured, blades_allowance, make_blades_plan, plan_short
from backspring.fit.blades_result import BladesAllowance, BladesPlan
from backspring.fit.log_entry import LIMITS
from backspring.fit.result import FACES, Allowance, FitPlan
from backspring.notice import Notice

State = Literal["loaded", "unloaded"]
ClosedBy = Literal["level", "least", "closed", "kick"]
TIP_ALLOWANCE = "0.5 mm"
TARGET = "0.001 in"


def allowance(
    design: Design, target: Any = TARGET, support: Any = None
) -> Allowance | BladesAllowance:
    """Find the unloaded readings that come out at a wanted loaded reading.

    Of several blades all are fitted together, for the target in that case of the other blades where
    a reading is lowest; of the one that a design is seen from with the others as drawn.

    `support` takes the place of the design's own: "two-pins", "clamped", or the root stiffness of
    a fixture as "2e5 N mm/rad". Raises NoConvergence when no tang gives that reading.
    """
    held = design if support is None else design.replace(**{"spring.support": support})
    if held.of_all_blades:
        return blades_allowance(held, length(target, "target"))
    return Allowance(held, _core.allowance(held.core, length(target, "target")))


@dataclass(frozen=True, slots=True)
class AllowanceRow:
    """The allowance of a design with one thing changed to a share of what it is."""

    share: float
    target_mm: float
    half_stop_mm: float | None
    closed_mm: float


def allowance_table(
    design: Design,
    vary: Literal["preload", "thickness"],
    shares: Sequence[float],
    target: Any = TARGET,
) -> list[AllowanceRow]:
    """Tell how the allowance moves with preload or thickness, each a share of the design's own.

    Thickness is changed by one share all along; holes stay as they are.
    """
    rows, target_mm = [], length(target, "target")
    for share in shares:
        left = _core.allowance(_varied(design, vary, share).core, target_mm)
        rows.append(AllowanceRow(share, target_mm, left.half_stop_mm, left.closed_mm))
    return rows


def _varied(design: Design, vary: str, share: float) -> Design:
    if vary == "preload":
        return design.replace(**{"fit.preload": share * design.core.fit.preload_mm})
    if vary != "thickness":
        raise refusal("vary", f'must be "preload" or "thickness", got {vary!r}')
    spring = design.as_in_file(design.core).spring
    stations = [[s.x_mm, share * s.thickness_mm] for s in spring.thickness]
    return design.replace(**{"spring.thickness": stations})


@overload
def fit_plan(
    design: Design,
    blades: None = None,
    *,
    closed: Any,
    state: State,
    half_stop: Any = ...,
    target: Any = ...,
    repeatability: Any = ...,
    reserve: float = ...,
    closed_by: ClosedBy = ...,
    material: Mapping[str, Any] | None = ...,
    tip: Any = ...,
    tip_allowance: Any = ...,
) -> FitPlan: ...


@overload
def fit_plan(
    design: Design,
    blades: Mapping[str, Mapping[str, Any]],
    *,
    state: State,
    target: Any = ...,
    repeatability: Any = ...,
    reserve: float = ...,
    closed_by: ClosedBy = ...,
    material: Mapping[str, Any] | None = ...,
    tip: Any = ...,
    tip_allowance: Any = ...,
) -> BladesPlan: ...


def fit_plan(
    design: Design,
    blades: Mapping[str, Mapping[str, Any]] | None = None,
    *,
    closed: Any = None,
    state: State,
    half_stop: Any = None,
    target: Any = TARGET,
    repeatability: Any = 0.0,
    reserve: float = 1 / 3,
    closed_by: ClosedBy = "level",
    material: Mapping[str, Any] | None = None,
    tip: Any = None,
    tip_allowance: Any = TIP_ALLOWANCE,
) -> FitPlan | BladesPlan:
    """Plan what to take off which face from measured readings.

    Of several blades on one spring give those of each: {"long": {"half_stop": "0.3 mm", "closed":
    "0.2 mm"}, "pen": {"closed": "0.1 mm"}}, the dial set to nothing with every blade open, blades
    at the other end closed, those beside it on its own pin open. What comes off one tang moves the
    others' readings: all are planned together, for the target in that case of the other blades
    where a reading is lowest, and below it in none. A blade without readings stays as drawn.

    A list of repeated readings counts as their mean. `repeatability` is the standard deviation of
    one reading; less than that is not ordered off a face. Every pass but a face's last leaves
    `reserve` of what is to go. On a tang with a kick, `closed_by` says where the closed reading is
    brought down: "level" (closed face and kick: the blade's tip stays where it is), at the closed
    face near the pivot (raises the tip), at the kick (drops it), or "least" (whichever takes less
    steel). `tip` is a move of the tip wanted with the readings, positive out of the handle, or
    "level". A plan that moves the tip by more than `tip_allowance` says so first. `material` is
    what may come off a face: {"half_stop": "0.4 mm"}; the open face is ground for the tip's sake
    only where it is named there.

    Raises NoConvergence when steel runs out before the target is met.
    """
    rules = plan_rules(target, repeatability, reserve, closed_by, material, tip, tip_allowance)
    if blades is not None:
        read = {name: _measured(state, **each) for name, each in blades.items()}
        now, fitted = as_measured(design, read)
        return make_blades_plan(design, now, fitted, state, rules)
    if design.of_all_blades:
        names = ", ".join(design.blades)
        raise refusal("blades", f"say whose readings these are: this spring has {names}")
    now = _core.as_measured(design.core, _measured(state, half_stop, closed))
    return make_plan(design, now, state, rules)


def _measured(state: str, half_stop: Any = None, closed: Any = None) -> _core.Measured:
    return _core.Measured(
        state=state_of(state),
        half_stop_mm=None if half_stop is None else _reading(half_stop, "half_stop"),
        closed_mm=_reading(closed, "closed"),
    )


def make_plan(
    design: Design,
    now: _core.Design,
    state: str,
    rules: _core.PlanRules,
    unknowns: _core.FitUnknowns | None = None,
    more: tuple[Notice, ...] = (),
    short_mm: float = 0.0,
) -> FitPlan:
    """Plan for a knife as it stands; `more` are notices told before the plan's own.

    `short_mm` is how much farther off the target to stop, but where a reading is low.
    """
    bench = unknowns or _core.FitUnknowns()
    fitted = [_core.FittedBlade(unknowns=bench)]
    result = plan_short(now, fitted, state_of(state), rules, short_mm)
    left = Allowance(design, _core.allowance(now, rules.target_mm, bench))
    return FitPlan(design, state, rules, left, result.blades[0], more, unknowns)


def plan_rules(
    target: Any,
    repeatability: Any,
    reserve: float,
    closed_by: str,
    material: Mapping[str, Any] | None,
    tip: Any = None,
    tip_allowance: Any = TIP_ALLOWANCE,
    *,
    spares_open: bool = False,
    dial_mm: float | None = None,
) -> _core.PlanRules:
    """Read how to plan; `dial_mm` is what a reading repeats to where readings are less sure."""
    if closed_by not in _core.ClosedGrind.__members__:
        raise refusal("closed_by", f"must be {_either(_core.ClosedGrind)}, got {closed_by!r}")
    if tip == "level" and closed_by != "level":
        raise refusal("tip", f'"level" does not go with closed_by {closed_by!r}')
    for face in material or {}:
        if face not in FACES:
            raise refusal("material", f"must name a face: {', '.join(FACES)}; got {face!r}")
    if isinstance(reserve, bool) or not isinstance(reserve, int | float):
        raise refusal("reserve", f"must be a plain number, got {reserve!r}")
    left = {f"{face}_mm": length(deep, face) for face, deep in (material or {}).items()}
    good_mm, (low, high) = length(repeatability, "repeatability"), LIMITS["repeatability_mm"]
    return _core.PlanRules(
        target_mm=length(target, "target"),
        repeatability_mm=good_mm,
        # What is out of range is told of the repeatability alone.
        least_off_mm=min(max(good_mm if dial_mm is None else dial_mm, low), high),
        reserve=reserve,
        closed_by=_core.ClosedGrind[closed_by],
        tip_mm=_tip_move(tip),
        tip_allowance_mm=length(tip_allowance, "tip_allowance"),
        material=_core.Material(**left),
        spares_open=spares_open,
    )


def _tip_move(tip: Any) -> float | None:
    return None if tip is None else 0.0 if tip == "level" else length(tip, "tip")


def state_of(state: str) -> _core.FitState:
    """Return the state by its name."""
    if state not in _core.FitState.__members__:
        raise refusal("state", f"must be {_either(_core.FitState)}, got {state!r}")
    return _core.FitState[state]


def _reading(value: Any, key: str) -> float:
    if isinstance(value, Sequence) and not isinstance(value, str):
        if not value:
            raise refusal(key, "must have at least one reading")
        return fmean(length(each, key) for each in value)
    return length(value, key)


def _either(names: Any) -> str:
    return " or ".join(f'"{name}"' for name in names.__members__)
