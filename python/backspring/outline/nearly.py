"""The faces of a tang that was traced or drawn with curves, where few are quite square."""

from __future__ import annotations

import cmath
import math
from collections.abc import Iterator

from backspring.outline.hull import Rounding
from backspring.outline.tang_of import TangFaces, TangOutline, kick_numbers

TRACED_RAD = math.radians(1.5)
DRAWN_RAD = math.radians(0.1)
_SHORTEST_MM = 0.5
_MOST_CENTER_MM = 0.15
_OPEN, _END, _CLOSED = 0.5 * math.pi, math.pi, 1.5 * math.pi
_NAMES = {_OPEN: "open face", _END: "half-stop", _CLOSED: "closed face"}


def nearly_faces(outline: TangOutline, off_rad: float) -> tuple[TangFaces, list[str]] | None:
    """Read faces that are square to each other within an angle, each as far out as its own line.

    Along that line it lies on the pad at rest. Also returns how far each is off. None where the
    tang is of another kind.
    """
    body = outline.body
    flats = {normal: _flat(body, normal, off_rad) for normal in (_OPEN, _END, _CLOSED)}
    opened, closed = flats[_OPEN], flats[_CLOSED]
    if opened is None or closed is None:
        return None
    out = {n: _reach(body, n) if flat is None else flat[2] for n, flat in flats.items()}
    square = flats[_END] is not None
    if square:
        corners = [_corner(body, out, _OPEN), _corner(body, out, _CLOSED)]
    else:
        behind = _about(body, _END)
        if abs(behind.center_mm) > _MOST_CENTER_MM:
            return None
        ends = behind.from_rad, behind.to_rad
        corners = [_round(body, _OPEN, ends[0]), _round(body, ends[1], _CLOSED)]
    faces = TangFaces(
        open_mm=out[_OPEN],
        half_stop_mm=out[_END] if square else None,
        closed_mm=out[_CLOSED],
        corner_open_mm=corners[0],
        corner_closed_mm=corners[1],
        front_mm=opened[1],
        kick=kick_numbers(outline, out[_CLOSED]),
        round_end_mm=None if square else out[_END],
    )
    notes = [
        f"tang: {_NAMES[normal]} {math.degrees(flat[0]):+.2f} deg off square, taken as square"
        for normal, flat in flats.items()
        if flat is not None and abs(flat[0]) > math.radians(0.01)
    ]
    return faces, notes


def _flats(body: tuple[Rounding, ...]) -> Iterator[tuple[float, complex, complex]]:
    """Give every flat's normal and ends, the later in the order of normals first."""
    for arc, following in zip(body, (*body[1:], body[0]), strict=True):
        yield arc.to_rad, arc.point_mm(arc.to_rad), following.point_mm(arc.to_rad)


def _flat(
    body: tuple[Rounding, ...], normal: float, off_rad: float
) -> tuple[float, float, float] | None:
    """Find the longest flat near a normal: how far off it is, where it ends ahead, how far out."""
    near = [
        (abs(end - begin), at - normal, begin.real, (begin * cmath.exp(-1j * at)).real)
        for at, begin, end in _flats(body)
        if abs(at - normal) < off_rad and abs(end - begin) > _SHORTEST_MM
    ]
    return max(near)[1:] if near else None


def _about(body: tuple[Rounding, ...], normal: float) -> Rounding:
    return next(arc for arc in body if arc.from_rad <= normal <= arc.to_rad)


def _reach(body: tuple[Rounding, ...], normal: float) -> float:
    point = _about(body, normal).point_mm(normal)
    return (point * cmath.exp(-1j * normal)).real


def _round(body: tuple[Rounding, ...], after: float, before: float) -> float:
    """Find the radius of a corner between a face and a round end: of the arc that turns most."""
    between = [
        (arc.to_rad - arc.from_rad, arc.radius_mm)
        for arc in body
        if after - TRACED_RAD < arc.from_rad and arc.to_rad < before + TRACED_RAD
    ]
    return max(between, default=(0.0, 0.0))[1]


def _corner(body: tuple[Rounding, ...], out: dict[float, float], face: float) -> float:
    """Find the radius of a corner by how far it reaches half-way between its faces."""
    half = math.sqrt(0.5)
    sharp = half * (out[face] + out[_END])
    return max(sharp - _reach(body, 0.5 * (face + _END)), 0.0) / (math.sqrt(2.0) - 1.0)
