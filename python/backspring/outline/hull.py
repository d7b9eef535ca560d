"""The convex outline of a chain, as the contact search takes it: arcs with flats between them."""

from __future__ import annotations

import cmath
import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

import numpy as np
import numpy.typing as npt

from backspring.outline.chain import ROUNDING, Chain

_Column = npt.NDArray[np.float64]
# An arc's own ends reach as far as it does there: the arc is meant.
_BEHIND_MM = 1e-9
_SAME_MM = 1e-6
# Share of a normal that points ahead on the side where the blade goes on.
_AHEAD = 0.5
# A corner that turns less is none [rad].
KINK_RAD = 1e-4


@dataclass(frozen=True, slots=True)
class Rounding:
    """An arc of a convex outline over a range of normals; radius 0 is a corner."""

    center_mm: complex
    radius_mm: float
    from_rad: float
    to_rad: float

    def point_mm(self, normal_rad: float) -> complex:
        """Place with a normal."""
        return self.center_mm + self.radius_mm * cmath.exp(1j * normal_rad)


def hull(chain: Chain) -> list[Rounding]:
    """Find the convex outline: in the order of the normals from 0, each direction in one arc.

    Each corner and each arc that bends outward reaches so far in a direction; the one that reaches
    farthest is the outline's there, and changes only where two reach alike or an arc ends.
    """
    parts = [*_parts(chain)]
    centers = np.array([part.center_mm for part in parts])
    radii = np.array([part.radius_mm or -_BEHIND_MM for part in parts])
    begins = np.array([part.from_rad for part in parts])
    spans = np.array([part.to_rad for part in parts]) - begins

    def reach(normals: _Column) -> npt.NDArray[np.float64]:
        along = (centers[:, None] * np.exp(-1j * normals[None, :])).real + radii[:, None]
        within = np.mod(normals[None, :] - begins[:, None], math.tau) <= spans[:, None]
        return np.where(within, along, -np.inf)

    changes = _changes(centers, radii, begins, spans)
    middles = 0.5 * (changes[1:] + changes[:-1])
    best = np.concatenate(
        [reach(some).argmax(axis=0) for some in np.array_split(middles, 1 + len(middles) // 4096)]
    )
    return _joined(parts, changes, best)


def rows_of(arcs: Sequence[Rounding]) -> tuple[tuple[float, float, float], ...]:
    """Write a convex outline as corners, each with the bulge of the way on to the next."""
    joined = [*arcs]
    first, last = joined[0], joined[-1]
    if len(joined) > 1 and first.center_mm == last.center_mm and first.radius_mm == last.radius_mm:
        joined = [replace(last, to_rad=last.to_rad + first.to_rad - first.from_rad), *joined[1:-1]]
    rows: list[tuple[float, float, float]] = []
    for arc, following in zip(joined, [*joined[1:], joined[0]], strict=True):
        if arc.radius_mm > 0.0:
            start = arc.point_mm(arc.from_rad)
            rows.append((start.real, start.imag, math.tan(0.25 * (arc.to_rad - arc.from_rad))))
        end = arc.point_mm(arc.to_rad)
        if abs(following.point_mm(following.from_rad) - end) > _SAME_MM:
            rows.append((end.real, end.imag, 0.0))
    return tuple(rows)


def deepest_hollow(chain: Chain, arcs: Sequence[Rounding]) -> tuple[float, complex]:
    """Tell how far a chain lies inside its convex outline at most, and where.

    Of a side that faces ahead nothing is told: there the blade goes on.
    """
    shares = (0.0, 0.25, 0.5, 0.75)
    places = np.array([piece.point_mm(share) for piece in chain.pieces for share in shares])
    inside, ahead = np.full(len(places), np.inf), np.zeros(len(places), dtype=bool)
    for arc, following in zip(arcs, [*arcs[1:], arcs[0]], strict=True):
        normal, begin = cmath.exp(1j * arc.to_rad), arc.point_mm(arc.to_rad)
        if abs(following.point_mm(following.from_rad) - begin) > _SAME_MM:
            below = ((begin - places) / normal).real
            ahead = np.where(below < inside, normal.real > _AHEAD, ahead)
            inside = np.minimum(inside, below)
        if arc.radius_mm > 0.0:
            turned = np.mod(np.angle(places - arc.center_mm) - arc.from_rad, math.tau)
            within = turned <= arc.to_rad - arc.from_rad
            off = np.where(within, arc.radius_mm - np.abs(places - arc.center_mm), np.inf)
            ahead &= off >= inside
            inside = np.minimum(inside, off)
    inside[ahead] = 0.0
    deepest = int(inside.argmax())
    return max(0.0, float(inside[deepest])), complex(places[deepest])


def _parts(chain: Chain) -> Iterator[Rounding]:
    for piece in chain.pieces:
        yield Rounding(piece.start_mm, 0.0, 0.0, math.tau)
        if piece.bulge > 0.0:
            center = piece.center_mm
            begin = cmath.phase(piece.start_mm - center) % math.tau
            yield Rounding(center, piece.radius_mm, begin, begin + piece.sweep_rad)


def _changes(centers: npt.NDArray[np.complex128], radii: _Column, begins: _Column, spans: _Column):  # type: ignore[no-untyped-def]
    first, second = np.triu_indices(len(centers), 1)
    apart, wider = centers[first] - centers[second], radii[second] - radii[first]
    some = np.abs(apart) > np.abs(wider)
    towards = np.angle(apart[some])
    away = np.arccos(wider[some] / np.abs(apart[some]))
    arcs = radii > 0.0
    ends = [begins[arcs], begins[arcs] + spans[arcs], [0.0]]
    every = np.mod(np.concatenate([towards + away, towards - away, *ends]), math.tau)
    return np.append(np.unique(every), math.tau)


def _joined(
    parts: Sequence[Rounding], changes: _Column, best: npt.NDArray[np.int64]
) -> list[Rounding]:
    """Join neighbouring ranges of one part, leaving out those that are rounding."""
    found: list[tuple[int, float, float]] = []
    for part, start, end in zip(best, changes[:-1], changes[1:], strict=True):
        if end - start < ROUNDING:
            continue
        if found and found[-1][0] == part:
            found[-1] = (part, found[-1][1], float(end))
        else:
            found.append((int(part), found[-1][2] if found else 0.0, float(end)))
    joined = [Rounding(parts[i].center_mm, parts[i].radius_mm, a, b) for i, a, b in found]
    return _without_kinks(joined)


def _without_kinks(arcs: list[Rounding]) -> list[Rounding]:
    """Leave out corners that turn so little that a smooth passage was meant.

    The flat beside such a corner keeps its direction; an arc on the other side is carried on to it.
    """
    kept = list(arcs)
    for i in range(len(kept) - 2, 0, -1):
        corner, before, after = kept[i], kept[i - 1], kept[i + 1]
        if corner.radius_mm > 0.0 or corner.to_rad - corner.from_rad > KINK_RAD:
            continue
        ahead = abs(before.point_mm(corner.from_rad) - corner.center_mm)
        behind = abs(after.point_mm(corner.to_rad) - corner.center_mm)
        border = corner.from_rad if ahead > behind else corner.to_rad
        kept[i - 1] = replace(before, to_rad=border)
        kept[i + 1] = replace(after, from_rad=border)
        del kept[i]
    return kept
