"""Thickness and mid-line of a spring's outline at stations."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from backspring.outline.chain import Chain, Piece

Row = tuple[float, float]
_Both = tuple[float, float, float]
# Between two stations thickness and mid-line are straight within this.
_STRAIGHT_MM = 0.002
_NARROWEST_MM = 0.01
_ROUNDING_MM = 1e-8
_STEEPEST_END = 0.5
# Beside a step, so near that no slope counts.
_BESIDE_MM = 1e-7
_UPRIGHT_MM = 1e-6
_LEAST_STEP_MM = 1e-3


@dataclass(frozen=True, slots=True)
class Shape:
    """Rows of station and thickness, square to the stations' axis, and of height of the middle."""

    thickness_mm: tuple[Row, ...]
    mid_line_mm: tuple[Row, ...]


def shape_of(spring: Chain, end_mm: float, face_mm: float) -> Shape:
    """Read thickness and mid-line up to a station, often enough for straight lines between them.

    The mid-line's height is above the line of the pad's face.
    """
    rows = _within_ends(_rows(_Across(spring)))
    thickness = up_to([(x, t) for x, t, _ in rows], end_mm)
    middle = up_to([(x, y - face_mm) for x, _, y in rows], end_mm)
    return Shape(tuple(_bent(thickness)), tuple(_bent(middle)))


def up_to(rows: Sequence[Row], end_mm: float) -> Sequence[Row]:
    """Rows up to a station, the last of them at it: no bending comes from beyond the pad."""
    kept = [row for row in rows if row[0] < end_mm - 1e-9]
    if len(kept) == len(rows) or not kept:
        return rows
    (x, value), (ahead, there) = kept[-1], rows[len(kept)]
    share = (end_mm - x) / (ahead - x)
    return (*kept, (end_mm, value + share * (there - value)))


class _Across:
    """An outline to be read at many stations: only pieces that a station can meet are asked."""

    def __init__(self, chain: Chain) -> None:
        self.vertices, self.pieces = chain.vertices, chain.pieces
        ends = [_ends(piece) for piece in self.pieces]
        self._low = np.array([low for low, _ in ends])
        self._high = np.array([high for _, high in ends])

    def heights_mm(self, x_mm: float) -> list[float]:
        """List where a line across enters and leaves the outline, in rising order."""
        met = np.flatnonzero((self._low <= x_mm) & (self._high >= x_mm))
        pieces = [self.pieces[i] for i in met]
        return sorted(p.point_mm(share).imag for p in pieces for share in p.crossings(x_mm))


def _ends(piece: Piece) -> tuple[float, float]:
    """Bound the stations of a piece, an arc by its whole circle."""
    if piece.bulge:
        center, radius = piece.center_mm.real, abs(piece.radius_mm)
        return center - radius - _UPRIGHT_MM, center + radius + _UPRIGHT_MM
    stations = piece.start_mm.real, piece.end_mm.real
    return min(stations) - _UPRIGHT_MM, max(stations) + _UPRIGHT_MM


def _rows(spring: _Across) -> list[_Both]:
    corners = {vertex.at_mm.real for vertex in spring.vertices}
    tangents = {
        piece.center_mm.real + side * abs(piece.radius_mm)
        for piece in spring.pieces
        if piece.bulge
        for side in (-1.0, 1.0)
    }
    low, high = min(corners), max(corners)
    stations = _spread(sorted(corners | {x for x in tangents if low < x < high}))
    steps = [
        piece.start_mm.real
        for piece in spring.pieces
        if abs(piece.end_mm.real - piece.start_mm.real) < _UPRIGHT_MM
        and abs(piece.end_mm.imag - piece.start_mm.imag) > _LEAST_STEP_MM
        and low + _UPRIGHT_MM < piece.start_mm.real < high - _UPRIGHT_MM
    ]
    rows: list[_Both] = []
    for start, end in zip(stations, stations[1:], strict=False):
        if end - start < _UPRIGHT_MM:
            continue
        first, last = _at(spring, start, end, steps), _at(spring, end, start, steps)
        if not rows or abs(first[1] - rows[-1][1]) > _LEAST_STEP_MM:
            rows.append(first)
        rows += _between(spring, first, last)
    return rows


def _at(spring: _Across, x_mm: float, towards_mm: float, steps: Sequence[float]) -> _Both:
    """Read at a station, of a step on the side that is meant."""
    if any(abs(step - x_mm) < _UPRIGHT_MM for step in steps):
        beside = x_mm + (_BESIDE_MM if towards_mm > x_mm else -_BESIDE_MM)
        _, thickness, middle = _read(spring, beside)
        return x_mm, thickness, middle
    return _read(spring, x_mm)


def _read(spring: _Across, x_mm: float) -> _Both:
    heights = spring.heights_mm(x_mm)
    if len(heights) < 2:
        return x_mm, 0.0, heights[0] if heights else 0.0
    return x_mm, heights[-1] - heights[0], 0.5 * (heights[0] + heights[-1])


def _between(spring: _Across, start: _Both, end: _Both) -> list[_Both]:
    """Rows after the first up to the last, halved until the outline is straight between them."""
    middle = 0.5 * (start[0] + end[0])
    there = _read(spring, middle)
    off = max(abs(there[i] - 0.5 * (start[i] + end[i])) for i in (1, 2))
    if off <= 0.25 * _STRAIGHT_MM or end[0] - start[0] < _NARROWEST_MM:
        return [end]
    return [*_between(spring, start, there), *_between(spring, there, end)]


def _bent(rows: Sequence[Row]) -> list[Row]:
    """Leave out rows on the straight line between their neighbours."""
    kept = list(rows[:1])
    for (x, value), (ahead, there) in zip(rows[1:-1], rows[2:], strict=True):
        before, here = kept[-1]
        if ahead == before:
            continue
        line = here + (there - here) * (x - before) / (ahead - before)
        if abs(value - line) > _ROUNDING_MM:
            kept.append((x, value))
    return [*kept, rows[-1]]


def _spread(stations: list[float]) -> list[float]:
    kept: list[float] = []
    for x in stations:
        if not kept or x - kept[-1] > 1e-9:
            kept.append(x)
    return kept


def _within_ends(rows: list[_Both]) -> list[_Both]:
    """Leave out where a rounded or leaning end of the spring runs out to nothing."""
    first, last = 0, len(rows) - 1
    while first < last and _runs_out(rows[first], rows[first + 1]):
        first += 1
    while last > first and _runs_out(rows[last], rows[last - 1]):
        last -= 1
    return rows[first : last + 1]


def _runs_out(end: _Both, inner: _Both) -> bool:
    return inner[1] - end[1] > _STEEPEST_END * abs(inner[0] - end[0]) > 0.0
