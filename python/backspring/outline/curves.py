"""Curves as lines and arcs: what a spline, an ellipse or a Bezier becomes."""

from __future__ import annotations

import cmath
import math
from collections.abc import Callable, Iterator

from backspring.outline.chain import Piece

Curve = Callable[[float], complex]
# Lines and arcs keep within this of the curve.
TOLERANCE_MM = 0.002
_CHECKS = 8
_MOST_HALVINGS = 14
_MOST_PIECES = 600
_STEP = 1e-6


def arcs_of(curve: Curve, tolerance_mm: float = TOLERANCE_MM) -> list[Piece]:
    """Follow a smooth curve, given over 0 to 1, with arcs that meet without a kink.

    Each stretch is two arcs that keep the curve's direction at both ends, and is halved until they
    are near enough. Raises ValueError where that takes very many.
    """
    pieces: list[Piece] = []
    for part in _halved(curve, 0.0, 1.0, tolerance_mm, 0):
        pieces += part
        if len(pieces) > _MOST_PIECES:
            begin = curve(0.0)
            raise ValueError(f"curve from ({begin.real:.3f}, {begin.imag:.3f}) never comes smooth")
    return pieces


def _halved(
    curve: Curve, start: float, end: float, tolerance_mm: float, depth: int
) -> Iterator[list[Piece]]:
    if not all(cmath.isfinite(curve(at)) for at in (start, end)):
        raise ValueError("a curve with a place that is no number")
    pieces = _two_arcs(curve, start, end)
    off = max(
        distance_mm(pieces, curve(start + (end - start) * i / _CHECKS)) for i in range(1, _CHECKS)
    )
    if off <= tolerance_mm or depth == _MOST_HALVINGS:
        yield pieces
        return
    middle = 0.5 * (start + end)
    yield from _halved(curve, start, middle, tolerance_mm, depth + 1)
    yield from _halved(curve, middle, end, tolerance_mm, depth + 1)


def _direction(curve: Curve, at: float, towards: float) -> complex:
    """Find the direction along the curve, from a step to the side that is in the stretch."""
    step = math.copysign(_STEP, towards - at)
    way = (curve(at + step) - curve(at)) / step
    return way / abs(way) if way else 0j


def _two_arcs(curve: Curve, start: float, end: float) -> list[Piece]:
    """Make two arcs with the curve's ends and directions, both arms to their joint alike."""
    first, last = curve(start), curve(end)
    chord = last - first
    if abs(chord) == 0.0:
        return []
    before, after = _direction(curve, start, end), _direction(curve, end, start)
    if not before or not after:
        return [Piece(first, last, 0.0)]
    both = before + after
    across = (chord * both.conjugate()).real
    turn = 2.0 * (1.0 - (before * after.conjugate()).real)
    root = math.sqrt(across * across + turn * abs(chord) ** 2)
    arm = abs(chord) ** 2 / (root + across) if root + across > 0.0 else 0.5 * abs(chord)
    joint = 0.5 * (first + last + arm * (before - after))
    return [
        _arc(first, joint, (joint - first) / before),
        _arc(joint, last, after / (last - joint) if joint != last else 1.0 + 0j),
    ]


def _arc(start: complex, end: complex, leaves: complex) -> Piece:
    """Make an arc whose chord stands at half its angle to the direction at an end."""
    bulge = math.tan(0.5 * cmath.phase(leaves))
    return Piece(start, end, bulge if abs(bulge) > 1e-9 else 0.0)


def distance_mm(pieces: list[Piece], place: complex) -> float:
    """Measure how far a place lies from the nearest of some pieces."""
    return min((_from_piece(piece, place) for piece in pieces), default=math.inf)


def _from_piece(piece: Piece, place: complex) -> float:
    ends = min(abs(place - piece.start_mm), abs(place - piece.end_mm))
    chord = piece.end_mm - piece.start_mm
    if chord == 0:
        return ends
    if not piece.bulge:
        along = ((place - piece.start_mm) / chord).real
        foot = piece.start_mm + chord * max(0.0, min(along, 1.0))
        return abs(place - foot)
    center = piece.center_mm
    turned = cmath.phase((place - center) / (piece.start_mm - center))
    way = turned % math.copysign(math.tau, piece.sweep_rad)
    if abs(way) <= abs(piece.sweep_rad):
        return abs(abs(place - center) - abs(piece.radius_mm))
    return ends
