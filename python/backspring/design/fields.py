"""The keys of a design file, from the core's table of fields."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Union

from backspring._core import Field, Form, fields
from backspring.unit_table import KINDS
from backspring.units import Kind

Table = dict[str, Union[Field, "Table"]]

HEADER = ("format", "name", "units")
# Tables with fields of their own, which no row of the core describes.
BESIDE = ("outline", "steel")
ROWS: dict[str, Field] = {field.key: field for field in fields()}
REQUIRED_TABLES = ("spring", "tang", "fit")
REQUIRED_OF_BLADE = ("tang", "fit")


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


def _blade_keys() -> Iterator[tuple[str, Field]]:
    """Every key of one of [[blades]]; its pad is not in a table [blades.spring]."""
    for key in ("name", "end"):
        yield key, ROWS[f"blades.{key}"]
    for key, row in ROWS.items():
        if row.of_blade:
            yield key.removeprefix("spring."), row


KEYS: dict[str, Field] = {key: row for key, row in ROWS.items() if row.in_file}
TABLES = _nested({key: row for key, row in KEYS.items() if not key.startswith("blades.")})
BLADE_KEYS: dict[str, Field] = dict(_blade_keys())
BLADE_TABLE = _nested(BLADE_KEYS)


def row_of(key: str) -> Field | None:
    """Return the row of a key, also of one as "blades.pen.tang.closed"; None if there is none."""
    if key.startswith("blades."):
        return BLADE_KEYS.get(key.split(".", 2)[-1])
    return KEYS.get(key)


def key_in_core(key: str) -> str:
    """Return the key that one of a blade's own has in the core's table: "pad" is "spring.pad"."""
    return "spring.pad" if key == "pad" else key


def kind_of(row: Field) -> Kind:
    """Return what the numbers of a key measure."""
    return KINDS[row.quantity]


def is_number(row: Field) -> bool:
    """Whether a key holds numbers, or may hold one."""
    return row.form not in (Form.text, Form.choice, Form.flag)


def table_at(names: list[str]) -> Table:
    """Return the table that stands under these names, of a blade under "blades" and its name."""
    table, names = (BLADE_TABLE, names[2:]) if names[:1] == ["blades"] else (TABLES, names)
    for name in names:
        inner = table[name]
        assert isinstance(inner, dict)
        table = inner
    return table
