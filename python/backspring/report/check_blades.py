"""A check of several blades as a report for people: one line that answers, then tables by blade."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from backspring.report.beside import beside_blocks, headed
from backspring.report.budget import budget_blocks
from backspring.report.check import CAUTION, WIDTH, opening, target_row
from backspring.report.check_steel import steel_lines
from backspring.report.display import number, text
from backspring.report.tables import Block, Lines, Report, TextTable
from backspring.report.to_change import HEADING, to_change
from backspring.report.verdict import verdict_blocks
from backspring.report.wrapping import that_fits
from backspring.units import System

if TYPE_CHECKING:
    from backspring.question.check import BladesCheck


def check_blades_report(
    check: BladesCheck, units: System | None = None, everything: bool = False
) -> Report:
    """Lay out a check of several blades in the given units, the design's own when none are given.

    `everything` shows all margins of each verdict instead of the first.
    """
    units = units or check.design.units
    return Report(headline(check, units), tuple(_blocks(check, units, everything)), WIDTH)


def headline(check: BladesCheck, units: System) -> str:
    """Answer in one line: what each blade takes to open, and the worst stress."""
    travels = [row.travel for each in check.blades.values() for row in each.beside]
    worst = max(travels, key=lambda travel: travel.peak_stress_mpa)
    opens = ", ".join(
        f"{name} {opening([s for row in each.beside for s in row.strokes], units)}"
        for name, each in check.blades.items()
    )
    # Said once where every blade opens so.
    said = opens.replace(" opens with ", " opens with\0", 1).replace(" opens with ", " with ")
    parts = [said.replace("\0", " ")]
    if worst.yield_margin is not None:
        parts.append(f"least yield margin {number(worst.yield_margin, 'margin', units)}")
    parts.append(f"peak stress {text(worst.peak_stress_mpa, 'stress', units)}")
    return that_fits(check.design.name, *parts)


def _blocks(check: BladesCheck, units: System, everything: bool) -> Iterator[Block]:
    if check.targets:
        found = tuple(target_row(target, units) for target in check.targets)
        yield TextTable("Targets, the worst of all blades", ("", "now", "wanted", ""), found)
    for name, each in check.blades.items():
        for block in verdict_blocks(each.verdict, units, everything):
            yield headed(block, before=f"{name}: ")
    for name, each in check.blades.items():
        yield from beside_blocks(name, each, units)
        for block in budget_blocks(each, units, everything):
            yield headed(block, before=f"{name}: ", after=", the others closed")
    if check.notices:
        yield Lines("Notices", tuple(each.text(units) for each in check.notices))
    yield Lines("Steel", tuple(steel_lines(check.design, units, everything)))
    if left_open := check.design.assumptions(units):
        yield Lines("Assumed", left_open)
    yield Lines("Caution", (CAUTION,))
    said = {name: to_change(each, units) for name, each in check.blades.items()}
    yield Lines(HEADING, tuple(f"{name}: {each}" for name, each in said.items()))
