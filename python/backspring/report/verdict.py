"""The verdict for people: ways to fail with their margins, least first, and a sentence on each."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from backspring import _core
from backspring.report.display import Shown, number, text
from backspring.report.sentences import margin_sentence
from backspring.report.tables import Block, Lines, TextTable
from backspring.units import System

SHOWN_FIRST = 3
_KINDS: dict[str, Shown] = {"stress": "stress", "length": "reading", "hardness": "hardness"}
# An edge's dip is a length across the knife, not a reading of the dial.
_OWN_KINDS: dict[str, Shown] = {"rap": "length"}
_LABELS = {"spring-trade": "spring makers' tables"}


def verdict_blocks(
    margins: Sequence[_core.Margin], units: System, everything: bool
) -> Iterator[Block]:
    """Lay out the first margins, or all of them."""
    shown = margins if everything else margins[:SHOWN_FIRST]
    if not shown:
        return
    title = "Verdict" if everything else f"Verdict, the {len(shown)} least margins"
    rows = tuple(
        (
            label(each),
            *amounts(each, units),
            number(each.margin, "margin", units),
            number(each.margin_low, "margin", units),
        )
        for each in shown
    )
    yield TextTable(title, ("", "now", "limit", "margin", "at worst"), rows)
    sentences = tuple(f"{label(each)}: {margin_sentence(each, units)}" for each in shown)
    left = len(margins) - len(shown)
    more = (f"{left} more with --all",) if left else ()
    yield Lines("In words", sentences + more)


def label(margin: _core.Margin) -> str:
    """Name a margin as people do."""
    return margin_word(margin.name)


def margin_word(name: str) -> str:
    """Name a margin as people do, by its name in the verdict."""
    return _LABELS.get(name, name.replace("-", " "))


def amounts(margin: _core.Margin, units: System) -> tuple[str, str]:
    """Write what is and what the limit is."""
    kind = _OWN_KINDS.get(margin.name) or _KINDS[margin.quantity.name]
    return text(margin.value, kind, units), text(margin.limit, kind, units)
