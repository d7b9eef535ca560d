"""What a tang's outline says: faces, corners and kick, or an outline of a kind of its own."""

from __future__ import annotations

import cmath
import math
from collections.abc import Sequence
from dataclasses import dataclass, field

from backspring.outline.chain import Chain, Piece, Vertex, closed_chain
from backspring.outline.curves import distance_mm
from backspring.outline.hull import KINK_RAD, Rounding, deepest_hollow, hull

_SAME_MM = 1e-6
# A hollow of the outline that is less deep is none.
_HOLLOW_MM = 0.01
_OPEN, _END, _CLOSED = 0.5 * math.pi, math.pi, 1.5 * math.pi


@dataclass(frozen=True, slots=True)
class Nose:
    """A kick's nose: an arc that stands proud of the closed face."""

    center_mm: complex
    radius_mm: float


@dataclass(frozen=True, slots=True)
class TangOutline:
    """A tang seen from its pivot, blade open: convex body and, where one stands proud, the kick."""

    body: tuple[Rounding, ...]
    kick: Nose | None
    hollow: tuple[float, complex] = (0.0, 0j)


@dataclass(frozen=True, slots=True)
class OwnShape:
    """A tang of a kind of its own: rows of its convex outline, and its kick's numbers."""

    rows_mm: tuple[tuple[float, float, float], ...]
    kick: tuple[float, float, float] | None = None


@dataclass(frozen=True, slots=True)
class TangFaces:
    """The numbers of a tang of the usual kind."""

    open_mm: float
    half_stop_mm: float | None
    closed_mm: float
    corner_open_mm: float
    corner_closed_mm: float
    front_mm: float
    kick: tuple[float, float, float] | None = field(default=None)
    round_end_mm: float | None = None


def tang_outline(chain: Chain) -> TangOutline:
    """Part a tang's outline, its pivot at the origin, into body and kick."""
    kick = _kick_of(chain)
    without = chain if kick is None else kick[0]
    body = hull(without)
    return TangOutline(tuple(body), kick and kick[1], deepest_hollow(without, body))


def tang_faces(outline: TangOutline) -> TangFaces | None:
    """Read the faces of a tang with square faces, or round behind; None where it is neither."""
    body, flats = outline.body, _flats(outline.body)
    opened, closed = _flat_with(flats, _OPEN), _flat_with(flats, _CLOSED)
    if opened is None or closed is None:
        return None
    behind = [body[i % len(body)] for i in range(opened + 1, closed + 1)]
    half_stop = None
    if _flat_with(flats, _END) is not None and len(behind) == 2:
        half_stop = -behind[0].point_mm(_END).real
    elif not (len(behind) == 3 and abs(behind[1].center_mm) < _SAME_MM):
        return None
    closed_mm = -behind[-1].point_mm(_CLOSED).imag
    return TangFaces(
        open_mm=behind[0].point_mm(_OPEN).imag,
        half_stop_mm=half_stop,
        closed_mm=closed_mm,
        corner_open_mm=behind[0].radius_mm,
        corner_closed_mm=behind[-1].radius_mm,
        front_mm=body[opened].point_mm(_OPEN).real,
        kick=kick_numbers(outline, closed_mm),
        round_end_mm=behind[1].radius_mm if half_stop is None else None,
    )


def kick_numbers(
    outline: TangOutline, closed_mm: float, normal_rad: float = _CLOSED
) -> tuple[float, float, float] | None:
    """Give the distance, height and radius of a kick over a closed face with a normal."""
    kick = outline.kick
    if kick is None:
        return None
    out = (kick.center_mm * cmath.exp(-1j * normal_rad)).real
    height = kick.radius_mm + out - closed_mm
    return kick.center_mm.real, height, kick.radius_mm


