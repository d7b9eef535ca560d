"""Grinding as a report for people: one line that answers, a table, and what to mind."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from backspring import _core
from backspring.fit.knife_data import knife_figures
from backspring.notice import Notice, all_from_core
from backspring.question.check import check_blade
from backspring.question.grind_result import Flush, Rows
from backspring.report.check import target_row
from backspring.report.display import Shown, number, reading, text, unit_of
from backspring.report.how_sure import figure_lines, good_to, sure_to
from backspring.report.tables import Block, Lines, Report, TextTable
from backspring.report.wrapping import that_fits
from backspring.units import System

# Common practice, no source.
CAUTIONS = (
    "Steel that is off cannot be put back: stop a pass early, fit, and read again.",
    "Thin steel heats fast: keep it cool enough to hold, or the temper goes.",
    "Guard the wheel, and keep the dust out of eyes and lungs.",
    "A computed margin does not replace a test.",
)


def grind_report(
    table: Rows,
    units: System | None = None,
    passes: str = "",
    beside: tuple[Block, ...] = (),
    sds: Mapping[str, float | None] | None = None,
) -> Report:
    """Lay out a table in the given units, the design's own when none are given.

    `passes` is a sentence on how many passes it takes; `beside` stands after the table. `sds` are
    standard deviations of the last row of one knife, by the names of its log's figures.
    """
    units = units or table.design.units
    sds = sds or {}
    line = headline(table, units, sds.get("removed_mm"))
    return Report(line, tuple(_blocks(table, units, passes, beside, sds)))


def headline(table: Rows, units: System, removed_sd_mm: float | None = None) -> str:
    """Answer in one line: what comes off where, and what pull and margin are left."""
    first, last = table.rows[0], table.rows[-1]
    if isinstance(table, Flush) and not table.passes:
        return f"{table.design.title}: nothing stands proud of the liners when open and loaded"
    sure = "" if removed_sd_mm is None else f" {sure_to(removed_sd_mm, 'reading', units)}"
    off = f"{text(table.removed_mm, 'reading', units)}{sure} off the {table.face}"
    if isinstance(table, Flush):
        off = f"flush in {_times(table.passes)}, at most {off}"
    parts = [off]
    kind, was, left = _effort(first, last)
    if was is None or left is None:
        parts.append("does not work as a slip joint")
    else:
        word = "pull" if kind == "force" else "torque"
        parts.append(f"{word} {number(was, kind, units)} to {text(left, kind, units)}")
    if first.yield_margin is not None and last.yield_margin is not None:
        margins = [number(each.yield_margin, "margin", units) for each in (first, last)]
        parts.append(f"yield margin {margins[0]} to {margins[1]}")
    return that_fits(table.design.title, *parts)


def notices(table: Rows) -> tuple[Notice, ...]:
    """Find what a maker should know about the ground spring, and which targets grinding loses."""
    met = {target.name for target in table.rows[0].targets if target.met}
    lost = tuple(
        Notice("target-missed", {"target": target.name})
        for target in table.targets
        if target.name in met and not target.met
    )
    return (*all_from_core(check_blade(table.ground).result.notices), *lost)


def missed(row: _core.GrindRow) -> str:
    """Name the targets that a row misses; nothing where it meets them all."""
    return ", ".join(each.name.replace("_", " ") for each in row.targets if not each.met)


def _times(passes: int) -> str:
    return f"{passes} pass" + ("" if passes == 1 else "es")


def _effort(
    first: _core.GrindRow, last: _core.GrindRow
) -> tuple[Shown, float | None, float | None]:
    """Pull where the design has a nail nick, torque where it has none."""
    if first.peak_pull_n is not None:
        return "force", first.peak_pull_n, last.peak_pull_n
    return "torque", first.peak_torque_nmm, last.peak_torque_nmm


def _blocks(
    table: Rows,
    units: System,
    passes: str,
    beside: tuple[Block, ...],
    sds: Mapping[str, float | None],
) -> Iterator[Block]:
    if sds:
        yield _how_sure(table, sds, units)
    yield _table(table, units)
    judged = tuple(target_row(target, units) for target in table.targets)
    yield TextTable("Targets, ground spring", ("", "then", "wanted", ""), judged)
    yield from beside
    if passes:
        yield Lines("Passes", (passes,))
    if found := notices(table):
        yield Lines("Notices, ground spring", tuple(notice.text(units) for notice in found))
    yield Lines("Caution", CAUTIONS)


def _how_sure(table: Rows, sds: Mapping[str, float | None], units: System) -> Lines:
    """Say how sure the last row is of one knife."""
    off = text(table.removed_mm, "reading", units)
    lines = []
    if "removed_mm" in sds:
        lines.append(f"to take off: {off}, {good_to(sds['removed_mm'], 'reading', units)}")
    figures = {name: (each, sds[name]) for name, each in knife_figures(table.rows[-1]).items()}
    lines += figure_lines(figures, units)
    then = "flush" if isinstance(table, Flush) else f"{off} is off"
    return Lines(f"This knife when {then}", tuple(lines))


def _table(table: Rows, units: System) -> TextTable:
    kind, _, _ = _effort(table.rows[0], table.rows[-1])
    effort = "peak_pull_n" if kind == "force" else "peak_torque_nmm"
    columns: list[tuple[str, list[str]]] = [
        (_head("off", "reading", units), _numbers(table, "removed_mm", "reading", units)),
        (
            _head("pull" if kind == "force" else "torque", kind, units),
            _numbers(table, effort, kind, units),
        ),
        (
            _head("worst stress", "stress", units),
            _numbers(table, "travel_peak_stress_mpa", "stress", units),
        ),
        ("yield margin", _numbers(table, "yield_margin", "margin", units)),
    ]
    for name in ("half_stop", "closed"):
        column = [getattr(row, f"reading_loaded_{name}_mm") for row in table.rows]
        if any(each is not None for each in column):
            head = _head(name.replace("_", "-"), "reading", units)
            columns.append((head, [reading(each, units) for each in column]))
    if table.face == "pad":
        head = _head("preload", "reading", units)
        columns.append((head, _numbers(table, "preload_mm", "reading", units)))
    if isinstance(table, Flush):
        head = _head("proud", "reading", units)
        columns.append((head, [number(max(h, 0.0), "reading", units) for h in table.proud_mm]))
    columns.append(("misses", [missed(row) or "none" for row in table.rows]))
    heads, cells = zip(*columns, strict=True)
    start, end = (number(each, "length", units) for each in table.region_mm)
    title = f"Off the {table.face}, {start} to {end} {unit_of('length', units)}"
    return TextTable(title, tuple(heads), tuple(zip(*cells, strict=True)))


def _head(name: str, kind: Shown, units: System) -> str:
    return f"{name} {unit_of(kind, units)}"


def _numbers(table: Rows, name: str, kind: Shown, units: System) -> list[str]:
    return [number(getattr(row, name), kind, units) for row in table.rows]
