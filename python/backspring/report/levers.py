"""The lever table for the bench: what comes of a little off each face."""

from __future__ import annotations

from typing import TYPE_CHECKING

from backspring import _core
from backspring.report.display import STYLES, Shown, Style
from backspring.report.tables import Lines, Report, TextTable
from backspring.unit_table import THOU_MM
from backspring.units import System

if TYPE_CHECKING:
    from backspring.fit.levers import Levers

# Heads by the rows' names, and how many decimals more than usual a small change needs.
_COLUMNS: dict[str, tuple[str, Shown, int]] = {
    "half_stop_mm": ("half-stop", "reading", 1),
    "closed_mm": ("closed", "reading", 1),
    "tip_mm": ("tip", "reading", 1),
    "edge_gap_mm": ("edge gap", "reading", 1),
    "peak_pull_n": ("pull", "force", 1),
    "yield_margin": ("margin", "margin", 2),
}
FACE_NAMES = {
    "half_stop": "half-stop face",
    "closed": "closed face",
    "kick": "kick",
    "open": "open face",
    "back": "back of the spring",
    "belly": "belly of the spring",
}
# What the numbers are for, and how much that is of the core's depth.
DEPTH_OF: dict[System, tuple[str, float]] = {
    "mm": ("0.1 mm", 0.1 / _core.LEVER_DEPTH_MM),
    "in": ("1 thou", THOU_MM / _core.LEVER_DEPTH_MM),
}


def levers_report(levers: Levers, units: System | None = None) -> Report:
    """Lay out a lever table in the given units, the design's own when none are given."""
    units = units or levers.design.units
    depth = DEPTH_OF[units][0]
    headline = f"{levers.design.title}: what {depth} off each face moves, pins in"
    note = "+ is prouder, a tip farther out, a wider gap; twice the depth moves twice as much."
    return Report(headline, (levers_table(levers, units), Lines("Reading it", (note,))))


def levers_table(levers: Levers, units: System) -> TextTable:
    """Write one row a face; a column that nothing is known of is left out."""
    depth, share = DEPTH_OF[units]
    shown = [
        (name, *_COLUMNS[name])
        for name in _COLUMNS
        if any(getattr(row, name) is not None for row in levers.rows)
    ]
    styles = {name: _finer(STYLES[units][kind], more) for name, _, kind, more in shown}
    rows = tuple(
        (
            FACE_NAMES[row.face.name],
            *(_signed(getattr(row, name), styles[name], share) for name, *_ in shown),
        )
        for row in levers.rows
    )
    heads = ("", *(f"{head} {styles[name].unit}".rstrip() for name, head, *_ in shown))
    return TextTable(f"Levers: what {depth} off each face moves, pins in", heads, rows)


def moves_table(levers: list[_core.BladeLever], units: System, when: str) -> TextTable:
    """Write what each tang's faces move on every blade: one row a face, one column a reading."""
    depth, share = DEPTH_OF[units]
    style = _finer(STYLES[units]["reading"], 1)
    columns = [
        (place, name)
        for place in range(len(levers[0].moves))
        for name in ("half_stop_mm", "closed_mm")
        if any(getattr(row.moves[place], name) is not None for row in levers)
    ]
    heads = [
        f"{levers[0].moves[place].blade} {_COLUMNS[name][0]} {style.unit}"
        for place, name in columns
    ]
    rows = tuple(
        (
            f"{row.blade}, {FACE_NAMES[row.face.name]}",
            *(_signed(getattr(row.moves[place], name), style, share) for place, name in columns),
        )
        for row in levers
    )
    title = f"{when}: what {depth} off each face moves on every blade, pins in, where it is lowest"
    return TextTable(title, ("", *heads), rows)


def _finer(style: Style, more: int) -> Style:
    return Style(style.unit, style.size, style.decimals + more)


def _signed(value: float | None, style: Style, share: float) -> str:
    if value is None:
        return "-"
    shown = style.number(share * value)
    return shown if shown.startswith("-") or float(shown) == 0.0 else f"+{shown}"
