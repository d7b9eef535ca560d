"""Allowances and plan of several blades as reports for the bench."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from backspring.report.budget import budget_lines
from backspring.report.display import number, reading, text, unit_of
from backspring.report.fit import CAUTIONS, face_name, nothing_to_grind, to_read_again
from backspring.report.levers import levers_table, moves_table
from backspring.report.tables import Block, Lines, Report, TextTable
from backspring.report.whole_back import whole_back_lines
from backspring.units import System

if TYPE_CHECKING:
    from backspring.fit.blades_result import BladesAllowance, BladesPlan
    from backspring.fit.result import Allowance, FitPlan

# How a maker holds the other blades, and which of several readings is meant.
_CASES = (
    "The dial is set to nothing with every blade open. A blade is then read with the blades at the "
    "other end closed and those beside it on its own pin open.",
    "The reading that counts is the lowest with the other blades in every position.",
)


def blades_allowance_report(left: BladesAllowance, units: System | None = None) -> Report:
    """Lay out what to leave on every blade."""
    units = units or left.design.units
    rows = [row for name, each in left.blades.items() for row in _left_rows(name, each, units)]
    unit = unit_of("reading", units)
    heads = ("", f"unloaded {unit}", "drops when loaded", f"loaded {unit}")
    blocks: list[Block] = [TextTable("Allowance", heads, tuple(rows))]
    blocks.append(moves_table(left.moves, units, "Fitted"))
    for name, each in left.blades.items():
        blocks.append(headed(name, whole_back_lines(each.along, units, " when fitted")))
        blocks.append(headed(name, budget_lines(each.error_budget, units)))
    blocks += [Lines("How it is read", _CASES), Lines("Caution", CAUTIONS)]
    target = reading(left.target_mm, units)
    both = "; ".join(_leave(name, each, units) for name, each in left.blades.items())
    headline = f"{left.design.name}: with the rear pin out leave {both} [{unit}], for {target}"
    return Report(f"{headline} when loaded", tuple(blocks))


def blades_plan_report(plan: BladesPlan, units: System | None = None) -> Report:
    """Lay out a plan of several blades."""
    units = units or plan.design.units
    return Report(_first(plan, units), tuple(_blocks(plan, units)))


def _left_rows(name: str, left: Allowance, units: System) -> Iterator[tuple[str, ...]]:
    for place, value in (("half-stop", left.half_stop_mm), ("closed", left.closed_mm)):
        if value is not None:
            lost = number(value - left.target_mm, "reading", units)
            target = reading(left.target_mm, units)
            yield f"{name}, {place}", reading(value, units), lost, target


def _leave(name: str, left: Allowance, units: System) -> str:
    half = "" if left.half_stop_mm is None else f"{reading(left.half_stop_mm, units)} at half-stop"
    both = f"{half} and " if half else ""
    return f"{name} {both}{reading(left.closed_mm, units)} at closed"


def headed(name: str, block: Block) -> Block:
    """Head a block with a blade's name."""
    if isinstance(block, TextTable):
        return TextTable(f"{name}: {block.title}", block.heads, block.rows)
    return Lines(f"{name}: {block.heading}", block.lines)


def _kick(plan: FitPlan) -> bool:
    return plan.design.core.tang.kick is not None


def _first(plan: BladesPlan, units: System) -> str:
    if plan.done:
        return f"{plan.design.name}: {nothing_to_grind(plan.notices)}"
    if plan.read_again:
        low = ", ".join(
            f"{name}: {to_read_again(each, units)}"
            for name, each in plan.blades.items()
            if each.read_again
        )
        return f"{plan.design.name}, {low}"
    if plan.unmet:
        readings = ", ".join(
            f"{name}, {place}, {reading(value, units)} [{unit_of('reading', units)}]"
            for name, place, value in plan.unmet
        )
        return (
            f"{plan.design.name}: NOT done, and no plan: {readings}; where one reading is low "
            "beside another blade, every open face on that pin has to go down alike: grind nothing "
            "on this answer"
        )
    step = plan.steps[0]
    times = f"{plan.passes} pass" + ("" if plan.passes == 1 else "es")
    face = face_name(step.face.name, _kick(plan.blades[step.blade]))
    off = text(step.remove_mm, "reading", units)
    return f"{plan.design.name}: {times}; first take {off} off the {face} of {step.blade}"


def _blocks(plan: BladesPlan, units: System) -> Iterator[Block]:
    yield _now(plan, units)
    if plan.steps:
        yield _steps(plan, units)
    yield moves_table(plan.moves, units, "As it stands")
    for name, each in plan.blades.items():
        yield headed(name, levers_table(each.levers, units))
        yield headed(name, whole_back_lines(each.along, units, " when done"))
        yield headed(name, budget_lines(each.allowance.error_budget, units))
    if plan.notices:
        yield Lines("Notices", tuple(notice.text(units) for notice in plan.notices))
    yield Lines("How it is read", _CASES)
    yield Lines("Caution", CAUTIONS)


def _now(plan: BladesPlan, units: System) -> TextTable:
    rows = [
        (f"{name}, {place}", reading(value, units), reading(plan.target_mm, units))
        for name, each in plan.blades.items()
        for place, value in (
            ("half-stop", each.result.half_stop_loaded_mm),
            ("closed", each.result.closed_loaded_mm),
        )
        if value is not None
    ]
    unit = unit_of("reading", units)
    title = "Loaded readings, the other blades where it is lowest"
    return TextTable(title, ("", f"now {unit}", f"wanted {unit}"), tuple(rows))


def _steps(plan: BladesPlan, units: System) -> TextTable:
    unit = unit_of("reading", units)
    heads = ["step", "pass", "blade", "face", f"take off {unit}"]
    heads += ["half-stop", "closed", "tip"]
    rows = []
    for step in plan.steps:
        shown = (step.half_stop_mm, step.closed_mm)
        row = [f"{step.step}", f"{step.pass_number}", step.blade]
        row += [face_name(step.face.name, _kick(plan.blades[step.blade]))]
        row += [number(step.remove_mm, "reading", units)]
        row += ["" if each is None else reading(each, units) for each in shown]
        row += ["" if step.tip_mm is None else number(step.tip_mm, "reading", units)]
        rows.append(tuple(row))
    title = f"Plan; that blade's readings [{unit}] after each step, {plan.state}; measure all after"
    title += " a pass"
    return TextTable(title, tuple(heads), tuple(rows))
