"""Where a spring that turns about its middle pin meets the tang."""

from __future__ import annotations

import cmath
import math
from collections.abc import Iterator

from backspring.outline.chain import Chain, Piece

_MOST_TURN_RAD = 0.5


def turn_to_meet(spring: Chain, face: int, tang: Chain) -> float:
    """Find the angle by which the spring turns about the middle pin until it meets the tang.

    Raises ValueError where it does not.
    """

    def gap(turn_rad: float) -> float:
        return least_gap_mm(spring.moved(cmath.exp(1j * turn_rad), 0j), face, tang)

    low, high = -_MOST_TURN_RAD, _MOST_TURN_RAD
    if not gap(low) < 0.0 < gap(high):
        raise ValueError("the spring does not meet the tang's open face")
    for _ in range(60):
        middle = 0.5 * (low + high)
        if gap(middle) < 0.0:
            low = middle
        else:
            high = middle
    return high


def least_gap_mm(spring: Chain, face: int, tang: Chain) -> float:
    """Measure the least height of the pad over the tang's top; below 0 they overlap."""
    pad = spring.pieces[face]
    least = math.inf
    for x in _stations(pad, tang):
        top, belly = tang.heights_mm(x), spring.heights_mm(x)
        if top and belly:
            least = min(least, belly[0] - top[-1])
    return least


def _stations(pad: Piece, tang: Chain) -> Iterator[float]:
    """List where a straight pad can be nearest to the tang: corners, and tangents to arcs."""
    low, high = pad.start_mm.real, pad.end_mm.real
    yield from (low, high)
    normal = 1j * (pad.end_mm - pad.start_mm) / abs(pad.end_mm - pad.start_mm)
    for piece in tang.pieces:
        places = [piece.start_mm.real]
        if piece.bulge > 0.0:
            places.append((piece.center_mm + piece.radius_mm * normal).real)
        yield from (x for x in places if low <= x <= high)