def _flats(body: Sequence[Rounding]) -> list[tuple[int, float, float]]:
    """List every flat: the arc ahead of it in the order of normals, its normal, its length."""
    flats = []
    for i, arc in enumerate(body):
        following = body[(i + 1) % len(body)]
        length = abs(following.point_mm(arc.to_rad) - arc.point_mm(arc.to_rad))
        if length > _SAME_MM:
            flats.append((i, arc.to_rad, length))
    return flats


def _flat_with(flats: Sequence[tuple[int, float, float]], normal_rad: float) -> int | None:
    for arc, normal, _ in flats:
        if abs(normal - normal_rad) < KINK_RAD:
            return arc
    return None


def _kick_of(chain: Chain) -> tuple[Chain, Nose] | None:
    """Part the tang from its kick, and find the nose, where the closed side has a hollow.

    The hollow is where the outline lies deepest behind a flat of the convex outline that faces the
    closed spring; ahead of it stands the kick.
    """
    corners = hull(chain)
    deepest, depth = None, _HOLLOW_MM
    for ahead, normal, _ in _flats(corners):
        if not math.radians(200.0) < normal < math.radians(340.0):
            continue
        outward = cmath.exp(1j * normal)
        low, high, top = _flat_at(corners, normal)
        for i, vertex in enumerate(chain.vertices):
            along = (vertex.at_mm / (1j * outward)).real
            below = top - (vertex.at_mm / outward).real
            if low < along < high and depth < below < 0.5 * abs(high - low):
                ends = [
                    each.point_mm(normal)
                    for each in (corners[ahead], corners[(ahead + 1) % len(corners)])
                ]
                if _runs_between(chain, i, *ends):
                    deepest, depth = i, below
    if deepest is None:
        return None
    return _without_kick(chain, deepest)


def _runs_between(chain: Chain, vertex: int, start: complex, end: complex) -> bool:
    """Say whether an outline comes by a corner on its way from one place on it to another."""
    pieces = chain.pieces
    first, last = (
        min(range(len(pieces)), key=lambda i: distance_mm([pieces[i]], place))
        for place in (start, end)
    )
    return 0 < (vertex - first) % len(pieces) <= (last - first) % len(pieces)


def _flat_at(corners: Sequence[Rounding], normal: float) -> tuple[float, float, float]:
    """Tell where the flat with a normal begins and ends along itself, and how far out it lies."""
    outward = cmath.exp(1j * normal)
    places = [
        corner.point_mm(normal) / outward
        for corner in corners
        if min(abs(corner.from_rad - normal), abs(corner.to_rad - normal)) < KINK_RAD
    ]
    along = sorted(place.imag for place in places)
    return along[0], along[-1], places[0].real


def _without_kick(chain: Chain, hollow: int) -> tuple[Chain, Nose] | None:
    """Cut the outline at its hollow: what goes on ahead of it belongs to the kick."""
    vertices, pieces = chain.vertices, chain.pieces
    count, kick, nose = len(vertices), [], None
    for step in range(count):
        piece = pieces[(hollow + step) % count]
        kick.append((hollow + step) % count)
        if _is_nose(piece) and (nose is None or _lowest(piece) < _lowest(nose)):
            nose = piece
        if piece.end_mm.imag > 0.0 or piece.end_mm.imag > vertices[hollow].at_mm.imag + _SAME_MM:
            break
    if nose is None:
        return None
    cut = Vertex(vertices[hollow].at_mm)
    gone = {(hollow + 1 + i) % count for i in range(len(kick))}
    rest = [
        cut if i == hollow else v
        for i, v in enumerate(vertices)
        if i not in gone or v.at_mm.imag > cut.at_mm.imag
    ]
    return closed_chain(rest), Nose(nose.center_mm, nose.radius_mm)


def _is_nose(piece: Piece) -> bool:
    return piece.bulge > 0.0 and piece.center_mm.imag < 0.0 and piece.center_mm.real > 0.0


def _lowest(piece: Piece) -> float:
    return piece.center_mm.imag - piece.radius_mm
