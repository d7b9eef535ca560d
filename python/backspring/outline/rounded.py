"""Hollow corners of a spring rounded with the root radius of its kinks."""

from __future__ import annotations

import cmath
import math
from collections.abc import Sequence
from dataclasses import dataclass

from backspring.outline.chain import Chain, Piece, Vertex
from backspring.outline.roots import LEAST_TURN_RAD, LONGEST_ROOT_MM

_SAME_MM = 1e-6


@dataclass(frozen=True, slots=True)
class Rounded:
    """A chain with roots at its hollow corners, and the corners that have no room for one."""

    chain: Chain
    sharp_mm: tuple[complex, ...]


def with_roots(
    chain: Chain, radius_mm: float, *, of_belly: bool, kept: Sequence[complex] = ()
) -> Rounded:
    """Round every hollow corner between two lines where the arc has room, but for those `kept`.

    A belly that is not straight has the kinks; else what bends the thickness stands on the back. A
    corner too shallow to be seen as a kink stays as it is.
    """
    pieces = chain.pieces
    turns = [_turn_rad(pieces[i - 1], piece, of_belly) for i, piece in enumerate(pieces)]
    cut = [
        0.0 if _stays(piece.start_mm, turn, radius_mm, kept) else radius_mm * math.tan(-0.5 * turn)
        for piece, turn in zip(pieces, turns, strict=True)
    ]
    vertices: list[Vertex] = []
    for i, (vertex, turn) in enumerate(zip(chain.vertices, turns, strict=True)):
        if not _fits(pieces, cut, i):
            vertices.append(vertex)
            continue
        back, on = cut[i] * pieces[i - 1].direction(1.0), cut[i] * pieces[i].direction(0.0)
        vertices.append(Vertex(vertex.at_mm - back, math.tan(0.25 * turn)))
        vertices.append(Vertex(vertex.at_mm + on))
    sharp = (
        piece.start_mm
        for i, piece in enumerate(pieces)
        if -turns[i] > LEAST_TURN_RAD and not _fits(pieces, cut, i)
    )
    return Rounded(Chain(tuple(vertices)), tuple(sharp))


def _stays(corner_mm: complex, turn_rad: float, radius_mm: float, kept: Sequence[complex]) -> bool:
    """Say whether a corner is no kink, or one whose root would be taken for a hollow belly."""
    shallow, long = -turn_rad <= LEAST_TURN_RAD, radius_mm * -turn_rad >= LONGEST_ROOT_MM
    return shallow or long or any(abs(corner_mm - place) < _SAME_MM for place in kept)


def _fits(pieces: Sequence[Piece], cut: Sequence[float], i: int) -> bool:
    """Say whether both lines at a corner are long enough for the arcs at their ends."""
    before = cut[i - 1] + cut[i] < pieces[i - 1].length_mm - _SAME_MM
    after = cut[i] + cut[(i + 1) % len(cut)] < pieces[i].length_mm - _SAME_MM
    return cut[i] > 0.0 and before and after


def _turn_rad(before: Piece, after: Piece, of_belly: bool) -> float:
    """Angle at a corner between two lines, + counterclockwise; 0 where it is none that counts."""
    if before.bulge or after.bulge:
        return 0.0
    ahead = min(piece.direction(0.0).real for piece in (before, after))
    if of_belly and ahead < -_SAME_MM:
        return 0.0
    return cmath.phase(after.direction(0.0) / before.direction(1.0))
