"""Reads the tables of a design, key by key, and keeps what is wrong with them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from typing import Any

from backspring import _core
from backspring._core import Field, Form
from backspring.design.arguments import fault_text
from backspring.design.fields import (
    BESIDE,
    BLADE_TABLE,
    HEADER,
    REQUIRED_OF_BLADE,
    REQUIRED_TABLES,
    TABLES,
    Table,
    row_of,
    table_at,
)
from backspring.design.tang_rows import STANDS_FOR
from backspring.design.value import judged_numbers, read_value
from backspring.design.value_faults import BAD_VALUE
from backspring.errors import InvalidInput
from backspring.faults import Fault, near_match
from backspring.units import System, written_note

Content = dict[str, Any]
# What is wrong with hundreds of keys is no misspelling.
_MOST_HINTS = 100


class Reading:
    """What could be read, the faults of the rest, and the keys that need no second fault."""

    def __init__(self, data: Mapping[str, Any], system: System, failed: Iterable[str] = ()) -> None:
        self.data, self.system = data, system
        self.content: Content = {}
        self.faults: list[Fault] = []
        self.failed: set[str] = {*failed}
        # Tables whose keys a message has listed, which one is enough to do.
        self.listed: set[str] = set()
        self._broken: set[Fault] = set()

    def fail(self, code: str, key: str, message: str) -> None:
        """Record a fault of a key."""
        self.faults.append(Fault(code, key, message))
        self.failed.add(key)

    def fail_rule(self, key: str, broken: _core.Fault, preface: str = "") -> None:
        """Record a rule of the core that a key breaks, once for the same values."""
        message = preface + fault_text(broken, self.system) + self._written(key)
        numbers = tuple(broken.limits), tuple(broken.values)
        fault = Fault(BAD_VALUE, key, message, None, None, broken.rule, *numbers)
        if fault not in self._broken:
            self._broken.add(fault)
            self.faults.append(fault)

    def has_failed(self, key: str) -> bool:
        """Whether a key, or the table it stands in, already has a fault."""
        while key and key not in self.failed:
            key = key.rpartition(".")[0]
        return bool(key)

    def _written(self, key: str) -> str:
        """Quote a value as it stands in the file, where a message says it in other units."""
        value: Any = self.data
        for part in key.split("."):
            value = value.get(part) if isinstance(value, Mapping) else None
        row = row_of(key)
        return written_note(value, row.quantity, self.system) if row else ""


def dotted(content: Content, prefix: str = "") -> Iterator[tuple[str, Any]]:
    """Every value of a design with its key as "spring.width"."""
    for key, value in content.items():
        if isinstance(value, dict):
            yield from dotted(value, f"{prefix}{key}.")
        else:
            yield f"{prefix}{key}", value


def read_tables(
    data: Mapping[str, Any], system: System, failed: frozenset[str] = frozenset()
) -> Reading:
    """Read all tables; `data` holds them as a design file does, without the header's keys.

    `failed` are keys that need no fault where they are missing.
    """
    blades = data.get("blades", {})
    reading = Reading(data, system, failed)
    tables = {name: table for name, table in data.items() if name != "blades"}
    reading.content = _read_table(reading, TABLES, tables, "")
    _require(reading, TABLES, reading.content, "", REQUIRED_TABLES)
    if blades:
        reading.content["blades"] = {
            name: _read_table(reading, BLADE_TABLE, table, f"blades.{name}.")
            for name, table in blades.items()
        }
        for name, content in reading.content["blades"].items():
            _require(reading, BLADE_TABLE, content, f"blades.{name}.", REQUIRED_OF_BLADE)
    return reading


def judge_ranges(reading: Reading) -> None:
    """Refuse every number outside the range of its key, and take it out."""
    for key, value in [*dotted(reading.content)]:
        row = row_of(key)
        assert row is not None
        for broken in (_core.range_fault(row, each) for each in judged_numbers(row, value)):
            if broken is not None:
                reading.fail_rule(key, broken)
                reading.failed.add(key)
        if key in reading.failed:
            _take_out(reading.content, key)


def _take_out(content: Content, key: str) -> None:
    *sections, name = key.split(".")
    for section in sections:
        content = content[section]
    del content[name]


def _read_table(reading: Reading, table: Table, data: Mapping[str, Any], prefix: str) -> Content:
    content = {}
    for name, value in data.items():
        # In Python None means not given.
        if value is None:
            continue
        key, known = f"{prefix}{name}", table.get(name)
        if known is None:
            reading.fail("unknown-key", key, _unknown(reading, key.split("."), value))
        elif isinstance(known, Field):
            try:
                content[name] = read_value(known, value, reading.system)
            except InvalidInput as error:
                for fault in error.faults:
                    reading.fail(BAD_VALUE, key, fault.message)
        elif isinstance(value, Mapping):
            content[name] = _read_table(reading, known, value, f"{key}.")
        else:
            reading.fail(BAD_VALUE, key, f"must be a table, as [{key}], got {value}")
    return {name: content[name] for name in table if name in content}


def _unknown(reading: Reading, names: list[str], value: Any) -> str:
    """Tell a misspelt key; the key it most likely stands for then counts as given."""
    what = "section" if len(names) == 1 and isinstance(value, Mapping) else "key"
    name, start = names[-1], f'unknown {what} "{names[-1]}"'
    known = [*table_at(names[:-1]), *((*HEADER, *BESIDE) if len(names) == 1 else ())]
    if len(reading.faults) < _MOST_HINTS and (near := near_match(name, known)):
        reading.failed.add(".".join([*names[:-1], near]))
        return f'{start}: did you mean "{near}"?'
    # What is amiss of one of [[blades]] belongs to that blade.
    within = names[:2] if names[0] == "blades" else []
    homes = [
        f"[{'.'.join([*within[:1], section])}]"
        for section, inner in table_at(within).items()
        if isinstance(inner, dict) and name in inner and _may_be(inner[name], value)
    ]
    if homes:
        return f"{start} here: it belongs in {' or '.join(homes)}"
    place = ".".join(names[:-1])
    if place in reading.listed:
        return start
    reading.listed.add(place)
    return f"{start}: known are {', '.join(known)}"


def _may_be(known: Field | Table, value: Any) -> bool:
    """Say whether a value can be meant for a key: one number is no pair."""
    return not isinstance(known, Field) or known.form is not Form.pair or isinstance(value, list)


def _is_drawn(reading: Reading, content: Content, prefix: str) -> bool:
    """Say whether a tang has an outline of its own, or was meant to."""
    return prefix.endswith("tang.") and (
        "outline" in content or reading.has_failed(f"{prefix}outline")
    )


def _section(key: str) -> str:
    """Write a section as the file has it: without the blade's name."""
    names = key.split(".")
    return ".".join(["blades", *names[2:]] if names[0] == "blades" else names)


def _require(
    reading: Reading, table: Table, content: Content, prefix: str, tables: tuple[str, ...] = ()
) -> None:
    """Tell what is missing; `tables` are those of `table` that there must be."""
    for name, known in table.items():
        key = f"{prefix}{name}"
        if isinstance(known, dict) and name in content:
            _require(reading, known, content[name], f"{key}.")
        elif (
            name in content
            or reading.has_failed(key)
            or name in STANDS_FOR
            and _is_drawn(reading, content, prefix)
        ):
            continue
        elif isinstance(known, dict) and name in tables:
            reading.fail("missing-key", key, f"missing section [{_section(key)}]")
        elif isinstance(known, Field) and known.required:
            reading.fail("missing-key", key, "missing")
