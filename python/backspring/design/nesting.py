"""Refuses what is nested deeper than any design, before anything follows it down."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from typing import Any

from backspring.faults import Fault, invalid

_DEEPEST = 12
# A key of so many parts costs a reader of TOML the square of their number.
_MOST_DOTS = 2 * _DEEPEST
_PART = r"""(?:[\w-]++|"[^"\n]*+"|'[^'\n]*+')"""
_LONG_KEY = rf"""(?<![\w"'-]){_PART}(?:[ \t]*+\.[ \t]*+{_PART}){{{_MOST_DOTS}}}"""
TOO_DEEP = "is nested too deep"


def has_long_key(text: str) -> bool:
    """Whether a text of TOML has a dotted key of more parts than any key of a design."""
    # A key stands on one line: few have one with as many dots.
    if all(line.count(".") < _MOST_DOTS for line in text.split("\n")):
        return False
    return re.search(_LONG_KEY, text) is not None


def too_deep(data: Mapping[str, Any]) -> Iterator[Fault]:
    """Tell every key whose value is nested too deep, as a table that holds itself."""
    for key, value in data.items():
        if not _is_deep(value, _DEEPEST):
            continue
        inner = value.items() if isinstance(value, Mapping) else ()
        names = [name for name, each in inner if _is_deep(each, _DEEPEST - 1)]
        yield from (_fault(f"{key}.{name}") for name in names)
        if not names:
            yield _fault(str(key))


def require_shallow(data: Mapping[str, Any]) -> None:
    """Refuse what is nested too deep, with every fault."""
    if deep := [*too_deep(data)]:
        raise invalid(deep)


def _is_deep(value: Any, deepest: int) -> bool:
    level = [value]
    for _ in range(deepest):
        inner = {id(each): each for held in level for each in _held(held)}
        level = [*inner.values()]
        if not level:
            return False
    return True


def _held(value: Any) -> Iterable[Any]:
    """Return the tables and lists in a value."""
    if isinstance(value, Mapping):
        value = value.values()
    elif not isinstance(value, list | tuple):
        return ()
    return [each for each in value if isinstance(each, Mapping | list | tuple)]


def _fault(key: str) -> Fault:
    return Fault("bad-value", key, TOO_DEEP)
