"""Allowance and plan as reports for the bench."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import TYPE_CHECKING

from backspring.fit.result import Allowance, FitPlan, loaded_now, position_names
from backspring.report.budget import budget_lines
from backspring.report.display import number, reading, text, unit_of
from backspring.report.levers import levers_table
from backspring.report.tables import Block, Lines, Report, TextTable
from backspring.report.whole_back import whole_back_lines
from backspring.report.wrapping import that_fits
from backspring.units import System

if TYPE_CHECKING:
    from backspring import _core
    from backspring.fit.after_back_grind import BackGround
    from backspring.notice import Notice

# Common practice, no source.
CAUTIONS = (
    "Steel that is off cannot be put back: take less, measure again, stop proud rather than low.",
    "Wear eye protection when a spring is under load; keep fingers out of the blade's way.",
    "Keep the tang cool enough to hold while grinding, or the temper goes.",
)
_FACES = {
    "open": "open face",
    "half_stop": "half-stop face",
    "closed": "closed face near the pivot",
    "kick": "kick",
}


def allowance_report(left: Allowance, units: System | None = None) -> Report:
    """Lay out an allowance in the given units, the design's own when none are given."""
    units = units or left.design.units
    blocks = (
        _allowance(left, units),
        whole_back_lines(left.along, units, " when fitted"),
        levers_table(left.levers, units),
    )
    not_in = budget_lines(left.error_budget, units)
    return Report(_leave(left, units), (*blocks, not_in, _caution()))


def back_ground_report(ground: BackGround, units: System | None = None) -> Report:
    """Lay out what grinding the back does to a fit."""
    units = units or ground.design.units
    off = text(ground.depth_mm, "reading", units)
    left = ground.allowance_after
    headline = f"{left.design.title}: after {off} off the back {to_leave(left, units)}"
    blocks = (_moved(ground, units), _caution())
    return Report(headline, blocks)


def plan_report(plan: FitPlan, units: System | None = None) -> Report:
    """Lay out a plan in the given units, the design's own when none are given."""
    units = units or plan.design.units
    # What to grind comes before how well the answer is known.
    blocks = (*_blocks(plan, units), budget_lines(plan.allowance.error_budget, units))
    notices = tuple(notice.text(units) for notice in plan.notices)
    told = (Lines("Notices", notices),) if notices else ()
    return Report(_first(plan, units), (*blocks, *told, _caution()))


def _caution() -> Lines:
    return Lines("Caution", CAUTIONS)


def face_name(face: str, kick: bool = True) -> str:
    """Name a face as people do; without a kick the closed face is ground whole."""
    return "closed face" if face == "closed" and not kick else _FACES[face]


def _leave(left: Allowance, units: System) -> str:
    target = reading(left.target_mm, units)
    return that_fits(
        left.design.title, to_leave(left, units), "rear pin out", f"for {target} when loaded"
    )


def to_leave(left: Allowance, units: System) -> str:
    """Say what to leave unloaded."""
    half = "" if left.half_stop_mm is None else f"half-stop {reading(left.half_stop_mm, units)}, "
    closed = reading(left.closed_mm, units)
    return f"leave {half}closed {closed} [{unit_of('reading', units)}]"


def _allowance(left: Allowance, units: System) -> TextTable:
    rows = []
    for name, value in (("half-stop", left.half_stop_mm), ("closed", left.closed_mm)):
        if value is not None:
            lost = number(value - left.target_mm, "reading", units)
            rows.append((name, reading(value, units), lost, reading(left.target_mm, units)))
    unit = unit_of("reading", units)
    heads = ("", f"unloaded {unit}", "drops when loaded", f"loaded {unit}")
    return TextTable("Allowance", heads, tuple(rows))


def _moved(ground: BackGround, units: System) -> TextTable:
    rows: list[tuple[str, ...]] = []
    before, after = ground.allowance_before, ground.allowance_after
    for name in ("half_stop", "closed"):
        if getattr(before, f"{name}_mm") is None:
            continue
        place = name.replace("_", "-")
        for state in ("unloaded", "loaded"):
            pair = [getattr(getattr(each, state), f"{name}_mm") for each in _both(ground)]
            rows.append((f"{place}, {state}", *(reading(each, units) for each in pair)))
        left = [getattr(each, f"{name}_mm") for each in (before, after)]
        rows.append((f"{place}, to leave unloaded", *(reading(each, units) for each in left)))
    unit = unit_of("reading", units)
    return TextTable("Readings", ("", f"as it is {unit}", f"back ground {unit}"), tuple(rows))


