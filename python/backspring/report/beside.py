"""A blade that shares its spring, with the others in each of their positions."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from backspring.report.display import Shown, number, reading, unit_of
from backspring.report.tables import Block, Lines, TextTable
from backspring.units import System

if TYPE_CHECKING:
    from backspring.question.check import Beside, Check


def head(name: str, kind: Shown, units: System) -> str:
    """Head a column with its unit."""
    return f"{name} {unit_of(kind, units)}".rstrip()


def headed(block: Block, before: str = "", after: str = "") -> Block:
    """Copy a block with more in its heading: whose it is, or when it holds."""
    if isinstance(block, TextTable):
        return TextTable(f"{before}{block.title}{after}", block.heads, block.rows)
    return Lines(f"{before}{block.heading}{after}", block.lines)


def stroke_name(from_position: str, to_position: str) -> str:
    """Name a stroke as people do."""
    return f"{from_position} to {to_position}".replace("_", "-")


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
        head("loaded", "reading", units),
        head("unloaded", "reading", units),
    )
    cells = tuple(
        (
            _spoken(name, row),
            number(each.blade_angle_deg, "angle", units),
            number(each.force_n, "force", units),
            number(each.peak_stress_mpa, "stress", units),
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
