"""The JSON Schema of a steel of one's own."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from backspring.design.own_steel_fields import (
    CITED,
    SOURCE,
    STEEL,
    TEXT,
    TEXTS,
    Choice,
    Fields,
    Kind,
    Number,
    Numbers,
    Rows,
    must_be_given,
    name_of,
)
from backspring.design.steel_table import SOURCES

Schema = dict[str, Any]
_TEXT: Schema = {"type": "string", "minLength": 1}
_BY_WORD: Mapping[str, Schema] = {
    TEXT: _TEXT,
    TEXTS: {"type": "array", "items": {"type": "string"}},
    CITED: {"type": "array", "items": {"type": "string"}},
}
_ABOUT = (
    "A steel of one's own, with the fields of a file of data/steels; numbers are in the units "
    "that their keys name. The spring is of it unless spring.steel names another."
)


def steel_schema() -> Schema:
    """Describe the table [steel]; the same fields stand in a file of one's own."""
    schema: Schema = {"description": _ABOUT} | _table(STEEL)
    cited = {"type": "object", "additionalProperties": _table(SOURCE)}
    schema["properties"] |= {SOURCES: {"description": "What the figures cite, by key."} | cited}
    return schema


def _table(fields: Fields) -> Schema:
    return {
        "type": "object",
        "properties": {name_of(key): _kind(kind) for key, kind in fields.items()},
        "required": [name_of(key) for key in fields if must_be_given(key)],
        "additionalProperties": False,
    }


def _kind(kind: Kind) -> Schema:
    if isinstance(kind, Number):
        return {"type": "number", "minimum": kind.least, "maximum": kind.greatest}
    if isinstance(kind, Choice):
        return {"enum": [*kind.words]}
    if isinstance(kind, Numbers):
        size = {"minItems": kind.count, "maxItems": kind.count}
        return {"type": "array", "items": {"type": "number"}, **size}
    if isinstance(kind, Rows):
        return {"type": "array", "items": _table(kind.row), "minItems": kind.least}
    return _BY_WORD[kind] if isinstance(kind, str) else _table(kind)
