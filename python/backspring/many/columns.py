"""Reads one column of values; what is no plain number is refused and never bent into one."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

import numpy as np
import numpy.typing as npt

from backspring.faults import Fault
from backspring.many.dimensions import read_value

Column = npt.NDArray[np.float64]

_PLAIN = "iuf"
_DEEPER = "2 dimensions or more"
_KINDS = {
    "b": "true and false",
    "c": "complex numbers",
    "S": "bytes",
    "T": "texts of variable length",
    "M": "dates",
    "m": "times",
    "V": "records",
}


def read_column(key: str, values: Any) -> Column | Fault:
    """Read numbers, texts with units, quantities of a unit library, or one value for all rows."""
    if _is_masked(values):
        return Fault("bad-value", key, "has masked values: leave those rows out")
    # A library's quantities would lose their unit as an array.
    if isinstance(values, list | tuple) or hasattr(values, "to"):
        return _read_listed(key, values)
    try:
        array = np.asarray(values)
    except (TypeError, ValueError, RuntimeError):
        return Fault("bad-value", key, "must be numbers, one for each row")
    if array.ndim == 0:
        value = read_value(key, array[()] if array.dtype.kind in _PLAIN else values)
        return value if isinstance(value, Fault) else np.array(value)
    if array.ndim != 1:
        message = f"must be one row of numbers, got {array.ndim} dimensions"
        return Fault("bad-value", key, message)
    if array.dtype.kind in "OU":
        return _read_each(key, array.tolist())
    if array.dtype.kind not in _PLAIN:
        return Fault("bad-value", key, f"must be numbers, got {_KINDS.get(array.dtype.kind)}")
    return np.asarray(array, dtype=np.float64)


def _is_masked(values: Any) -> bool:
    return isinstance(values, np.ma.MaskedArray) and bool(np.ma.is_masked(values))


def _read_listed(key: str, values: Any) -> Column | Fault:
    try:
        each = list(values)
    except TypeError:
        value = read_value(key, values)
        return value if isinstance(value, Fault) else np.array(value)
    # Numbers alone, which is what long lists hold, are taken together.
    if set(map(type, each)) <= {int, float, np.float64, np.int64}:
        try:
            return np.array(each, dtype=np.float64)
        except OverflowError:
            pass
    return _read_each(key, each)


def _read_each(key: str, values: Iterable[Any]) -> Column | Fault:
    read = []
    for row, each in enumerate(values):
        if each is np.ma.masked:
            return Fault("bad-value", key, f"row {row}: is masked: leave it out")
        if isinstance(each, np.generic | np.ndarray) and np.ndim(each) == 0:
            each = each.item()
        if isinstance(each, list | tuple | np.ndarray):
            return Fault("bad-value", key, f"must be one row of numbers, got {_DEEPER}")
        value = read_value(key, each)
        if isinstance(value, Fault):
            return Fault("bad-value", key, f"row {row}: {value.message}")
        read.append(value)
    return np.array(read)
