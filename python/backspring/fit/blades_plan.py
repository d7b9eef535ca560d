"""Fits several blades on one spring together on paper."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from backspring import _core
from backspring.core_record import changed
from backspring.design.arguments import refusal
from backspring.design.design import Design
from backspring.fit.blades_result import BladesAllowance, BladesPlan
from backspring.fit.result import Allowance, FitPlan
from backspring.notice import Notice


def blades_allowance(design: Design, target_mm: float) -> BladesAllowance:
    """Find what to leave on every blade."""
    found = zip(design.blades, _core.allowances(design.core, target_mm), strict=True)
    return BladesAllowance(
        design, {name: Allowance(design.seen_from(name), left) for name, left in found}
    )


def as_measured(
    design: Design, measured: Mapping[str, _core.Measured]
) -> tuple[_core.Design, list[_core.FittedBlade]]:
    """Return the knife that reads so, and which blades of it were measured."""
    if not measured:
        raise refusal("blades", "give the readings of at least one blade")
    places = {name: _place(design, name) for name in measured}
    read = [_core.BladeMeasured(blade=places[n], measured=each) for n, each in measured.items()]
    now = _core.as_measured_blades(design.core, read)
    return now, [_core.FittedBlade(blade=place) for place in places.values()]


def make_blades_plan(
    design: Design,
    now: _core.Design,
    blades: list[_core.FittedBlade],
    state: str,
    rules: _core.PlanRules,
    more: tuple[Notice, ...] = (),
    short_mm: float = 0.0,
) -> BladesPlan:
    """Plan several blades of a knife as it stands; other blades stay as they are.

    `short_mm` is how much farther off the target to stop, but where a reading is low.
    """
    result = plan_short(now, blades, _core.FitState[state], rules, short_mm)
    plans: dict[str, FitPlan] = {}
    for fitted, own in zip(blades, result.blades, strict=True):
        seen = design.seen_from(design.blades[fitted.blade])
        left = _core.allowance(own.now, rules.target_mm, fitted.unknowns)
        about = Allowance(seen, left)
        plans[seen.blade] = FitPlan(seen, state, rules, about, own, (), fitted.unknowns)
    return BladesPlan(design, result, plans, more)


def plan_short(
    now: _core.Design,
    blades: Sequence[_core.FittedBlade],
    state: _core.FitState,
    rules: _core.PlanRules,
    short_mm: float,
) -> _core.BladesPlan:
    """Plan to stop so much farther off the target; where the open face goes, no farther."""
    short = changed(rules, target_mm=rules.target_mm + short_mm)
    plan = _core.fit_plan_of_blades(now, blades, state, short)
    if short_mm and any(each.removed.open_mm for each in plan.blades):
        return _core.fit_plan_of_blades(now, blades, state, rules)
    return plan


def _place(design: Design, blade: str) -> int:
    return design.blades.index(design.seen_from(blade).blade)
