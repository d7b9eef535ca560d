"""Reads the values of a call, and words the core's faults in the units of who reads them."""

from __future__ import annotations

import math
from collections.abc import Iterator
from contextlib import contextmanager
from numbers import Real
from typing import Any

from backspring import _core
from backspring.errors import InvalidInput
from backspring.faults import Fault, invalid
from backspring.units import Kind, System, parse, shown


def refusal(key: str, message: str) -> InvalidInput:
    """Make the exception for one bad value."""
    return invalid([Fault("bad-value", key, message)])


def quantity(value: Any, kind: Kind, key: str, system: System = "mm") -> float:
    """Read a value in the core's unit; a bare number is in `system`. A fault names the key."""
    try:
        return parse(value, kind, system)
    except InvalidInput as error:
        raise refusal(key, str(error)) from None


def length(value: Any, key: str, system: System = "mm") -> float:
    """Read a length in mm."""
    return quantity(value, "length", key, system)


def plain_number(value: Any, key: str) -> float:
    """Take a number without a unit; no truth value, mask or imaginary part is bent into one."""
    if type(value) is float:
        return value
    if getattr(value, "ndim", None) == 0 and not hasattr(value, "mask"):
        value = value.item()
    if not isinstance(value, Real) or isinstance(value, bool):
        raise refusal(key, f"must be a number, got {value!r}")
    try:
        return float(value)
    except OverflowError:
        return math.inf


def fault_text(fault: _core.Fault, system: System) -> str:
    """Say the rule that a fault breaks and the values that break it, in the units of `system`."""
    numbers = [shown(each, fault.quantity, system) for each in (*fault.limits, *fault.values)]
    return fault.text.format(*numbers) if numbers else fault.text


@contextmanager
def input_faults() -> Iterator[None]:
    """Tell the core's faults one by one."""
    try:
        yield
    except InvalidInput as error:
        faults = [Fault("bad-value", each.key, each.message) for each in error.faults]
        raise (invalid(faults) if faults else error) from None
