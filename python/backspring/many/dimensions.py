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


def find_row(key: str) -> _core.Field | None:
    """Return the row of a dimension, also of one as "blades.pen.tang.closed"; None if none is."""
    if not key.startswith("blades."):
        return rows_by_key().get(key)
    row = rows_by_key().get(key.split(".", 2)[-1])
    return row if row is not None and row.of_blade else None


def row_of(key: str) -> _core.Field:
    """Return the row of a dimension that there is."""
    row = find_row(key)
    assert row is not None
    return row


def unit_of_key(key: str) -> str:
    """Return the core's unit of a dimension: "mm", "MPa", or nothing for a ratio."""
    return unit_in(row_of(key).quantity, "mm")


def refuse_key(design: Design, key: Any) -> Fault | None:
    """Return what is wrong with naming this dimension of a design; None when nothing is."""
    if not isinstance(key, str) or find_row(key) is None:
        name, known = str(key), rows_by_key()
        first, blade, inner = f"{name}..".split(".", 2)
        lead = f"{first}.{blade}." if first == "blades" else ""
        near = near_match(inner.rstrip(".") if lead else name, known)
        hint = f'did you mean "{lead}{near}"?' if near else f"known are {', '.join(known)}"
        return Fault("unknown-key", name, f"unknown dimension: {hint}")
    blade = key.split(".")[1]
    if key.startswith("blades.") and blade not in design.blades:
        message = f'no blade is called "{blade}": known are {", ".join(design.blades)}'
        return Fault("unknown-blade", key, message)
    if not _core.has_dimension(design.core, key):
        return Fault("bad-value", key, "the design has none to change")
    return None


def read_value(key: str, value: Any, system: System = "mm") -> float | Fault:
    """Read a number or text with a unit; bare numbers are in the units of the system."""
    try:
        return parse(value, kind_of(row_of(key)), system)
    except InvalidInput as error:
        return Fault("bad-value", key, str(error))
