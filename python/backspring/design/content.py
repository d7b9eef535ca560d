"""A design's content as plain tables: its fingerprint, and one value put into it."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Mapping
from typing import Any

from backspring import _core
from backspring.faults import Fault, invalid

_EXCLUSIVE = {"fit.preload": "rear_pin_offset", "fit.rear_pin_offset": "preload"}


def fingerprint(content: Mapping[str, Any]) -> str:
    """Return the same for the same content."""
    text = json.dumps(content, sort_keys=True, separators=(",", ":"))
    return hashlib.sha256(text.encode()).hexdigest()


def put(data: dict[str, Any], key: str, value: Any) -> None:
    """Put a value where its key says, and take out what it takes the place of."""
    *sections, name = key.split(".")
    table = data
    for section in sections:
        table = table.setdefault(section, {})
        if not isinstance(table, dict):
            raise invalid([Fault("unknown-key", key, f'unknown key "{key}"')])
    table.pop(_EXCLUSIVE.get(key, ""), None)
    table[name] = value


def spring_as_read(core: _core.Design, first: str) -> _core.Spring:
    """Return the spring as the first blade of a design's content has it, by that blade's name."""
    place = [blade.name for blade in core.blades].index(first)
    return _core.seen_from(core, place).spring if place else core.spring
