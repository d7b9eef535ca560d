"""A check of two blades as a report for people: one line that answers, then tables by blade."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from backspring.report.check import CAUTION, head, steel_lines, stroke_name, target_row
from backspring.report.display import Shown, both, number, reading, text
from backspring.report.tables import Block, Lines, Report, TextTable
from backspring.units import System

if TYPE_CHECKING:
    from backspring.question.check_two import Beside, TwoCheck

Rows = dict[str, "Beside"]


def check_two_report(check: TwoCheck, units: System | None = None) -> Report:
    """Lay out a check of two blades in the given units, the design's own when none are given."""
    units = units or check.design.units
    return Report(headline(check, units), tuple(_blocks(check, units)))


def headline(check: TwoCheck, units: System) -> str:
    """Answer in one line: what either blade takes to open, and the worst stress."""
    rows = [*check.first.values(), *check.second.values()]
    worst = max((row.travel for row in rows), key=lambda travel: travel.peak_stress_mpa)
    stress = f"peak stress {text(worst.peak_stress_mpa, 'stress', units)}"
    margin = (
        ""
        if worst.yield_margin is None
        else f", yield margin {number(worst.yield_margin, 'margin', units)}"
    )
    first, second = _opening(check.first, units), _opening(check.second, units)
    return (
        f"{check.design.name}: the first blade {first}, the second {second}, {stress}{margin} at "
        "worst"
    )


def _opening(rows: Rows, units: System) -> str:
    strokes = [stroke for row in rows.values() for stroke in row.strokes]
    if not strokes:
        return "does not work"
    pulls = [stroke.peak_pull_n for stroke in strokes if stroke.peak_pull_n is not None]
    if pulls:
        return f"opens with {both(max(pulls), 'force', units)}"
    torque = max(stroke.peak_torque_nmm for stroke in strokes)
    return f"opens with a torque of {both(torque, 'torque', units)}"


def _blocks(check: TwoCheck, units: System) -> Iterator[Block]:
    for name, rows in (("First blade", check.first), ("Second blade", check.second)):
        yield _positions(name, rows, units)
        if any(row.strokes for row in rows.values()):
            yield _strokes(name, rows, units)
        yield _travel(name, rows, units)
    if check.targets:
        found = tuple(target_row(target, units) for target in check.targets)
        yield TextTable("Targets, worst of both blades", ("", "now", "wanted", ""), found)
    if check.notices:
        yield Lines("Notices", tuple(each.text(units) for each in check.notices))
    yield Lines("Steel", tuple(steel_lines(check.steel, units)))
    if left_open := check.design.assumptions(units):
        yield Lines("Assumed", left_open)
    yield Lines("Caution", (CAUTION,))


def _spoken(name: str, other: str) -> str:
    return f"{name}, other {other}".replace("_", "-")


def _positions(blade: str, rows: Rows, units: System) -> TextTable:
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
            _spoken(name, other),
            number(each.blade_angle_deg, "angle", units),
            number(each.force_n, "force", units),
            number(each.peak_stress_mpa, "stress", units),
            number(each.peak_stress_station_mm, "length", units),
            "datum" if name == other == "open" else reading(each.reading_loaded_mm, units),
            "datum" if name == "open" else reading(each.reading_unloaded_mm, units),
        )
        for other, row in rows.items()
        for name, each in row.positions.items()
    )
    return TextTable(f"{blade}: positions", heads, cells)


def _strokes(blade: str, rows: Rows, units: System) -> TextTable:
    strokes = [(other, stroke) for other, row in rows.items() for stroke in row.strokes]
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
            _spoken(stroke_name(stroke.from_position, stroke.to_position), other),
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
        for other, stroke in strokes
    )
    return TextTable(f"{blade}: strokes, opening", heads, cells)


def _travel(blade: str, rows: Rows, units: System) -> TextTable:
    heads = (
        "",
        head("force", "force", units),
        head("stress", "stress", units),
        head("at", "angle", units),
        head("station", "length", units),
        "yield margin",
        head("other tang least", "force", units),
        head("most", "force", units),
    )
    cells = tuple(
        (
            f"other {other}".replace("_", "-"),
            number(row.travel.peak_force_n, "force", units),
            number(row.travel.peak_stress_mpa, "stress", units),
            number(row.travel.peak_stress_angle_deg, "angle", units),
            number(row.travel.peak_stress_station_mm, "length", units),
            number(row.travel.yield_margin, "margin", units),
            *(number(force, "force", units) for force in row.other_force_n),
        )
        for other, row in rows.items()
    )
    return TextTable(f"{blade}: worst of the travel", heads, cells)
