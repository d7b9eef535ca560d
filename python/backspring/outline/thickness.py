"""Thickness and mid-line of a spring's outline at stations."""

from __future__ import annotations

from collections.abc import Sequence

from backspring.outline.chain import Chain

Row = tuple[float, float]
# Between two stations thickness and mid-line are straight within this.
_STRAIGHT_MM = 0.002
_NARROWEST_MM = 0.01
_ROUNDING_MM = 1e-8
_STEEPEST_END = 0.5


def thickness_mm(spring: Chain) -> tuple[Row, ...]:
    """Thickness square to the stations' axis, often enough for straight lines between them."""
    corners = {vertex.at_mm.real for vertex in spring.vertices}
    tangents = {
        piece.center_mm.real + side * abs(piece.radius_mm)
        for piece in spring.pieces
        if piece.bulge
        for side in (-1.0, 1.0)
    }
    low, high = min(corners), max(corners)
    known = sorted(corners | {x for x in tangents if low < x < high})
    stations = _spread(known)
    if not stations:
        return ()
    rows: list[Row] = [(stations[0], _thickness(spring, stations[0]))]
    for ahead in stations[1:]:
        rows += _between(spring, rows[-1], (ahead, _thickness(spring, ahead)))
    return tuple(_bent(_within_ends(rows)))


def up_to(rows: Sequence[Row], end_mm: float) -> tuple[Row, ...]:
    """Rows up to a station, the last of them at it: no bending comes from beyond the pad."""
    kept = [row for row in rows if row[0] < end_mm - 1e-9]
    if len(kept) == len(rows) or not kept:
        return tuple(rows)
    (x, t), (ahead, there) = kept[-1], rows[len(kept)]
    share = (end_mm - x) / (ahead - x)
    return (*kept, (end_mm, t + share * (there - t)))


def _within_ends(rows: list[Row]) -> list[Row]:
    """Leave out where a rounded or leaning end of the spring runs out to nothing."""
    first, last = 0, len(rows) - 1
    while first < last and _runs_out(rows[first], rows[first + 1]):
        first += 1
    while last > first and _runs_out(rows[last], rows[last - 1]):
        last -= 1
    return rows[first : last + 1]


def _runs_out(end: Row, inner: Row) -> bool:
    return inner[1] - end[1] > _STEEPEST_END * abs(inner[0] - end[0])


def mid_line_mm(spring: Chain, rows: tuple[Row, ...], face_mm: float) -> tuple[Row, ...]:
    """Height of the middle between belly and back above the line of the pad's face."""
    found = []
    for x, _ in rows:
        heights = spring.heights_mm(x)
        found.append((x, 0.5 * (heights[0] + heights[-1]) - face_mm))
    return tuple(found)


def _bent(rows: list[Row]) -> list[Row]:
    """Leave out rows on the straight line between their neighbours."""
    kept = rows[:1]
    for (x, t), (ahead, there) in zip(rows[1:-1], rows[2:], strict=True):
        before, here = kept[-1]
        line = here + (there - here) * (x - before) / (ahead - before)
        if abs(t - line) > _ROUNDING_MM:
            kept.append((x, t))
    return [*kept, rows[-1]]


def _spread(stations: list[float]) -> list[float]:
    kept: list[float] = []
    for x in stations:
        if not kept or x - kept[-1] > 1e-9:
            kept.append(x)
    return kept


def _thickness(spring: Chain, x_mm: float) -> float:
    heights = spring.heights_mm(x_mm)
    return heights[-1] - heights[0] if len(heights) > 1 else 0.0


def _between(spring: Chain, start: Row, end: Row) -> list[Row]:
    """Rows after the first up to the last, halved until the outline is straight between them."""
    middle = 0.5 * (start[0] + end[0])
    there = (middle, _thickness(spring, middle))
    off = abs(there[1] - 0.5 * (start[1] + end[1]))
    if off <= 0.25 * _STRAIGHT_MM or end[0] - start[0] < _NARROWEST_MM:
        return [end]
    return [*_between(spring, start, there), *_between(spring, there, end)]
