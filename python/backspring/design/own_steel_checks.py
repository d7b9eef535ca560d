"""Checks what a file of one's own steel holds, and tells all that is wrong with it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from backspring.design.own_steel_fields import (
    CITED,
    SOURCE,
    TEXT,
    Choice,
    Fields,
    Kind,
    Number,
    Numbers,
    Rows,
    must_be_given,
    name_of,
)
from backspring.faults import Fault, near_match
from backspring.steel.files import all_sources
from backspring.steel.records import Source

# What is larger is no figure of a steel, nor can it always be written.
_LARGEST = 1e15


@dataclass
class Checked:
    """What is wrong with a file; `sources` are the keys that may be cited, `where` others go."""

    sources: set[str]
    where: str = "put it into sources.toml beside the steel"
    faults: list[Fault] = field(default_factory=list)

    def refuse(self, key: str, message: str) -> None:
        """Record what is wrong with a key."""
        self.faults.append(Fault("bad-value", key, message))

    def table(self, fields: Fields, data: Mapping[str, Any], prefix: str) -> None:
        """Check a table: keys that are unknown or missing, and every value."""
        kinds = {name_of(key): kind for key, kind in fields.items()}
        for name, value in data.items():
            if name in kinds:
                self._value(kinds[name], value, f"{prefix}{name}")
                continue
            near = near_match(name, kinds)
            hint = f'did you mean "{near}"?' if near else f"known are {', '.join(kinds)}"
            self.faults.append(Fault("unknown-key", f"{prefix}{name}", f"unknown key: {hint}"))
        for each in fields:
            if must_be_given(each) and name_of(each) not in data:
                self.faults.append(Fault("missing-key", f"{prefix}{name_of(each)}", "missing"))
        self._order(data, prefix)

    def _order(self, data: Mapping[str, Any], prefix: str) -> None:
        """Hold what is lowest below what is likely, and that below what is highest."""
        for names in (("low", "value", "high"), ("low_hrc", "hardness_hrc", "high_hrc"),
                      ("low_c", "high_c"), ("coolest_c", "hottest_c")):  # fmt: skip
            given = [(name, data[name]) for name in names if _is_number(data.get(name))]
            given = [each for each in given if abs(each[1]) < _LARGEST]
            for (below, low), (above, high) in zip(given, given[1:], strict=False):
                if low > high:
                    most = f"must be at most {above}, {high:g}, got {low:g}"
                    self.refuse(f"{prefix}{below}", most)

    def _value(self, kind: Kind, value: Any, key: str) -> None:
        if isinstance(kind, Number):
            self._number(kind, value, key)
        elif isinstance(kind, Choice):
            if value not in kind.words:
                self.refuse(key, f"must be one of {', '.join(kind.words)}, got {value!r}")
        elif isinstance(kind, Numbers):
            if not (isinstance(value, list) and [*map(_is_number, value)] == [True] * kind.count):
                self.refuse(key, f"must be {kind.count} numbers")
        elif isinstance(kind, Rows):
            self._rows(kind, value, key)
        elif isinstance(kind, str):
            self._text(kind, value, key)
        elif isinstance(value, Mapping):
            self.table(kind, value, f"{key}.")
        else:
            self.refuse(key, f"must be a table, as {{ value = ... }}, got {value!r}")

    def _number(self, kind: Number, value: Any, key: str) -> None:
        if not _is_number(value):
            self.refuse(key, f"must be a number, got {value!r}")
        elif not kind.least <= value <= kind.greatest:
            got = f"{value:g}" if abs(value) < _LARGEST else "one that is much too large"
            self.refuse(key, f"must be from {kind.least:g} to {kind.greatest:g}, got {got}")

    def _rows(self, kind: Rows, value: Any, key: str) -> None:
        if not isinstance(value, list) or not all(isinstance(row, Mapping) for row in value):
            self.refuse(key, "must be rows in braces: [{ ... }, { ... }]")
            return
        if len(value) < kind.least:
            self.refuse(key, f"must have at least {kind.least} rows, got {len(value)}")
        for place, row in enumerate(value, start=1):
            self.table(kind.row, row, f"{key}.row {place}.")
        tempers = [row.get("temper_c") for row in value] if kind.least else []
        if all(map(_is_number, tempers)) and tempers != sorted({*tempers}):
            self.refuse(key, "must stand in rising order of temper_c")

    def _text(self, kind: str, value: Any, key: str) -> None:
        if kind == TEXT:
            if not isinstance(value, str) or not value.isprintable() or not value.strip():
                self.refuse(key, f"must be one line of text in quotes, got {value!r}")
        elif not isinstance(value, list) or not all(isinstance(each, str) for each in value):
            self.refuse(key, f'must be texts in brackets, as ["..."], got {value!r}')
        elif kind == CITED:
            for each in value:
                if each not in self.sources:
                    self.refuse(key, f'no source "{each}": {self.where}')


def read_sources(tables: Mapping[str, Any]) -> tuple[dict[str, Source], list[Fault]]:
    """Read what a steel of one's own cites beside the shipped sources, and what is wrong."""
    found, faults = {}, list[Fault]()
    for key, table in tables.items():
        checked = Checked(set())
        if isinstance(table, Mapping):
            checked.table(SOURCE, table, f"{key}.")
        else:
            checked.refuse(key, f"must be a table, as [{key}]")
        if key in all_sources():
            checked.refuse(key, "is the key of a shipped source: give another")
        faults += checked.faults
        if not checked.faults:
            found[key] = Source(**{"kind": "own", "confidence": "read", **table})
    return found, faults


def _is_number(value: Any) -> bool:
    return isinstance(value, (int, float)) and not isinstance(value, bool) and value == value
