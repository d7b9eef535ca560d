"""Parts that lie anyhow on a scanner's glass, laid as a drawing of the knife has them."""

from __future__ import annotations

import cmath
import math
from collections.abc import Iterator
from dataclasses import replace

from backspring.outline.assemble import Assembled, assemble, pad_of
from backspring.outline.chain import Chain, Piece, Vertex, closed_chain
from backspring.outline.part_outlines import Outlines, mirrored

_ROUNDS = 6
_LEVEL_RAD = 1e-7
_LEAST_FACE_MM = 1.5
# A face passes the pivot, or nearly.
_BESIDE_PIVOT_MM = 1.0
_MOST_OFF_RAD = math.radians(60.0)
_HOLLOW_RAD = math.radians(2.0)
# Of a spring straight all along, so many reaches behind the pivot count ahead of it.
_REACHES = 2.5
_BEYOND_PAD_MM = 1.0
_BEYOND_END_MM = 0.5
_INSIDE_MM = 1e-3
_MOST_LEAN_RAD = math.radians(5.0)
# A nose stands so much proud of the closed face.
_LEAST_KICK_MM = 0.05


def assemble_scanned(outlines: Outlines) -> tuple[Assembled, Outlines]:
    """Put a joint together from parts that lie at any angle, the same side up.

    The tang turns until its open face lies along the pad; a blade is cut off where the spring
    cannot reach it. Also returns the parts so laid. Raises ValueError where that is not possible.
    """
    laid = _right_side_up(outlines)
    laid = _spring_along_pins(laid)
    laid = _tang_open(laid)
    for _ in range(_ROUNDS):
        joint = assemble(laid, either_side=False)
        if abs(joint.tilt_rad) < _LEVEL_RAD:
            break
        laid = _tang_turned(laid, cmath.exp(-1j * joint.tilt_rad))
    return joint, laid


def _right_side_up(outlines: Outlines) -> Outlines:
    """Turn all parts over where the liner has its pivot above the pins, the blade to the right."""
    along = outlines.middle_mm - outlines.rear_mm
    if ((outlines.pivot_mm - outlines.middle_mm) / along).imag > 0.0:
        return mirrored(outlines)
    return outlines


def _spring_along_pins(outlines: Outlines) -> Outlines:
    middle, rear = outlines.spring_holes
    along = outlines.middle_mm - outlines.rear_mm
    turn = along / (middle.center_mm - rear.center_mm)
    turn /= abs(turn)
    holes = tuple(replace(hole, center_mm=hole.center_mm * turn) for hole in (middle, rear))
    return replace(
        outlines, spring=outlines.spring.moved(turn, 0j), spring_holes=(holes[0], holes[1])
    )


def _tang_open(outlines: Outlines) -> Outlines:
    """Turn the tang as it stands open, its pivot at the origin, and cut the blade off."""
    along = outlines.middle_mm - outlines.rear_mm
    along /= abs(along)
    tang = outlines.tang.moved(1.0, -outlines.tang_hole.center_mm)
    blade = _blade_direction(tang)
    tang = tang.moved(1.0 / blade, 0j)
    tang = _cut(tang, *_reaches(outlines, along, tang))
    return replace(
        outlines,
        tang=tang.moved(along, 0j),
        tang_hole=replace(outlines.tang_hole, center_mm=0j),
    )


def _tang_turned(outlines: Outlines, turn: complex) -> Outlines:
    return replace(outlines, tang=outlines.tang.moved(turn, 0j))


def _blade_direction(tang: Chain) -> complex:
    """Find where the blade points: the open face lies to its left, most of the steel ahead."""
    ahead = _center_of(tang)
    found = [
        (abs(cmath.phase(way / ahead)), way) for piece in tang.pieces for way in _as_open(piece)
    ]
    off, way = min(found, key=lambda each: each[0], default=(math.inf, 0j))
    if off > _MOST_OFF_RAD:
        raise ValueError(
            "tang: no straight face beside the pivot on the side of the back, the blade open; all "
            "parts must lie the same side up"
        )
    return way


def _as_open(piece: Piece) -> Iterator[complex]:
    """Give the blade's direction if a piece is the open face: it runs backward along it."""
    if piece.bulge or piece.length_mm < _LEAST_FACE_MM:
        return
    way = piece.direction(0.0)
    start, end = (piece.start_mm / way).real, (piece.end_mm / way).real
    away = (piece.start_mm / (-1j * way)).real
    if start < _BESIDE_PIVOT_MM and end > -_BESIDE_PIVOT_MM and away > 0.0:
        yield -way


