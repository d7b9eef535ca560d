"""Profiles of two springs at the same stations, which changes neither."""

from __future__ import annotations

from backspring import _core
from backspring.core_record import changed


def same_stations(a: _core.Design, b: _core.Design) -> tuple[_core.Design, _core.Design]:
    """Give two profiles with unlike numbers of stations all of them."""
    if len(a.spring.thickness) == len(b.spring.thickness):
        return a, b
    return _at_all_stations(a, b)


def _at_all_stations(a: _core.Design, b: _core.Design) -> tuple[_core.Design, _core.Design]:
    profiles = (a.spring.thickness, b.spring.thickness)
    # A thickness that is the same all along has one station, which says nothing.
    places = _joined(*([s.x_mm for s in each] if len(each) > 1 else [] for each in profiles))
    return _read_at(a, places or [0.0]), _read_at(b, places or [0.0])


def thicknesses(a: _core.Design, b: _core.Design) -> list[tuple[float, ...]]:
    """Thickness of both wherever either has a station."""
    ends = _at_all_stations(a, b)
    return [tuple(each.thickness_mm for each in end.spring.thickness) for end in ends]


def _joined(one: list[float], other: list[float]) -> list[float]:
    """Join stations; two alike, a step, stay two."""
    return sorted(x for x in {*one, *other} for _ in range(max(one.count(x), other.count(x))))


def _read_at(design: _core.Design, places: list[float]) -> _core.Design:
    profile = design.spring.thickness
    read = []
    for index, x in enumerate(places):
        ahead = index > 0 and places[index - 1] == x
        read.append(_core.Station(x_mm=x, thickness_mm=_thickness(profile, x, ahead)))
    return changed(design, spring=changed(design.spring, thickness=read))


def _thickness(profile: list[_core.Station], x: float, ahead: bool) -> float:
    """Thickness at a station, on one side of a step; beyond the ends as at the end."""
    at = [each.thickness_mm for each in profile if each.x_mm == x]
    if at:
        return at[-1] if ahead else at[0]
    before = [each for each in profile if each.x_mm < x]
    after = [each for each in profile if each.x_mm > x]
    if not before or not after:
        return (before[-1] if before else after[0]).thickness_mm
    low, high = before[-1], after[0]
    share = (x - low.x_mm) / (high.x_mm - low.x_mm)
    return (1.0 - share) * low.thickness_mm + share * high.thickness_mm
