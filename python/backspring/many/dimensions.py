"""The numbers in which designs can differ, and how a value of one is read."""

from __future__ import annotations

from functools import cache
from typing import Any

from backspring import _core
from backspring.design.design import Design
from backspring.errors import InvalidInput
from backspring.faults import Fault, near_match
from backspring.units import Kind, System, parse

_KINDS: dict[str, Kind] = {"mm": "length", "MPa": "stress", "": "number"}


@cache
def units_by_key() -> dict[str, str]:
    """Return the unit of each dimension: "mm", "MPa", or nothing for a ratio."""
    return {each.key: each.unit for each in _core.dimensions()}


def refuse_key(design: Design, key: Any) -> Fault | None:
    """Return what is wrong with naming this dimension of a design; None when nothing is."""
    known = units_by_key()
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
        return parse(value, _KINDS[units_by_key()[key]], system)
    except InvalidInput as error:
        return Fault("bad-value", key, str(error))