def _center_of(chain: Chain) -> complex:
    """Find the middle of the area that the corners enclose."""
    total, area = 0j, 0.0
    for piece in chain.pieces:
        twice = (piece.start_mm.conjugate() * piece.end_mm).imag
        area += twice
        total += twice * (piece.start_mm + piece.end_mm) / 3.0
    return total / area


def _reaches(outlines: Outlines, along: complex, tang: Chain) -> tuple[complex, float]:
    """Say where the spring touches the tang last ahead: on its open face, and how far ahead below.

    Open, no farther than the spring's end or the shoulder that stops on it; closed, no farther than
    the pad goes back, or a kick's nose stands.
    """
    middle = outlines.spring_holes[0].center_mm
    rear = outlines.spring_holes[1].center_mm
    pad = outlines.spring.pieces[pad_of(outlines.spring, middle - rear)]
    pivot = ((outlines.pivot_mm - outlines.middle_mm) / along).real
    start, end = (((at - middle) / along).real for at in (pad.start_mm, pad.end_mm))
    behind = -min(vertex.at_mm.real for vertex in tang.vertices)
    below = max(min(pivot - start + _BEYOND_PAD_MM, _REACHES * behind), 0.5)
    return _last_on_face(tang, max(end - pivot, 0.0) + _BEYOND_END_MM), _nose_end(tang, below)


def _last_on_face(tang: Chain, ahead: float) -> complex:
    """Find the open face's last place, no farther ahead than a hollow corner where it ends."""
    pieces = tang.pieces
    face = min(
        (i for i, piece in enumerate(pieces) for _ in _as_open(piece)),
        key=lambda i: abs(cmath.phase(-pieces[i].direction(0.0))),
    )
    front, before = pieces[face].start_mm, pieces[face - 1]
    turn = cmath.phase(pieces[face].direction(0.0) / before.direction(1.0))
    is_hollow = before.bulge < 0.0 or turn < -_HOLLOW_RAD
    if is_hollow and _BESIDE_PIVOT_MM < front.real < ahead:
        return front - _INSIDE_MM
    return complex(ahead, front.imag)


def _nose_end(tang: Chain, below: float) -> float:
    """Find where a kick's nose ends ahead: what the blade does beyond it touches nothing."""
    level = max(
        (
            (piece.length_mm, piece.start_mm.imag)
            for piece in tang.pieces
            if not piece.bulge
            and abs(cmath.phase(piece.direction(0.0))) < _MOST_LEAN_RAD
            and piece.start_mm.real < _BESIDE_PIVOT_MM
        ),
        default=(0.0, -math.inf),
    )[1]
    ends = [
        piece.end_mm.real
        for piece in tang.pieces
        if piece.bulge > 0.0
        and piece.start_mm.real > 0.0
        and piece.center_mm.real < below
        and piece.center_mm.imag - piece.radius_mm < level - _LEAST_KICK_MM
    ]
    return max(ends, default=below)


def _cut(tang: Chain, top: complex, below: float) -> Chain:
    """Cut a tang along a line from a place on its open face to below its closed one."""
    low = min((v.at_mm.imag for v in tang.vertices if v.at_mm.real <= below), default=-top.imag)
    bottom = complex(below, low)
    upright = (top - bottom) / abs(top - bottom) / 1j
    turned = tang.moved(1.0 / upright, -bottom / upright)
    kept = [piece for piece in _split(turned) if piece.point_mm(0.5).real < 0.0]
    runs: list[list[Piece]] = []
    for piece in kept:
        if runs and abs(runs[-1][-1].end_mm - piece.start_mm) < 1e-9:
            runs[-1].append(piece)
        else:
            runs.append([piece])
    if len(runs) > 1 and abs(runs[-1][-1].end_mm - runs[0][0].start_mm) < 1e-9:
        runs[0] = runs.pop() + runs[0]
    rear = min(runs, key=lambda run: min(piece.start_mm.real for piece in run))
    corners = [Vertex(piece.start_mm, piece.bulge) for piece in rear]
    if abs(rear[-1].end_mm - rear[0].start_mm) > 1e-9:
        corners.append(Vertex(rear[-1].end_mm))
    return closed_chain(corners).moved(upright, bottom)


def _split(chain: Chain) -> Iterator[Piece]:
    """Give all lines and arcs, those across the upright axis in parts."""
    for piece in chain.pieces:
        shares = [0.0, *sorted(s for s in piece.crossings(0.0) if 1e-9 < s < 1.0 - 1e-9), 1.0]
        for start, end in zip(shares, shares[1:], strict=False):
            bulge = math.tan(0.25 * (end - start) * piece.sweep_rad) if piece.bulge else 0.0
            yield Piece(piece.point_mm(start), piece.point_mm(end), bulge)