def _both(ground: BackGround) -> tuple[_core.FitReadings, _core.FitReadings]:
    return ground.before, ground.after


def _first(plan: FitPlan, units: System) -> str:
    if plan.done:
        return f"{plan.design.title}: {nothing_to_grind(plan.notices)}"
    if plan.read_again:
        return f"{plan.design.title}: {to_read_again(plan, units)}"
    step = plan.steps[0]
    times = f"{plan.passes} pass" + ("" if plan.passes == 1 else "es")
    face = face_name(step.face.name, _has_kick(plan))
    off = text(step.remove_mm, "reading", units)
    return f"{plan.design.title}: {_tip_first(plan, units)}{times}; first take {off} off the {face}"


def nothing_to_grind(notices: Iterable[Notice]) -> str:
    """Say that a fit is done, or that it is as far as readings tell that are not loaded."""
    if any(each.code == "measure-loaded" for each in notices):
        return "nothing to grind before it is read once more, with both pins in"
    return "nothing to grind, the fit is done"


def to_read_again(plan: FitPlan, units: System) -> str:
    """Say what to read once more before anything is ground."""
    shown = loaded_now(plan.result)
    low = " and ".join(reading(shown[each], units) for each in plan.read_again)
    said = f"{low} [{unit_of('reading', units)}]"
    alone = len(plan.read_again) == 1
    single = f"a single reading of {said} is" if alone else f"single readings of {said} are"
    names = position_names(plan.read_again)
    return f"grind nothing yet, read {names} again: {single} not enough"


def _tip_first(plan: FitPlan, units: System) -> str:
    """Say first of all that a plan moves the tip by more than is allowed."""
    if not plan.moves_tip or plan.result.tip_mm is None:
        return ""
    tip_mm = plan.result.tip_mm
    side = "lifts the blade's tip" if tip_mm > 0.0 else "sinks the blade's tip"
    return f"this plan {side} by {text(abs(tip_mm), 'length', units)}; "


def _has_kick(plan: FitPlan) -> bool:
    return plan.design.core.tang.kick is not None


def _blocks(plan: FitPlan, units: System) -> Iterator[Block]:
    now = plan.result
    rows = [
        (name, reading(value, units), reading(plan.target_mm, units))
        for name, value in (
            ("half-stop", now.half_stop_loaded_mm),
            ("closed", now.closed_loaded_mm),
        )
        if value is not None
    ]
    unit = unit_of("reading", units)
    yield TextTable("Loaded readings", ("", f"now {unit}", f"wanted {unit}"), tuple(rows))
    if plan.steps:
        yield _steps(plan, units)
    yield levers_table(plan.levers, units)
    yield _allowance(plan.allowance, units)
    yield whole_back_lines(plan.along, units, " when done")


def _steps(plan: FitPlan, units: System) -> TextTable:
    square = plan.result.half_stop_loaded_mm is not None
    tip = plan.steps[0].tip_mm is not None
    unit = unit_of("reading", units)
    heads = ["step", "pass", "face", f"take off {unit}"]
    heads += ["half-stop"] if square else []
    heads += ["closed", "tip"] if tip else ["closed"]
    rows = []
    for step in plan.steps:
        row = [
            f"{step.step}",
            f"{step.pass_number}",
            face_name(step.face.name, _has_kick(plan)),
            number(step.remove_mm, "reading", units),
        ]
        row += [reading(step.half_stop_mm, units)] if square else []
        row += [reading(step.closed_mm, units)]
        row += [number(step.tip_mm, "reading", units)] if tip else []
        rows.append(tuple(row))
    title = (
        f"Plan; {plan.state} readings [{unit}] expected after each step; measure after every pass"
    )
    return TextTable(title, tuple(heads), tuple(rows))
