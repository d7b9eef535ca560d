"""A check of several blades as a report for people: one line that answers, then tables by blade."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from backspring.report.check import CAUTION, head, opening, steel_lines, stroke_name, target_row
from backspring.report.display import Shown, number, reading, text
from backspring.report.tables import Block, Lines, Report, TextTable
from backspring.report.verdict import verdict_blocks
from backspring.units import System

if TYPE_CHECKING:
    from backspring.question.check import Beside, BladesCheck, Check


def check_blades_report(
    check: BladesCheck, units: System | None = None, everything: bool = False
) -> Report:
    """Lay out a check of several blades in the given units, the design's own when none are given.

    `everything` shows all margins of each verdict instead of the first.
    """
    units = units or check.design.units
    return Report(headline(check, units), tuple(_blocks(check, units, everything)))


def headline(check: BladesCheck, units: System) -> str:
    """Answer in one line: what each blade takes to open, and the worst stress."""
    travels = [row.travel for each in check.blades.values() for row in each.beside]
    worst = max(travels, key=lambda travel: travel.peak_stress_mpa)
    stress = f"peak stress {text(worst.peak_stress_mpa, 'stress', units)}"
    if worst.yield_margin is not None:
        stress += f", yield margin {number(worst.yield_margin, 'margin', units)}"
    opens = (
        f"{name} {opening([s for row in each.beside for s in row.strokes], units)}"
        for name, each in check.blades.items()
    )
    return f"{check.design.name}: {', '.join(opens)}, {stress} at worst"


def _blocks(check: BladesCheck, units: System, everything: bool) -> Iterator[Block]:
    for name, each in check.blades.items():
        yield from beside_blocks(name, each, units)
        for block in verdict_blocks(each.verdict, units, everything):
            yield _headed(name, block)
    if check.targets:
        found = tuple(target_row(target, units) for target in check.targets)
        yield TextTable("Targets, the worst of all blades", ("", "now", "wanted", ""), found)
    if check.notices:
        yield Lines("Notices", tuple(each.text(units) for each in check.notices))
    yield Lines("Steel", tuple(steel_lines(check.steel, units)))
    if left_open := check.design.assumptions(units):
        yield Lines("Assumed", left_open)
    yield Lines("Caution", (CAUTION,))


def _headed(name: str, block: Block) -> Block:
    if isinstance(block, TextTable):
        return TextTable(f"{name}: {block.title}", block.heads, block.rows)
    return Lines(f"{name}: {block.heading}", block.lines)


def beside_blocks(blade: str, check: Check, units: System) -> Iterator[Block]:
    """Tell a blade's positions, strokes and travel with the others in each of their positions."""
    yield _positions(blade, check, units)
    if any(row.strokes for row in check.beside):
        yield _strokes(blade, check, units)
    yield _travel(blade, check, units)


def _case(row: Beside) -> str:
    return ", ".join(f"{other.name} {other.position}" for other in row.others)


def _spoken(name: str, row: Beside) -> str:
    return f"{name}, {_case(row)}".replace("_", "-")


def _all_open(name: str, row: Beside) -> bool:
    return name == "open" and all(other.position == "open" for other in row.others)


def _positions(blade: str, check: Check, units: System) -> TextTable:
    heads = (
        "",
        head("angle", "angle", units),
        head("force", "force", units),
        head("stress", "stress", units),
        head("station", "length", units),
        head("loaded", "reading", units),
        head("unloaded", "reading", units),
    )
    cells = tuple(
        (
            _spoken(name, row),
            number(each.blade_angle_deg, "angle", units),
            number(each.force_n, "force", units),
            number(each.peak_stress_mpa, "stress", units),
            number(each.peak_stress_station_mm, "length", units),
            "datum" if _all_open(name, row) else reading(each.reading_loaded_mm, units),
            "datum" if name == "open" else reading(each.reading_unloaded_mm, units),
        )
        for row in check.beside
        for name, each in row.positions.items()
    )
    return TextTable(f"{blade}: positions", heads, cells)


def _strokes(blade: str, check: Check, units: System) -> TextTable:
    strokes = [(row, stroke) for row in check.beside for stroke in row.strokes]
    pulls = any(stroke.peak_pull_n is not None for _, stroke in strokes)
    kind: Shown = "force" if pulls else "torque"
    what = "pull" if pulls else "torque"
    heads = (
        "",
        head(f"start {what}", kind, units),
        head(f"peak {what}", kind, units),
        head("at", "angle", units),
        head("crest", "angle", units),
        head(f"closing peak {what}", kind, units),
        head("snap", "energy", units),
        head("tip", "speed", units),
    )
    cells = tuple(
        (
            _spoken(stroke_name(stroke.from_position, stroke.to_position), row),
            number(stroke.start_pull_n if pulls else stroke.start_torque_nmm, kind, units),
            number(stroke.peak_pull_n if pulls else stroke.peak_torque_nmm, kind, units),
            number(stroke.peak_torque_angle_deg, "angle", units),
            number(stroke.crest_angle_deg, "angle", units),
            number(
                stroke.closing_peak_pull_n if pulls else stroke.closing_peak_torque_nmm, kind, units
            ),
            number(stroke.snap_energy_mj, "energy", units),
            number(stroke.tip_speed_m_per_s, "speed", units),
        )
        for row, stroke in strokes
    )
    return TextTable(f"{blade}: strokes, opening", heads, cells)


def _travel(blade: str, check: Check, units: System) -> TextTable:
    heads = (
        "",
        head("force", "force", units),
        head("stress", "stress", units),
        head("at", "angle", units),
        head("station", "length", units),
        "yield margin",
        *(
            head(f"{other.name} {end}", "force", units)
            for other in check.beside[0].others
            for end in ("least", "most")
        ),
    )
    cells = tuple(
        (
            _case(row).replace("_", "-"),
            number(row.travel.peak_force_n, "force", units),
            number(row.travel.peak_stress_mpa, "stress", units),
            number(row.travel.peak_stress_angle_deg, "angle", units),
            number(row.travel.peak_stress_station_mm, "length", units),
            number(row.travel.yield_margin, "margin", units),
            *(
                number(force, "force", units)
                for other in row.others
                for force in (other.force_low_n, other.force_high_n)
            ),
        )
        for row in check.beside
    )
    return TextTable(f"{blade}: worst of the travel", heads, cells)
