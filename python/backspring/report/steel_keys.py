"""The fields of a steel of one's own for people, in Markdown."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from backspring.design.own_steel_fields import (
    STEEL,
    SURE,
    Choice,
    Fields,
    Kind,
    Number,
    Numbers,
    Rows,
    must_be_given,
    name_of,
)

_HEAD = """
## [steel]

A steel of one's own, in place of a file under `--steels`: the fields are those of a file of
`data/steels`, with `[steel.elastic]` for its `[elastic]`. Numbers are in the units that the fields
name, whatever `units` says. The spring is of this steel unless `spring.steel` names another; a name
that a shipped steel or one of `--steels` has is refused. Fields marked * must be given, and in
braces or a table those marked so of it. Every figure and row may say `confidence` ("read",
"memory", "derived"), `sources` and a `note`; what it cites beside the shipped sources stands under
`[steel.sources.KEY]` with a `title`.

| field | value |
|---|---|
"""


def steel_reference() -> str:
    """Write the section of the reference."""
    return _HEAD + "".join(_rows(STEEL, ""))


def _rows(fields: Fields, prefix: str) -> Iterator[str]:
    for key, kind in fields.items():
        if key in SURE:
            continue
        name = f"{prefix}{name_of(key)}"
        if isinstance(kind, Mapping) and not _is_of_numbers(kind):
            yield from _rows(kind, f"{name}.")
        else:
            yield f"| `{name}`{_mark(key)} | {_value(kind)} |\n"


def _is_of_numbers(kind: Mapping[str, Any]) -> bool:
    return all(isinstance(each, Number | Numbers) for key, each in kind.items() if key not in SURE)


def _mark(key: str) -> str:
    return " *" if must_be_given(key) else ""


def _value(kind: Kind) -> str:
    if isinstance(kind, Number):
        return f"{kind.least:g} to {kind.greatest:g}"
    if isinstance(kind, Numbers):
        return f"{kind.count} numbers"
    if isinstance(kind, Choice):
        return " or ".join(f'"{word}"' for word in kind.words)
    if isinstance(kind, Rows):
        return f"rows of {_braces(kind.row)}" + (f", {kind.least} at least" if kind.least else "")
    if isinstance(kind, Mapping):
        return _braces(kind)
    return "one line" if kind == "text" else 'lines, as `["...", "..."]`'


def _braces(fields: Fields) -> str:
    inner = (f"{name_of(key)}{_mark(key)} {_value(kind)}" for key, kind in fields.items()
             if key not in SURE)  # fmt: skip
    return f"{{ {', '.join(inner)} }}"
