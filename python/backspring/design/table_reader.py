"""Reads the tables of a design and tells every fault of their keys and values."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, get_args

from pydantic import ValidationError

from backspring.design.fields import BAD_VALUE
from backspring.design.model import DesignTables, Table
from backspring.design.values import HEADER, Content, Reading
from backspring.faults import near_match
from backspring.units import System


def read_tables(data: Mapping[str, Any], system: System) -> Reading:
    """Read all tables; `data` holds them as a design file does, without the header's keys."""
    reading = Reading()
    good = _plain(data)
    try:
        tables = DesignTables.model_validate(good, context=system)
    except ValidationError as error:
        for each in error.errors(include_url=False):
            _tell(reading, each)
            _remove(good, each["loc"])
        tables = DesignTables.model_validate(good, context=system)
    reading.content = _canonical(tables.model_dump(by_alias=True, exclude_none=True))
    _require(reading, DesignTables, reading.content, "")
    return reading


def known_keys(table: type[Table]) -> dict[str, type[Table] | None]:
    """Keys of a table as written in the file, with the table that a key holds."""
    keys = {}
    for name, info in table.model_fields.items():
        inner = [each for each in get_args(info.annotation) if _is_table(each)]
        keys[info.alias or name] = inner[0] if inner else None
    return keys


def _is_table(kind: Any) -> bool:
    return isinstance(kind, type) and issubclass(kind, Table)


def _plain(data: Mapping[str, Any]) -> Content:
    """Copy the tables, leaving out what is None: in Python that means not given."""
    return {
        key: _plain(value) if isinstance(value, Mapping) else value
        for key, value in data.items()
        if value is not None
    }


def _remove(data: Content, location: tuple[int | str, ...]) -> None:
    for step in map(str, location):
        inner = data.get(step)
        if not isinstance(inner, dict) or step == location[-1]:
            data.pop(step, None)
            return
        data = inner


def _tell(reading: Reading, error: Any) -> None:
    location = error["loc"]
    names = [part for part in location if isinstance(part, str)]
    places = [part for part in location if isinstance(part, int)]
    key = ".".join(names)
    if error["type"] == "extra_forbidden":
        reading.fail("unknown-key", key, _unknown(reading, names, error["input"]))
    elif error["type"] == BAD_VALUE:
        reading.fail(BAD_VALUE, key, _place(places) + error["msg"])
    else:
        reading.fail(BAD_VALUE, key, f"must be a table, as [{key}], got {error['input']}")


def _place(places: list[int]) -> str:
    if len(places) == 2:
        return f"row {places[0] + 1}, {('station', 'thickness')[places[1]]}: "
    return f"value {places[0] + 1}: " if places else ""


def _unknown(reading: Reading, names: list[str], value: Any) -> str:
    """Tell a misspelt key; the key it most likely stands for then counts as given."""
    what = "section" if len(names) == 1 and isinstance(value, Mapping) else "key"
    name, start = names[-1], f'unknown {what} "{names[-1]}"'
    table = _table_at(names[:-1])
    known = [*known_keys(table), *(HEADER if len(names) == 1 else ())]
    if near := near_match(name, known):
        reading.failed.add(".".join([*names[:-1], near]))
        return f'{start}: did you mean "{near}"?'
    # What is amiss of the second blade belongs to the second blade.
    within = names[:1] if names[0] == "second" else []
    homes = [
        f"[{'.'.join([*within, section])}]"
        for section, inner in known_keys(_table_at(within)).items()
        if inner and name in known_keys(inner)
    ]
    if homes:
        return f"{start} here: it belongs in {' or '.join(homes)}"
    return f"{start}: known are {', '.join(known)}"


def _table_at(names: list[str]) -> type[Table]:
    table: type[Table] = DesignTables
    for name in names:
        table = known_keys(table)[name] or table
    return table


def _require(reading: Reading, table: type[Table], content: Content, prefix: str) -> None:
    for key, inner in known_keys(table).items():
        name = f"{prefix}{key}"
        if inner and key in content:
            _require(reading, inner, content[key], f"{name}.")
        elif key in table.required and key not in content and not reading.has_failed(name):
            reading.fail("missing-key", name, f"missing section [{name}]" if inner else "missing")


def _canonical(content: Content) -> Content:
    """Write lists as lists, and two values that are alike as the one a maker would write."""
    return {key: _canonical_value(key, value) for key, value in content.items()}


def _canonical_value(key: str, value: Any) -> Any:
    if isinstance(value, dict):
        return _canonical(value)
    if key == "thickness" and len(value) == 1:
        return value[0][1]
    if key in ("pin_hole", "pin_hole_offset", "corner_radius") and value[0] == value[1]:
        return value[0]
    return _lists(value)


def _lists(value: Any) -> Any:
    return [_lists(each) for each in value] if isinstance(value, list | tuple) else value
