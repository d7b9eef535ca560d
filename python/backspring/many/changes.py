"""Columns of values that many designs differ in, read and made one length."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import numpy as np
import numpy.typing as npt

from backspring.design.design import Design
from backspring.faults import Fault, invalid
from backspring.many.dimensions import read_value, refuse_key

Column = npt.NDArray[np.float64]


def read_changes(design: Design, changes: Mapping[str, Any]) -> dict[str, Column]:
    """Read columns of numbers, of texts with units, or single values for all rows.

    Raises InvalidInput with every fault.
    """
    if not changes:
        raise invalid([Fault("bad-value", "changes", "must name at least one dimension")])
    read: dict[str, Column] = {}
    faults: list[Fault] = []
    for key, values in changes.items():
        column = refuse_key(design, key) or _read_column(key, values)
        if isinstance(column, Fault):
            faults.append(column)
        else:
            read[key] = column
    if faults := faults or _length_faults(read):
        raise invalid(faults)
    rows = max((column.size for column in read.values() if column.ndim), default=1)
    return {key: np.array(np.broadcast_to(column, (rows,))) for key, column in read.items()}


def _read_column(key: str, values: Any) -> Column | Fault:
    if isinstance(values, str) or np.ndim(values) == 0:
        value = read_value(key, values)
        return value if isinstance(value, Fault) else np.array(value)
    if any(isinstance(each, str) for each in values):
        return _read_texts(key, values)
    try:
        column = np.asarray(values, dtype=np.float64)
    except (TypeError, ValueError):
        return Fault("bad-value", key, "must be numbers, one for each row")
    if column.ndim != 1:
        message = f"must be one row of numbers, got {column.ndim} dimensions"
        return Fault("bad-value", key, message)
    return column


def _read_texts(key: str, values: Any) -> Column | Fault:
    column = np.empty(len(values))
    for row, each in enumerate(values):
        value = read_value(key, each)
        if isinstance(value, Fault):
            return Fault("bad-value", key, f"row {row}: {value.message}")
        column[row] = value
    return column


def _length_faults(columns: Mapping[str, Column]) -> list[Fault]:
    sizes = {key: column.size for key, column in columns.items() if column.ndim}
    first = next(iter(sizes), "")
    return [
        Fault("bad-value", key, f"must have as many rows as {first}, {sizes[first]}, got {size}")
        for key, size in sizes.items()
        if size != sizes[first]
    ]


def _fits(design: Design) -> dict[str, Any]:
    """Tables of the fits by what stands before their keys in a study: nothing for the own one's."""
    content = design.to_dict()
    first, *others = design.blades
    fits = {first: content["fit"]}
    fits |= {
        name: each["fit"] for name, each in zip(others, content.get("blades", []), strict=True)
    }
    leads = {f"blades.{name}.": fit for name, fit in fits.items()}
    return {"": fits[design.blade], **(leads if others else {})}


def with_followers(design: Design, columns: Mapping[str, Column]) -> dict[str, Column]:
    """Add what a design file leaves to follow: the dial at the pivot, the rear hole's offset."""
    fits, followed = _fits(design), dict(columns)
    for lead, fit in fits.items():
        pivot, dial = f"{lead}tang.pivot", f"{lead}fit.dial"
        if pivot in columns and "dial" not in fit and dial not in columns:
            followed[dial] = columns[pivot]
    fit = fits[""]
    stated = {"fit.preload", "fit.rear_pin_offset"} & columns.keys()
    moved = {"tang.pivot", "spring.rear_pin"} & columns.keys()
    if "rear_pin_offset" in fit and moved and not stated:
        rows = next(iter(columns.values())).size
        followed["fit.rear_pin_offset"] = np.full(rows, fit["rear_pin_offset"])
    return followed
