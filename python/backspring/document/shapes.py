"""How the shape of a JSON object is written down: its numbers by name in one line.

A shape is closed: a name that is not written down is a fault of the document.
"""

from __future__ import annotations

import types
import typing
from collections.abc import Mapping
from typing import Any

Schema = dict[str, Any]

TEXT: Schema = {"type": "string"}
NUMBER: Schema = {"type": "number"}
COUNT: Schema = {"type": "integer", "minimum": 0}
TRUTH: Schema = {"type": "boolean"}
SHA256: Schema = {"type": "string", "pattern": "^[0-9a-f]{64}$"}
# Shapes that stand in several places, by name; a schema carries those that it refers to.
PARTS: dict[str, Schema] = {}
_PLAIN: dict[Any, Schema] = {
    float: NUMBER,
    int: {"type": "integer"},
    bool: TRUTH,
    str: TEXT,
}


def table(
    numbers: str = "", /, left_out: Mapping[str, Schema] | None = None, **others: Schema
) -> Schema:
    """Close an object: `numbers` names its numbers, `others` the rest.

    Behind the name of a number "?" says that it may be null, "*" that it is a list; "~" before it
    says that it may be left out, as `left_out` says of others.
    """
    properties, required = {}, []
    for word in numbers.split():
        name = word.strip("~?*")
        properties[name] = list_of(NUMBER) if "*" in word else NUMBER
        if "?" in word:
            properties[name] = or_null(properties[name])
        if "~" not in word:
            required.append(name)
    # Names that are words of Python have an underscore behind them.
    named = {name.rstrip("_"): schema for name, schema in others.items()}
    return {
        "type": "object",
        "properties": properties | named | dict(left_out or {}),
        "required": [*required, *named],
        "additionalProperties": False,
    }


def part(name: str, schema: Schema) -> Schema:
    """Give a shape a name, and return the reference to it."""
    PARTS[name] = schema
    return {"$ref": f"#/$defs/{name}"}


def list_of(schema: Schema) -> Schema:
    """Any number of the same."""
    return {"type": "array", "items": schema}


def by_name(schema: Schema) -> Schema:
    """Make an object whose names are not known before: blades, keys, figures."""
    return {"type": "object", "additionalProperties": schema}


def one_of(*words: str) -> Schema:
    """One of the words."""
    return {"enum": list(words)}


def or_null(schema: Schema) -> Schema:
    """Allow null, where a number is impossible or not known."""
    return {"anyOf": [schema, {"type": "null"}]}


def with_others(schema: Schema, **others: Schema) -> Schema:
    """Add what must be there to a closed object."""
    named = {name.rstrip("_"): each for name, each in others.items()}
    return schema | {
        "properties": schema["properties"] | named,
        "required": [*schema["required"], *named],
    }


def may_have(schema: Schema, **others: Schema) -> Schema:
    """Add what may be there to a closed object."""
    return schema | {"properties": schema["properties"] | others}


def record(kind: type[Any]) -> Schema:
    """Describe a record that is written as it is, from its own annotations."""
    return table(**{name: _of_hint(hint) for name, hint in typing.get_type_hints(kind).items()})


def _of_hint(hint: Any) -> Schema:
    origin, inner = typing.get_origin(hint), typing.get_args(hint)
    if origin in (typing.Union, types.UnionType):
        kinds = [_of_hint(each) for each in inner if each is not type(None)]
        return or_null(kinds[0] if len(kinds) == 1 else {"anyOf": kinds})
    if origin is typing.Literal:
        return one_of(*inner)
    if origin is tuple:
        return list_of(_of_hint(inner[0]))
    return _PLAIN[hint] if hint in _PLAIN else record(hint)
