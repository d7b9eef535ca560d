"""Reads the values of a call, and tells the core's faults as those of a file are told."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any

from backspring.errors import InvalidInput
from backspring.faults import Fault, invalid
from backspring.units import Kind, System, parse


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


@contextmanager
def told() -> Iterator[None]:
    """Tell the core's faults one by one."""
    try:
        yield
    except InvalidInput as error:
        faults = [Fault("bad-value", each.key, each.message) for each in error.faults]
        raise (invalid(faults) if faults else error) from None
