"""The verdict for people: ways to fail with their margins, least first, and a sentence on each."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from backspring import _core
from backspring.report.display import Shown, number, text
from backspring.report.tables import Block, Lines, TextTable
from backspring.units import System

SHOWN_FIRST = 3
_KINDS: dict[str, Shown] = {"MPa": "stress", "mm": "reading"}
_FIGURE = re.compile(r"(\d+(?:\.\d+)?) (MPa|mm)\b")


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
            each.name.replace("-", " "),
            _amount(each.value, each.unit, units),
            _amount(each.limit, each.unit, units),
            number(each.margin, "margin", units),
            number(each.margin_low, "margin", units),
        )
        for each in shown
    )
    yield TextTable(title, ("", "is", "may be", "margin", "at worst"), rows)
    sentences = tuple(
        f"{each.name.replace('-', ' ')}: {in_units(each.sentence, units)}" for each in shown
    )
    left = len(margins) - len(shown)
    more = (f"{left} more with --all",) if left else ()
    yield Lines("In words", sentences + more)


def in_units(sentence: str, units: System) -> str:
    """Turn the stresses and lengths of a sentence into the units asked for."""
    if units == "mm":
        return sentence
    return _FIGURE.sub(lambda found: text(float(found[1]), _KINDS[found[2]], units), sentence)


def _amount(value: float, unit: str, units: System) -> str:
    return text(value, _KINDS[unit], units) if unit in _KINDS else f"{value:.3g} {unit}"
