"""The JSON Schema of every command's document."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from typing import Any

from backspring.document import of_others as others
from backspring.document import of_size as sizes
from backspring.document.of_advise import ADVISE
from backspring.document.of_check import CHECK
from backspring.document.of_evidence import EVIDENCE
from backspring.document.of_fit import FIT
from backspring.document.of_layout import LAYOUT, NEW
from backspring.document.of_outlines import CARD, OUTLINE, TEMPLATE
from backspring.document.shapes import PARTS, TEXT, Schema, list_of, one_of, table

# What `data` may be, by command: one of these.
DATA: Mapping[str, list[Schema]] = {
    "advise": ADVISE,
    "bushing": others.BUSHING,
    "card": CARD,
    "check": CHECK,
    "codes": others.CODES,
    "compare": others.COMPARE,
    "completion": others.COMPLETION,
    "evidence": EVIDENCE,
    "fit": FIT,
    "functions": others.FUNCTIONS,
    "grind": others.GRIND,
    "habits": others.HABITS_OF_SHOP,
    "keys": others.KEYS,
    "layout": LAYOUT,
    "load": others.LOAD,
    "new": NEW,
    "outline": OUTLINE,
    "plot": others.PLOT,
    "report": others.REPORT,
    "schema": others.SCHEMA,
    "size": sizes.SIZE,
    "steels": others.STEELS,
    "template": TEMPLATE,
    "tolerance": sizes.TOLERANCE,
}
_DIAGNOSTIC = table(
    code=TEXT,
    severity=one_of("note", "warning", "error"),
    message=TEXT,
    path={"type": ["string", "null"]},
    line={"type": ["integer", "null"], "minimum": 1},
)


def document_schema(command: str) -> Schema:
    """Describe what a command prints with --json, by itself: it refers to no other file."""
    data = DATA[command]
    answered = data[0] if len(data) == 1 else {"anyOf": data}
    whole = table(
        format={"const": 1},
        command={"const": command},
        version=TEXT,
        status=one_of("pass", "fail", "error"),
        data={"type": "object"},
        diagnostics=list_of(_DIAGNOSTIC),
    )
    refused = {"properties": {"status": {"const": "error"}}}
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": f"backspring {command} --json",
        **whole,
        "if": refused,
        "then": {"properties": {"data": {"maxProperties": 0}}},
        "else": {"properties": {"data": answered}},
        "$defs": _parts(answered),
    }


def schema_text(command: str) -> str:
    """Write a command's schema as its file holds it."""
    return json.dumps(document_schema(command), indent=1)


def _parts(schema: Schema) -> dict[str, Schema]:
    """Find the named shapes that a schema refers to, and those that these do."""
    found: dict[str, Schema] = {}
    waiting = [*_references(schema)]
    while waiting:
        name = waiting.pop()
        if name not in found:
            found[name] = PARTS[name]
            waiting += _references(PARTS[name])
    return dict(sorted(found.items()))


def _references(schema: Any) -> Iterator[str]:
    if isinstance(schema, dict):
        if isinstance(place := schema.get("$ref"), str):
            yield place.rpartition("/")[2]
        for each in schema.values():
            yield from _references(each)
    elif isinstance(schema, list):
        for each in schema:
            yield from _references(each)
