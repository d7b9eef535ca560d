"""A profile written as pairs of station and thickness."""

from __future__ import annotations

from collections.abc import Iterable

from backspring import _core as core


def stations(pairs: Iterable[tuple[float, float]]) -> list[core.Station]:
    return [core.Station(x_mm=x, thickness_mm=thickness) for x, thickness in pairs]
