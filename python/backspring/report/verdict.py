"""The verdict for people: ways to fail, each with its word, those that fail first."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from backspring import _core
from backspring.report.display import Shown, number, text
from backspring.report.sentences import margin_sentence
from backspring.report.tables import Block, Lines, TextTable
from backspring.units import System

SHOWN_FIRST = 3
HEADS = ("", "", "now", "limit", "margin", "at worst")
# In the order in which a maker has to know them.
MEANINGS = {
    "fails": "the margin is below 1",
    "close": f"it is below {_core.CLOSE_MARGIN}, or at worst below 1",
    "holds": "it is more",
    "note": "an upper limit or a rule of thumb: good to know, no failure",
}
_KINDS: dict[str, Shown] = {
    "stress": "stress",
    "length": "reading",
    "hardness": "hardness",
    "ratio": "change",
}
# An edge's dip is a length across the knife, not a reading of the dial.
_OWN_KINDS: dict[str, Shown] = {"rap": "length"}
_LABELS = {"spring-trade": "spring makers' tables", "rap": "rap of the edge"}
_TO_KNOW = (_core.MarginWord.fails, _core.MarginWord.close)


def verdict_blocks(
    margins: Sequence[_core.Margin], units: System, everything: bool
) -> Iterator[Block]:
    """Lay out what fails and what is close, or all."""
    shown = [*margins] if everything else _first(margins)
    if not shown:
        return
    yield TextTable("Verdict", HEADS, tuple(row(each, units) for each in shown))
    said = [each for each in shown if everything or each.word in _TO_KNOW]
    lines = [f"{label(each)}: {margin_sentence(each, units, everything)}" for each in said]
    if more := _left(margins[len(shown) :]):
        lines.append(more)
    if lines:
        yield Lines("In words", tuple(lines))


def _first(margins: Sequence[_core.Margin]) -> list[_core.Margin]:
    to_know = sum(each.word in _TO_KNOW for each in margins)
    return [*margins[: max(to_know, SHOWN_FIRST)]]


def _left(margins: Sequence[_core.Margin]) -> str:
    """Say what else was judged: "3 more hold, 2 are notes: see --all"."""
    notes = sum(each.word == _core.MarginWord.note for each in margins)
    hold = len(margins) - notes
    parts = [f"{hold} more {'holds' if hold == 1 else 'hold'}"] if hold else []
    if notes:
        parts.append("1 is a note" if notes == 1 else f"{notes} are notes")
    return f"{', '.join(parts)}: see them with --all" if parts else ""


def row(margin: _core.Margin, units: System) -> tuple[str, ...]:
    """Write a margin as a row: its word, what is, the limit, and both margins."""
    return (
        label(margin),
        margin.word.name,
        *amounts(margin, units),
        number(margin.margin, "margin", units),
        number(margin.margin_low, "margin", units),
    )


def label(margin: _core.Margin) -> str:
    """Name a margin as people do."""
    return spoken(margin.name)


def spoken(name: str) -> str:
    """Name a way to fail as people do."""
    return _LABELS.get(name, name.replace("-", " "))


def amounts(margin: _core.Margin, units: System) -> tuple[str, str]:
    """Write what is and what the limit is."""
    kind = _OWN_KINDS.get(margin.name) or _KINDS[margin.quantity.name]
    return text(margin.value, kind, units), text(margin.limit, kind, units)
