"""Records of the core are values: a changed one is a new one."""

from __future__ import annotations

from typing import Any, TypeVar

Record = TypeVar("Record")


def changed(record: Record, **changes: Any) -> Record:
    """Return a record of the core with some fields changed."""
    kind: Any = type(record)
    made: Record = kind(**{name: getattr(record, name) for name in kind._fields} | changes)
    return made
