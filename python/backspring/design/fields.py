"""The keys of a design file, from the core's table of fields."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Union

from backspring._core import Field, Form, fields
from backspring.unit_table import KINDS
from backspring.units import Kind

Table = dict[str, Union[Field, "Table"]]

HEADER = ("format", "name", "units")
ROWS: dict[str, Field] = {field.key: field for field in fields()}
REQUIRED_TABLES = ("spring", "tang", "fit", "second.tang", "second.fit")


def _nested(rows: dict[str, Field]) -> Table:
    tables: Table = {}
    for key, row in rows.items():
        *sections, name = key.split(".")
        table = tables
        for section in sections:
            inner = table.setdefault(section, {})
            assert isinstance(inner, dict)
            table = inner
        table[name] = row
    return tables


def _keys() -> Iterator[tuple[str, Field]]:
    """Every key that a file may hold; the second blade's pad is not in a table [second.spring]."""
    for key, row in ROWS.items():
        if row.in_file:
            yield key, row
    for key, row in ROWS.items():
        if row.second:
            yield f"second.{key.removeprefix('spring.')}", row


KEYS: dict[str, Field] = dict(_keys())
TABLES = _nested(KEYS)


def kind_of(row: Field) -> Kind:
    """Return what the numbers of a key measure."""
    return KINDS[row.quantity]


def is_number(row: Field) -> bool:
    """Whether a key holds numbers, or may hold one."""
    return row.form not in (Form.text, Form.choice)


def table_at(names: list[str]) -> Table:
    """Return the table that stands under these names."""
    table = TABLES
    for name in names:
        inner = table[name]
        assert isinstance(inner, dict)
        table = inner
    return table
