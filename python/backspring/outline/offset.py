"""An outline moved outward all round: lines and arcs stay lines and arcs."""

from __future__ import annotations

import cmath
import math
from collections.abc import Iterator

from backspring.outline.chain import Chain, Piece, Vertex
from backspring.outline.loops import place_text

_STRAIGHT_RAD = 1e-9


def offset(chain: Chain, by_mm: float) -> Chain:
    """Move an outline outward by a distance, square to itself.

    A corner that stands out becomes an arc about it. Raises ValueError with the place where a
    hollow is narrower than the distance.
    """
    if by_mm == 0.0:
        return chain
    moved = [_moved(piece, by_mm) for piece in chain.pieces]
    vertices: list[Vertex] = []
    for i, piece in enumerate(moved):
        before, after = moved[i - 1], moved[(i + 1) % len(moved)]
        start = _joint(chain.pieces[i - 1], chain.pieces[i], before, piece, by_mm)
        end = _joint(chain.pieces[i], chain.pieces[(i + 1) % len(moved)], piece, after, by_mm)
        first, last = start[-1], end[0]
        vertices.append(Vertex(first, _bulge_between(piece, first, last)))
        if len(end) == 2:
            vertices.append(Vertex(last, _round_corner(chain.pieces[i].end_mm, *end)))
    _require_ways_kept(chain, vertices, by_mm)
    return Chain(tuple(vertices))


def _moved(piece: Piece, by_mm: float) -> Piece:
    if piece.bulge * by_mm < 0.0 and abs(piece.radius_mm) <= abs(by_mm):
        raise ValueError(f"hollow at {place_text(piece.point_mm(0.5))} is too narrow")
    start, end = (
        place - 1j * by_mm * piece.direction(share)
        for place, share in ((piece.start_mm, 0.0), (piece.end_mm, 1.0))
    )
    return Piece(start, end, piece.bulge)


def _joint(
    piece: Piece, following: Piece, moved: Piece, after: Piece, by_mm: float
) -> tuple[complex, ...]:
    """Where one moved piece ends and the next begins: two places about a corner that stands out."""
    turn = cmath.phase(following.direction(0.0) / piece.direction(1.0))
    if abs(turn) < _STRAIGHT_RAD:
        return (moved.end_mm,)
    if (turn > 0.0) == (by_mm > 0.0):
        return moved.end_mm, after.start_mm
    meetings = [*_meet(moved, after)]
    if not meetings:
        raise ValueError(f"hollow at {place_text(piece.end_mm)} is too narrow")
    return (min(meetings, key=lambda place: abs(place - piece.end_mm)),)


def _meet(a: Piece, b: Piece) -> Iterator[complex]:
    """Meetings of two lines or circles, carried on beyond their ends."""
    if a.bulge and b.bulge:
        yield from _circles_meet(a.center_mm, abs(a.radius_mm), b.center_mm, abs(b.radius_mm))
    elif a.bulge:
        yield from _line_meets(b, a.center_mm, abs(a.radius_mm))
    elif b.bulge:
        yield from _line_meets(a, b.center_mm, abs(b.radius_mm))
    else:
        u, v = a.direction(0.0), b.direction(0.0)
        across = (u.conjugate() * v).imag
        if across:
            yield a.start_mm + u * ((b.start_mm - a.start_mm).conjugate() * v).imag / across


def _line_meets(line: Piece, center: complex, radius: float) -> Iterator[complex]:
    along = line.direction(0.0)
    foot = line.start_mm + along * ((center - line.start_mm) * along.conjugate()).real
    half = radius**2 - abs(foot - center) ** 2
    if half >= 0.0:
        yield from (foot + side * math.sqrt(half) * along for side in (-1.0, 1.0))


def _circles_meet(a: complex, ra: float, b: complex, rb: float) -> Iterator[complex]:
    apart = abs(b - a)
    if not apart:
        return
    along = (apart**2 + ra**2 - rb**2) / (2.0 * apart)
    half = ra**2 - along**2
    if half >= 0.0:
        unit = (b - a) / apart
        yield from (a + unit * (along + side * 1j * math.sqrt(half)) for side in (-1.0, 1.0))


def _bulge_between(piece: Piece, first: complex, last: complex) -> float:
    if not piece.bulge:
        return 0.0
    center = piece.center_mm
    turned = cmath.phase((last - center) / (first - center)) % math.tau
    return math.tan(0.25 * (turned if piece.bulge > 0.0 else turned - math.tau))


def _round_corner(corner: complex, first: complex, last: complex) -> float:
    return math.tan(0.25 * cmath.phase((last - corner) / (first - corner)))


def _require_ways_kept(chain: Chain, vertices: list[Vertex], by_mm: float) -> None:
    """Refuse an outline that a piece runs through backwards, which a slot too narrow makes."""
    moved = Chain(tuple(vertices))
    ways = [piece.direction(0.5) for piece in chain.pieces]
    for piece in moved.pieces:
        if abs(piece.end_mm - piece.start_mm) < 1e-12:
            continue
        if piece.bulge and abs(abs(piece.radius_mm) - abs(by_mm)) < 1e-9:
            continue  # about a corner
        if max((way.conjugate() * piece.direction(0.5)).real for way in ways) < 0.0:
            raise ValueError(f"hollow at {place_text(piece.point_mm(0.5))} is too narrow")
