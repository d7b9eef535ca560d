"""Rows of two springs at the same stations, which changes neither."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from backspring import _core
from backspring.core_record import changed

# Rows of a spring by the key of the file: the core's name of them, what a row is, its number.
_ROWS: dict[str, tuple[str, type, str]] = {
    "spring.thickness": ("thickness", _core.Station, "thickness_mm"),
    "spring.width": ("widths", _core.WidthStation, "width_mm"),
    "spring.mid_line": ("mid_line", _core.MidLinePoint, "height_mm"),
}


def same_stations(a: _core.Design, b: _core.Design) -> tuple[_core.Design, _core.Design]:
    """Give two springs with unlike numbers of stations all of them."""
    for key, (name, _, _) in _ROWS.items():
        if len(getattr(a.spring, name)) != len(getattr(b.spring, name)):
            rows = _at_all_stations(a.spring, b.spring, key)
            a, b = (
                changed(each, spring=changed(each.spring, **{name: read}))
                for each, read in zip((a, b), rows, strict=True)
            )
    return a, b


def numbers_along(a: _core.Design, b: _core.Design, key: str) -> list[tuple[float, ...]]:
    """Return the numbers of a key with rows wherever either has a station; none of another key."""
    if key not in _ROWS:
        return []
    number = _ROWS[key][2]
    rows = _at_all_stations(a.spring, b.spring, key)
    return [tuple(getattr(each, number) for each in read) for read in rows]


def _at_all_stations(a: _core.Spring, b: _core.Spring, key: str) -> list[list[Any]]:
    both = [_rows(spring, key) for spring in (a, b)]
    # A number that is the same all along has one station, which says nothing.
    places = _joined(*([row.x_mm for row in each] if len(each) > 1 else [] for each in both))
    return [_read_at(each, places or [0.0], key) for each in both]


def _rows(spring: _core.Spring, key: str) -> Sequence[Any]:
    name, row, number = _ROWS[key]
    even = {"widths": spring.width_mm}.get(name, 0.0)
    return getattr(spring, name) or [row(**{"x_mm": 0.0, number: even})]


def _joined(one: list[float], other: list[float]) -> list[float]:
    """Join stations; two alike, a step, stay two."""
    return sorted(x for x in {*one, *other} for _ in range(max(one.count(x), other.count(x))))


def _read_at(rows: Sequence[Any], places: list[float], key: str) -> list[Any]:
    _, row, number = _ROWS[key]
    read = []
    for index, x in enumerate(places):
        ahead = index > 0 and places[index - 1] == x
        read.append(row(**{"x_mm": x, number: _number(rows, number, x, ahead)}))
    return read


def _number(rows: Sequence[Any], number: str, x: float, ahead: bool) -> float:
    """Read rows at a station, on one side of a step; beyond the ends as at the end."""
    at: list[float] = [getattr(each, number) for each in rows if each.x_mm == x]
    if at:
        return at[-1] if ahead else at[0]
    before = [each for each in rows if each.x_mm < x]
    after = [each for each in rows if each.x_mm > x]
    if not before or not after:
        return float(getattr(before[-1] if before else after[0], number))
    low, high = before[-1], after[0]
    share = (x - low.x_mm) / (high.x_mm - low.x_mm)
    return float((1.0 - share) * getattr(low, number) + share * getattr(high, number))
