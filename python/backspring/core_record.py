"""Records of the core are values: a changed one is a new one."""

from __future__ import annotations

from typing import Any, TypeVar

Record = TypeVar("Record")
_NAMES: dict[type, list[str]] = {}


def changed(record: Record, **changes: Any) -> Record:
    """Return a record of the core with some fields changed."""
    kind = type(record)
    names = _NAMES.get(kind)
    if names is None:
        names = [name for name, held in vars(kind).items() if isinstance(held, property)]
        _NAMES[kind] = names
    return kind(**{name: getattr(record, name) for name in names} | changes)
