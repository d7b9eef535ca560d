"""Hollow arcs of a spring: short ones are the roots of kinks, long ones a hollow belly."""

from __future__ import annotations

import cmath
from collections.abc import Sequence
from dataclasses import dataclass

from backspring.outline.chain import Chain, Piece, Vertex

# An arc shorter than this is the root of a kink.
LONGEST_ROOT_MM = 4.0
LEAST_TURN_RAD = 0.02
_SAME_MM = 1e-6


@dataclass(frozen=True, slots=True)
class Roots:
    """A spring with the belly's roots drawn sharp, the least radius of roots and of hollows."""

    chain: Chain
    kink_radius_mm: float | None
    curve_radius_mm: float | None


def roots_of(spring: Chain, belly_mm: tuple[float, float]) -> Roots:
    """Take the roots out of a belly that lies along x: a kink's stress is found from its corner.

    Where the belly is straight between two stations, what bends the thickness stands on the back,
    and its roots are those of the kinks.
    """
    pieces, count = spring.pieces, len(spring.pieces)
    hollow = [i for i, piece in enumerate(pieces) if _is_hollow_belly(piece)]
    if _is_straight_belly(pieces, belly_mm):
        hollow += [i for i, piece in enumerate(pieces) if _is_hollow(piece) and i not in hollow]
    corners = {
        i: _corner(pieces[i])
        for i in hollow
        if pieces[i].length_mm < LONGEST_ROOT_MM
        and not pieces[i - 1].bulge
        and not pieces[(i + 1) % count].bulge
    }
    vertices = [
        Vertex(corners[(i - 1) % count], vertex.bulge) if (i - 1) % count in corners else vertex
        for i, vertex in enumerate(spring.vertices)
        if i not in corners
    ]
    roots = [abs(pieces[i].radius_mm) for i in corners]
    curves = [
        abs(pieces[i].radius_mm) for i in hollow if i not in corners and _is_hollow_belly(pieces[i])
    ]
    chain = Chain(tuple(vertices)) if corners else spring
    return Roots(chain, min(roots, default=None), min(curves, default=None))


def _is_hollow_belly(piece: Piece) -> bool:
    return _is_hollow(piece) and piece.end_mm.real > piece.start_mm.real


def _is_hollow(piece: Piece) -> bool:
    return piece.bulge < 0.0 and abs(piece.sweep_rad) > LEAST_TURN_RAD


def _is_straight_belly(pieces: Sequence[Piece], belly_mm: tuple[float, float]) -> bool:
    """Say whether the belly is lines one behind the other, nearly along x, without a step."""
    start, end = belly_mm
    between = [
        piece
        for piece in pieces
        if piece.end_mm.real > max(piece.start_mm.real + _SAME_MM, start)
        and piece.start_mm.real < end
    ]
    level = all(
        not piece.bulge and abs(cmath.phase(piece.direction(0.0))) < LEAST_TURN_RAD
        for piece in between
    )
    starts = [piece.start_mm for piece in between]
    joined = all(
        min(abs(piece.end_mm - place) for place in starts) < _SAME_MM
        for piece in between
        if piece.end_mm.real < end
    )
    return level and joined


def _corner(arc: Piece) -> complex:
    """Find where the tangents at both ends of an arc cross."""
    chord = arc.end_mm - arc.start_mm
    return arc.start_mm + 0.5 * chord * (1.0 + 1j * _half_tangent(arc))


def _half_tangent(arc: Piece) -> float:
    # Minus the tangent of half the arc's angle, from the tangent of a quarter of it.
    return -2.0 * arc.bulge / (1.0 - arc.bulge**2)
