"""Columns of values that many designs differ in, read and made one length."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import numpy as np

from backspring.design.design import Design
from backspring.faults import Fault, invalid
from backspring.many.columns import Column, read_column
from backspring.many.dimensions import refuse_key


def read_changes(design: Design, changes: Mapping[str, Any]) -> dict[str, Column]:
    """Read columns of numbers, of texts with units, or single values for all rows.

    Raises InvalidInput with every fault.
    """
    if not isinstance(changes, Mapping) or not changes:
        raise invalid([Fault("bad-value", "changes", "must name at least one dimension")])
    read: dict[str, Column] = {}
    faults: list[Fault] = []
    for key, values in changes.items():
        column = refuse_key(design, key) or read_column(key, values)
        if isinstance(column, Fault):
            faults.append(column)
        else:
            read[key] = column
    if faults := faults or _length_faults(read):
        raise invalid(faults)
    rows = max((column.size for column in read.values() if column.ndim), default=1)
    return {key: np.array(np.broadcast_to(column, (rows,))) for key, column in read.items()}


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
