"""The same pull off every face as a table for people."""

from __future__ import annotations

from backspring import _core
from backspring.notice import from_core
from backspring.question.grind_ways import GrindWays
from backspring.report.display import number, reading, text, unit_of
from backspring.report.grind import CAUTIONS, missed
from backspring.report.tables import Block, Lines, Report, TextTable
from backspring.units import System


def ways_report(ways: GrindWays, units: System | None = None) -> Report:
    """Lay out a comparison in the given units, the design's own when none are given."""
    units = units or ways.design.units
    can = [each for each in ways.ways if each.after is not None]
    line = f"{ways.design.title}: {text(ways.pull_n, 'force', units)} off {len(can)} places"
    return Report(line, (*ways_blocks(ways, units), Lines("Caution", CAUTIONS)))


def ways_blocks(ways: GrindWays, units: System) -> tuple[Block, ...]:
    """Lay out the places that give the pull, and why the others do not."""
    heads = (
        "",
        f"from to {unit_of('length', units)}",
        f"off {unit_of('reading', units)}",
        "yield margin",
        *(f"{name} {unit_of('reading', units)}" for name in ("half-stop", "closed")),
        "targets",
    )
    rows = [_row(way, way.after, units) for way in ways.ways if way.after is not None]
    found: list[Block] = []
    if rows:
        found.append(TextTable("The same pull off", heads, tuple(rows)))
    # One reason for all faces is said once.
    reasons = dict.fromkeys(
        f"{way.face.name}: {from_core(way.refused).text(units)}"
        for way in ways.ways
        if way.refused is not None
    )
    if reasons:
        found.append(Lines("Cannot give it", tuple(reasons)))
    return tuple(found)


def _row(way: _core.GrindWay, after: _core.GrindRow, units: System) -> tuple[str, ...]:
    ends = (way.region.from_mm, way.region.to_mm)
    return (
        way.face.name,
        " ".join(number(each, "length", units) for each in ends),
        number(after.removed_mm, "reading", units),
        number(after.yield_margin, "margin", units),
        reading(after.reading_loaded_half_stop_mm, units),
        reading(after.reading_loaded_closed_mm, units),
        missed(after) or "met",
    )
