"""Every key that a design states, with its value in the units asked for."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING, Any

from backspring._core import Field, Form, Quantity
from backspring.design.fields import is_number, row_of
from backspring.design.reading import dotted
from backspring.design.steel_table import TABLE as STEEL_TABLE
from backspring.report.display import number
from backspring.report.page_parts import Words
from backspring.unit_table import unit_in
from backspring.units import System, converted

if TYPE_CHECKING:
    from backspring.design.design import Design

_HEADS = ("key", "value", "what it is")


def key_tables(design: Design, units: System) -> Iterator[Words]:
    """Lay out the keys of each table of the file."""
    for table, given in stated(design).items():
        rows = [(key, field(f"{table}.{key}"), value) for key, value in given.items()]
        cells = tuple((key, written(row, value, units), row.meaning) for key, row, value in rows)
        yield Words(f"[{table}]", _HEADS, cells)
    if bar := design.to_dict().get(STEEL_TABLE):
        cells = tuple((key, _plain(value), "as in a steel's file") for key, value in dotted(bar))
        yield Words(f"[{STEEL_TABLE}]", _HEADS, cells)


def _plain(value: Any) -> str:
    if isinstance(value, dict):
        return ", ".join(f"{key} {_plain(each)}" for key, each in value.items())
    return "; ".join(map(_plain, value)) if isinstance(value, list) else str(value)


def stated(design: Design) -> dict[str, dict[str, Any]]:
    """Values by table and key, of a further blade under "blades.pen"."""
    content = design.to_dict()
    listed = content.pop("blades", [])
    content.pop(STEEL_TABLE, None)
    tables = {key: table for key, table in content.items() if isinstance(table, dict)}
    tables |= {
        f"blades.{name}": table for name, table in zip(design.blades[1:], listed, strict=True)
    }
    return {name: dict(dotted(table)) for name, table in tables.items()}


def field(key: str) -> Field:
    """Return what is known of a key of a design."""
    row = row_of(key)
    assert row is not None
    return row


def written(row: Field, value: Any, units: System) -> str:
    """Write a value with its unit."""
    if row.form is Form.flag:
        return "yes" if value else "no"
    if isinstance(value, str) or not is_number(row):
        return str(value)
    if not isinstance(value, list):
        return f"{_number(row, value, units)} {unit_in(row.quantity, units)}".rstrip()
    unit = unit_in(row.quantity, units)
    if all(isinstance(each, list) for each in value):
        pairs = [[_number(row, each, units) for each in pair] for pair in value]
        if row.form is Form.profile:
            return ", ".join(f"{thick} at {station}" for station, thick in pairs) + f" {unit}"
        return ", ".join(f"({', '.join(pair)})" for pair in pairs) + f" {unit}"
    numbers = [_number(row, each, units) for each in value]
    between = " to " if row.key in _RANGES else ", "
    return f"{between.join(numbers)} {unit}".rstrip()


# Pairs that are two ends of a stretch.
_RANGES = ("spring.pad", "blades.pad", "targets.pull")


def _number(row: Field, value: float, units: System) -> str:
    if row.quantity is Quantity.length:
        return number(value, "size", units)
    if row.quantity is Quantity.count:
        return number(value, "count", units)
    return f"{converted(value, row.quantity, units):.5g}"
