"""Hollow arcs of a spring's belly: short ones are the roots of kinks, long ones a hollow belly."""

from __future__ import annotations

from dataclasses import dataclass

from backspring.outline.chain import Chain, Piece, Vertex

# An arc shorter than this is the root of a kink.
_LONGEST_ROOT_MM = 4.0
_LEAST_TURN_RAD = 0.02


@dataclass(frozen=True, slots=True)
class Roots:
    """A spring with the belly's roots drawn sharp, the least radius of roots and of hollows."""

    chain: Chain
    kink_radius_mm: float | None
    curve_radius_mm: float | None


def roots_of(spring: Chain) -> Roots:
    """Take the roots out of a belly that lies along x: a kink's stress is found from its corner."""
    pieces, count = spring.pieces, len(spring.pieces)
    hollow = [i for i, piece in enumerate(pieces) if _is_hollow_belly(piece)]
    corners = {
        i: _corner(pieces[i])
        for i in hollow
        if pieces[i].length_mm < _LONGEST_ROOT_MM
        and not pieces[i - 1].bulge
        and not pieces[(i + 1) % count].bulge
    }
    vertices = [
        Vertex(corners[(i - 1) % count], vertex.bulge) if (i - 1) % count in corners else vertex
        for i, vertex in enumerate(spring.vertices)
        if i not in corners
    ]
    roots = [abs(pieces[i].radius_mm) for i in corners]
    curves = [abs(pieces[i].radius_mm) for i in hollow if i not in corners]
    chain = Chain(tuple(vertices)) if corners else spring
    return Roots(chain, min(roots, default=None), min(curves, default=None))


def _is_hollow_belly(piece: Piece) -> bool:
    ahead = piece.end_mm.real > piece.start_mm.real
    return ahead and piece.bulge < 0.0 and abs(piece.sweep_rad) > _LEAST_TURN_RAD


def _corner(arc: Piece) -> complex:
    """Find where the tangents at both ends of an arc cross."""
    chord = arc.end_mm - arc.start_mm
    return arc.start_mm + 0.5 * chord * (1.0 + 1j * _half_tangent(arc))


def _half_tangent(arc: Piece) -> float:
    # Minus the tangent of half the arc's angle, from the tangent of a quarter of it.
    return -2.0 * arc.bulge / (1.0 - arc.bulge**2)
