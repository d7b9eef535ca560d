"""The JSON Schema of a design file, for editors and checkers."""

from __future__ import annotations

from typing import Any

from backspring._core import Field, Form
from backspring.design.fields import (
    BLADE_TABLE,
    REQUIRED_OF_BLADE,
    REQUIRED_TABLES,
    TABLES,
    Table,
    is_number,
)
from backspring.design.outline_table import MEANINGS, SAID, TABLE
from backspring.design.steel_schema import steel_schema
from backspring.design.steel_table import TABLE as STEEL_TABLE
from backspring.design.tang_rows import MOST_ROWS, STANDS_FOR
from backspring.units import converted

Schema = dict[str, Any]
_LENGTH: Schema = {"anyOf": [{"type": "number"}, {"type": "string"}]}


def design_schema() -> Schema:
    """Describe every table and key; what keys have to do with one another is left to the reader."""
    tables = _tables(TABLES)
    tables["spring"]["required"].remove("steel")
    said: dict[str, list[str]] = {key.split(".")[0]: [] for key in SAID}
    # What an outline says must be given where there is none.
    for key in SAID:
        section, name = key.split(".")
        if name in tables[section]["required"]:
            tables[section]["required"].remove(name)
            said[section].append(name)
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "Design of a slip joint's spring",
        "type": "object",
        "properties": {
            "format": {"const": 1},
            "name": {"type": "string", "minLength": 1, "maxLength": 100},
            "units": {"enum": ["mm", "in"], "description": "What a bare number means."},
            **tables,
            TABLE: _outline(),
            STEEL_TABLE: steel_schema(),
            "blades": {"type": "array", "items": _blade()},
        },
        "required": ["format", "name", "units", "spring"],
        "additionalProperties": False,
        "if": {"required": [TABLE]},
        "else": {
            "properties": {section: _or_drawn(names) for section, names in said.items()},
            "required": _required(TABLES, REQUIRED_TABLES),
        },
        # A steel of the file's own need not be named again.
        "anyOf": [
            {"required": [STEEL_TABLE]},
            {"properties": {"spring": {"required": ["steel"]}}},
        ],
    }


def _or_drawn(names: list[str]) -> Schema:
    """Require keys, but those that a tang's own outline stands for only where there is none."""
    stood_for = [name for name in names if name in STANDS_FOR]
    always = [name for name in names if name not in STANDS_FOR]
    if not stood_for:
        return {"required": names}
    return {"required": always, "anyOf": [{"required": ["outline"]}, {"required": stood_for}]}


def _blade() -> Schema:
    blade = _table(BLADE_TABLE, REQUIRED_OF_BLADE)
    tang = blade["properties"]["tang"]
    tang |= _or_drawn(tang["required"])
    return blade


def _outline() -> Schema:
    """Describe the parts as drawn: rows of lengths, and of a bulge."""
    rows = {
        "spring": _rows(_LENGTH, 2, 3, 3),
        "spring_holes": _rows(_LENGTH, 3, 3, 2),
        "tang": _rows(_LENGTH, 2, 3, 3),
        "tang_hole": {"type": "array", "items": _LENGTH, "minItems": 2, "maxItems": 2},
        "liner": _rows(_LENGTH, 2, 2, 3),
    }
    about = {name: {"description": meaning} | rows[name] for name, meaning in MEANINGS.items()}
    return {
        "type": "object",
        "properties": about,
        "required": [*MEANINGS],
        "additionalProperties": False,
    }


def _rows(item: Schema, least: int, most: int, count: int) -> Schema:
    row = {"type": "array", "items": item, "minItems": least, "maxItems": most}
    return {"type": "array", "items": row, "minItems": count}


def _tables(table: Table) -> Schema:
    return {
        name: _key(inner) if isinstance(inner, Field) else _table(inner)
        for name, inner in table.items()
    }


def _table(table: Table, tables: tuple[str, ...] = ()) -> Schema:
    return {
        "type": "object",
        "properties": _tables(table),
        "required": _required(table, tables),
        "additionalProperties": False,
    }


def _required(table: Table, tables: tuple[str, ...]) -> list[str]:
    return [
        name
        for name, inner in table.items()
        if (inner.required if isinstance(inner, Field) else name in tables)
    ]


def _key(row: Field) -> Schema:
    about = {"description": f"{row.meaning} Left out: {row.left_out}."}
    return about | _value(row)


def _value(row: Field) -> Schema:
    if row.form is Form.text:
        return {"type": "string"}
    if row.form is Form.choice:
        return {"enum": list(row.choices)}
    if row.form is Form.flag:
        return {"type": "boolean"}
    one = _number(row)
    two = {"type": "array", "items": one, "minItems": 2, "maxItems": 2}
    if row.form is Form.pair:
        return two
    if row.form is Form.one_or_two:
        return {"anyOf": [one, two]}
    if row.form is Form.readings:
        return {"anyOf": [one, {"type": "array", "items": one, "minItems": 1}]}
    if row.form is Form.profile:
        station = {"anyOf": [{"type": "number"}, {"type": "string"}]}
        pair = {"type": "array", "prefixItems": [station, one], "minItems": 2, "maxItems": 2}
        return {"anyOf": [one, {"type": "array", "items": pair, "minItems": 1}]}
    if row.form is Form.outline:
        return _rows(_LENGTH, 2, 3, 3) | {"maxItems": MOST_ROWS}
    if row.form is Form.points:
        return {"type": "array", "items": two, "minItems": 2}
    # A word is a text, as is a number with its unit.
    return one


def _number(row: Field) -> Schema:
    """Describe a bare number in either system of units, or a text with its unit."""
    assert is_number(row)
    ends = [
        converted(end, row.quantity, system)
        for end in (row.least, row.greatest)
        for system in ("mm", "in")
    ]
    bare = {"type": "number", "minimum": _rounded(min(ends)), "maximum": _rounded(max(ends))}
    return {"anyOf": [bare, {"type": "string"}]}


def _rounded(value: float) -> float:
    return float(f"{value:.6g}")
