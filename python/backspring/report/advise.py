"""Advice as a report for people: what to change, what it costs, and what to put in the file."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any

from backspring.design.file_lines import file_lines
from backspring.question.advise_result import Advice, Advised, Exclusive, Moved
from backspring.report.advise_sure import WaysSds, may_miss, sure_lines
from backspring.report.advise_words import joined, limit_rows, limit_words, moved_words, target_text
from backspring.report.check import CAUTION, target_row
from backspring.report.display import Shown, number, unit_of
from backspring.report.tables import Block, Lines, Report, TextTable
from backspring.report.verdict import spoken
from backspring.units import System

_WIDTH = 80
_PRICE: tuple[tuple[str, str, Shown], ...] = (
    ("pull", "peak_pull_n", "force"),
    ("stress", "peak_stress_mpa", "stress"),
    ("yield", "yield_margin", "margin"),
    ("fatigue", "fatigue_margin", "margin"),
    ("half-stop", "reading_loaded_half_stop_mm", "reading"),
    ("closed", "reading_loaded_closed_mm", "reading"),
    ("rise", "rise_mm", "length"),
)
_RANKED = (
    "Single changes first, then two together, each lot from small to large.",
    "A change counts as its share of the way to its limit below, two as the root",
    "of the sum of their squares.",
)
_STOPPED = "Several blades take their time: ask about one with --blade for more."
_FITTED = "Faces that are ground to suit count for nothing: every knife is fitted."


def advise_report(
    advised: Advised,
    units: System | None = None,
    everything: bool = False,
    sds: WaysSds | None = None,
) -> Report:
    """Lay out advice in the given units, those that values are set in when none are given.

    `everything` shows all ways instead of the first. `sds` tell of each shown way how sure one
    knife's log makes it.
    """
    units, sds = units or advised.units, sds or {}
    line = headline(advised, units, sds)
    return Report(line, tuple(_blocks(advised, units, everything, sds)))


def headline(advised: Advised, units: System, sds: WaysSds) -> str:
    """Answer in one line: nothing, the smallest change, or what excludes what."""
    title = advised.original.title
    if advised.status == "pass":
        return f"{title}: meets every target as it stands, nothing needs changing"
    if advised.advice:
        first = advised.advice[0]
        meets = "meets" if not may_miss(first, sds, 0) else "just about meets"
        line = f"{title}: {meets} every target with {_said(first, units)}"
        if len(line) <= _WIDTH:
            return line
        changed = joined([each.name for each in first.moved if not each.face])
        return f"{title}: {meets} every target with another {changed}"
    return f"{title}: no change, and no two together, meet every target within the limits"


def _blocks(advised: Advised, units: System, everything: bool, sds: WaysSds) -> Iterator[Block]:
    rows = tuple(target_row(each, units) for each in advised.targets)
    yield TextTable("Targets, as drawn", ("", "now", "wanted", ""), rows)
    if advised.status == "pass":
        yield Lines("Caution", (CAUTION,))
        return
    if advised.advice:
        yield from _ways(advised, units, everything, sds)
    else:
        yield from _none(advised, units)
    if not advised.complete:
        yield Lines("Not all was tried", (_STOPPED,))
    heads = ("", "now", "from", "to", "steps of")
    yield TextTable("Limits", heads, tuple(limit_rows(advised.limits, units)))
    if said := limit_words(advised.limits):
        yield Lines("Steels", said)
    yield Lines("Caution", (CAUTION,))


def _ways(advised: Advised, units: System, everything: bool, sds: WaysSds) -> Iterator[Block]:
    shown = advised.shown(everything)
    lines = [line for i, each in enumerate(shown, 1) for line in _numbered(i, each, units)]
    if left := len(advised.advice) - len(shown):
        lines.append(f"{left} more with --all")
    yield Lines("Each of these meets every target", tuple(lines))
    if sds:
        yield sure_lines(shown, sds, units)
    yield from _prices(advised, shown, units)
    short = tuple(
        f"{i}: {joined([spoken(name) for name in each.falls_short])}"
        for i, each in enumerate(shown, 1)
        if each.falls_short
    )
    if short:
        yield Lines("Has no margin left that had before", short)
    yield Lines("In the design file, for 1", file_lines(shown[0].changes))
    yield Lines("Ranked", (*_RANKED, *((_FITTED,) if advised.faces else ())))


def _none(advised: Advised, units: System) -> Iterator[Block]:
    if advised.exclusive:
        said = tuple(line for each in advised.exclusive for line in _exclusive(each, units))
        yield Lines("In the way", said)
    if advised.nearest is None:
        why = "as it is drawn it does not work as a slip joint: see what check says first"
        yield Lines("In the way", (why,))
        return
    nearest = advised.nearest
    yield Lines("Nearest", tuple(_numbered(1, nearest, units)))
    rows = tuple(target_row(each, units) for each in nearest.targets)
    yield TextTable("Targets, with the nearest", ("", "then", "wanted", ""), rows)
    yield from _prices(advised, (nearest,), units)


def _exclusive(each: Exclusive, units: System) -> Iterator[str]:
    names = [name.replace("_", " ") for name in each.targets]
    if len(names) == 1:
        best = target_text(each.targets[0], each.best[each.targets[0]], units)
        yield f"{names[0]} cannot be met; nearest {best}"
        return
    yield f"{joined(names)} exclude each other:"
    for name in each.targets:
        others = [other.replace("_", " ") for other in each.targets if other != name]
        best = target_text(name, each.best[name], units)
        yield f"  with {joined(others)} met, {name.replace('_', ' ')} comes to {best}"


def _numbered(place: int, advice: Advice, units: System) -> Iterator[str]:
    """Write the changes of one way, a line each where there are several."""
    head = f"{place:>2}  "
    if not advice.moved:
        yield head + "as it is drawn"
    for each in advice.moved:
        yield head + moved_words(each, units)
        head = "    "


def _said(advice: Advice, units: System) -> str:
    own: Sequence[Moved] = [each for each in advice.moved if not each.face] or advice.moved
    return joined([moved_words(each, units) for each in own])


def _prices(advised: Advised, shown: Sequence[Advice], units: System) -> Iterator[Block]:
    rows = [("as drawn", advised.figures)]
    rows += [(f"{i:>2}", each.figures) for i, each in enumerate(shown, 1)]
    blades = advised.figures.get("blades", {"": None})
    for blade in blades:
        of = f", {blade} at worst" if blade else ""
        cells = tuple(
            (name, *_cells(each["blades"][blade] if blade else each, units)) for name, each in rows
        )
        unit = unit_of("reading", units)
        title = f"What it comes to{of} (margins; readings loaded, in {unit})"
        yield TextTable(title, _heads(units), cells)


def _heads(units: System) -> tuple[str, ...]:
    plain = ("reading", "margin")
    return (
        "",
        *(name if kind in plain else f"{name} {unit_of(kind, units)}" for name, _, kind in _PRICE),
    )


def _cells(figures: dict[str, Any], units: System) -> Iterator[str]:
    for _, key, kind in _PRICE:
        yield number(figures[key], kind, units)
