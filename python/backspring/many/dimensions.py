"""The numbers in which designs can differ, and how a value of one is read."""

from __future__ import annotations

from functools import cache
from typing import Any

from backspring import _core
from backspring.design.design import Design
from backspring.design.fields import kind_of
from backspring.errors import InvalidInput
from backspring.faults import Fault, near_match
from backspring.unit_table import unit_in
from backspring.units import System, parse


@cache
def rows_by_key() -> dict[str, _core.Field]:
    """Return the row of the table of fields for each dimension."""
    return {row.key: row for row in _core.dimensions()}


def units_by_key() -> dict[str, str]:
    """Return the core's unit of each dimension: "mm", "MPa", or nothing for a ratio."""
    return {key: unit_in(row.quantity, "mm") for key, row in rows_by_key().items()}


def refuse_key(design: Design, key: Any) -> Fault | None:
    """Return what is wrong with naming this dimension of a design; None when nothing is."""
    known = rows_by_key()
    if not isinstance(key, str) or key not in known:
        near = near_match(str(key), known)
        hint = f'did you mean "{near}"?' if near else f"known are {', '.join(known)}"
        return Fault("unknown-key", str(key), f"unknown dimension: {hint}")
    if not _core.has_dimension(design.core, key):
        return Fault("bad-value", key, "the design has none to change")
    return None


def read_value(key: str, value: Any, system: System = "mm") -> float | Fault:
    """Read a number or text with a unit; bare numbers are in the units of the system."""
    try:
        return parse(value, kind_of(rows_by_key()[key]), system)
    except InvalidInput as error:
        return Fault("bad-value", key, str(error))
