"""Text in cells of a table that a spreadsheet may open: never a formula there, never lost here."""

from __future__ import annotations

import re

# What begins a formula, in letters of full width too; a quote before it makes it text.
_FORMULA = re.compile("'*[=+@\\t\\r\uff1d\uff0b\uff20\uff0d-]")


def as_cell(text: str) -> str:
    """Write a text so that a spreadsheet runs nothing of it."""
    return f"'{text}" if _FORMULA.match(text) else text


def from_cell(cell: str) -> str:
    """Read what as_cell() wrote; any other cell is as it stands."""
    return cell[1:] if cell.startswith("'") and _FORMULA.match(cell) else cell
