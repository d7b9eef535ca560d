"""Plans the blades of one knife together from its log."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import TYPE_CHECKING, Any

from backspring import _core
from backspring.core_record import changed
from backspring.design.arguments import refusal
from backspring.design.design import Design
from backspring.fit.beside import standing
from backspring.fit.blades_plan import make_blades_plan
from backspring.fit.blades_result import BladesPlan
from backspring.fit.doubts import doubts
from backspring.fit.log_entry import MeasuredEntry
from backspring.fit.open_face import read_once, reading_again
from backspring.fit.plan import TARGET, TIP_ALLOWANCE, ClosedBy, plan_rules
from backspring.fit.plan_of_log import stops_short_mm
from backspring.notice import Notice

if TYPE_CHECKING:
    from backspring.fit.estimate import FitEstimate
    from backspring.fit.knife import Knife


def plan_of_blades(
    knife: Knife,
    *,
    target: Any = TARGET,
    reserve: float = 1 / 3,
    closed_by: ClosedBy = "level",
    material: Mapping[str, Any] | None = None,
    tip: Any = None,
    tip_allowance: Any = TIP_ALLOWANCE,
) -> BladesPlan:
    """Plan the next passes on all blades that were read since they were ground.

    Every blade reads as its own entries tell; the least sure of them says how fine the plan is.

    Raises InvalidInput when nothing was read, or not all blades that stand side by side.
    """
    ready = {n: k for n, k in knife.blades.items() if k.can_plan()}
    if not ready:
        raise refusal("log", "no blade was read since it was ground: measure first")
    if unread := unread_beside(knife):
        raise refusal("log", f"{', '.join(unread)}: not read, beside one that was: measure first")
    for each in ready.values():
        each.require_agreement()
    found = {name: each.estimate() for name, each in ready.items()}
    dial_mm = max(ready[name].spread_mm * each.leeway.dial for name, each in found.items())
    spread_mm = max(dial_mm, *(each.widest_mm for each in found.values()))
    short_mm = max(stops_short_mm(each, ready[name].spread_mm) for name, each in found.items())
    given = target, spread_mm, reserve, closed_by, material, tip, tip_allowance
    rules = plan_rules(*given, spares_open=True, dial_mm=dial_mm)
    more = tuple(
        Notice(notice.code, {"blade": name, **notice.values})
        for name, each in ready.items()
        for notice in (*each.notices, *doubts(found[name], each.spread_mm))
    )
    now, fitted = _as_learned(knife.drawn, found)
    state = _last_state(knife)
    plan = make_blades_plan(knife.drawn, now, fitted, state, rules, more, short_mm)
    return _once_read_again(plan, ready)


def unread_beside(knife: Knife) -> tuple[str, ...]:
    """Name the blades that are not read and stand beside one that is: they bear the spring, too.

    From one blade alone a plan would take off it what the other's reading shows to be too much. One
    at the other end moves a reading by little.
    """
    blades = knife.drawn.seen_from(knife.drawn.blades[0]).core.blades
    ends = {name: each.end for name, each in zip(knife.drawn.blades, blades, strict=True)}
    read = {name for name, each in knife.blades.items() if each.can_plan()}
    return tuple(
        name
        for name, end in ends.items()
        if name not in read and any(ends[other] == end for other in read)
    )


def _once_read_again(plan: BladesPlan, knives: Mapping[str, Knife]) -> BladesPlan:
    again = {
        name: read_once(knives[name].entries, each.result, plan.target_mm)
        for name, each in plan.blades.items()
    }
    if not any(again.values()):
        return plan
    blades = {name: reading_again(each, again[name]) for name, each in plan.blades.items()}
    kept = [each.result for each in blades.values()]
    result = changed(plan.result, steps=[], passes=0, blades=kept, done=plan.result.now)
    return replace(plan, result=result, blades=blades)


def _as_learned(
    drawn: Design, found: Mapping[str, FitEstimate]
) -> tuple[_core.Design, list[_core.FittedBlade]]:
    """Return one knife whose blades all read as learned; its spring is as the first of them has it.

    A spring bent by a given distance has one shape, whether stiff or not, so that what each blade's
    entries tell of its stiffness hardly matters to a plan.
    """
    whole = drawn.seen_from(drawn.blades[0]).core
    blades, read = list(whole.blades), []
    for name, each in found.items():
        place = drawn.blades.index(name)
        blades[place] = standing(blades[place], each)
        shown = {key.replace("_loaded", ""): figure.value for key, figure in each.loaded.items()}
        measured = _core.Measured(state=_core.FitState.loaded, **shown)
        read.append(_core.BladeMeasured(blade=place, measured=measured, unknowns=each.bench))
    first = next(iter(found.values())).now
    names = [blade.name for blade in first.blades]
    spring = _core.seen_from(first, names.index(drawn.blades[0])).spring
    now = _core.as_measured_blades(changed(whole, blades=blades, spring=spring), read)
    return now, [_core.FittedBlade(blade=each.blade, unknowns=each.unknowns) for each in read]


def _last_state(knife: Knife) -> str:
    return [e.state for e in knife.logged if isinstance(e, MeasuredEntry)][-1]
