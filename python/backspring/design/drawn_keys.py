"""What outlines of a design file came to, in a sentence a key."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from backspring.design.fields import ROWS
from backspring.design.reading import dotted
from backspring.units import System, shown


def drawn_keys(content: Mapping[str, Any], keys: Sequence[str], units: System) -> Iterator[str]:
    """Say each key's value that comes from an outline; of rows how many, and between what."""
    values = dict(dotted(dict(content)))
    for key in keys:
        if key not in values:
            continue
        row = ROWS[key]
        value = values[key]
        if isinstance(value, list) and isinstance(value[0], list):
            numbers = [each[1] for each in value]
            ends = " to ".join(shown(each, row.quantity, units) for each in _ends(numbers))
            yield f"{key}: {ends} in {len(value)} rows, from the outline"
        elif isinstance(value, list):
            both = " and ".join(shown(each, row.quantity, units) for each in value)
            yield f"{key}: {both}, from the outline"
        else:
            yield f"{key}: {shown(value, row.quantity, units)}, from the outline"


def _ends(numbers: Sequence[float]) -> tuple[float, float]:
    return min(numbers), max(numbers)
