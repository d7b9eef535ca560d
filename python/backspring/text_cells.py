"""Text in cells of a table that a spreadsheet may open: never a formula there, never lost here."""

from __future__ import annotations

import re
from collections.abc import Collection, Sequence

# What begins a formula, in letters of full width too; a quote before it makes it text.
_FORMULA = re.compile("'*[=+@\\t\\r\uff1d\uff0b\uff20\uff0d-]")


def as_cell(text: str) -> str:
    """Write a text so that a spreadsheet runs nothing of it."""
    return f"'{text}" if _FORMULA.match(text) else text


def from_cell(cell: str) -> str:
    """Read what as_cell() wrote; any other cell is as it stands."""
    return cell[1:] if cell.startswith("'") and _FORMULA.match(cell) else cell


def without_empty(rows: Sequence[list[str]], short: Collection[str]) -> list[list[str]]:
    """Undo what a spreadsheet adds: empty rows at the end, empty cells behind rows that are short.

    `short` are the first cells of those rows.
    """
    kept = list(rows)
    while kept and not any(kept[-1]):
        kept.pop()
    return [_cut(row) if row[:1] and row[0] in short else row for row in kept]


def _cut(row: list[str]) -> list[str]:
    filled = [place for place, cell in enumerate(row, start=1) if cell]
    return row[: filled[-1]] if filled else []
