"""A closed outline of lines and arcs."""

from __future__ import annotations

import cmath
import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

# Turns and lengths below this share of an outline's size are rounding.
ROUNDING = 1e-9


@dataclass(frozen=True, slots=True)
class Vertex:
    """A corner of an outline and the way to the next: straight, or an arc.

    `bulge` is the tangent of a quarter of the arc's angle, + where it turns counterclockwise.
    """

    at_mm: complex
    bulge: float = 0.0


@dataclass(frozen=True, slots=True)
class Piece:
    """A line or an arc between two corners."""

    start_mm: complex
    end_mm: complex
    bulge: float

    @property
    def sweep_rad(self) -> float:
        """Angle of the arc, + counterclockwise; 0 of a line."""
        return 4.0 * math.atan(self.bulge)

    @property
    def center_mm(self) -> complex:
        """Centre of an arc."""
        half = 0.5 * (self.end_mm - self.start_mm)
        return self.start_mm + half + 1j * half * (1.0 - self.bulge**2) / (2.0 * self.bulge)

    @property
    def radius_mm(self) -> float:
        """Radius of an arc, + where it turns counterclockwise."""
        return abs(self.end_mm - self.start_mm) * (1.0 + self.bulge**2) / (4.0 * self.bulge)

    @property
    def length_mm(self) -> float:
        """Length along the piece."""
        chord = abs(self.end_mm - self.start_mm)
        return self.radius_mm * self.sweep_rad if self.bulge else chord

    def point_mm(self, share: float) -> complex:
        """Place at a share of the way along."""
        if not self.bulge:
            return self.start_mm + share * (self.end_mm - self.start_mm)
        center = self.center_mm
        return center + (self.start_mm - center) * cmath.exp(1j * share * self.sweep_rad)

    def direction(self, share: float) -> complex:
        """Return the unit direction at a share of the way along."""
        chord = self.end_mm - self.start_mm
        return chord / abs(chord) * cmath.exp(1j * (share - 0.5) * self.sweep_rad)

    def crossings(self, x_mm: float) -> Iterator[float]:
        """Shares of the way at which the piece passes a station."""
        if not self.bulge:
            run = self.end_mm.real - self.start_mm.real
            if run:
                yield from _within((x_mm - self.start_mm.real) / run)
            return
        center, radius = self.center_mm, abs(self.radius_mm)
        across = (x_mm - center.real) / radius
        if abs(across) > 1.0 + ROUNDING:
            return
        across = max(-1.0, min(across, 1.0))
        first = cmath.phase(self.start_mm - center)
        for angle in {math.acos(across), -math.acos(across)}:
            turned = math.fmod((angle - first) * math.copysign(1.0, self.bulge), math.tau)
            for way in (turned, turned + math.tau if turned < 0.0 else turned - math.tau):
                yield from _within(way / abs(self.sweep_rad))


@dataclass(frozen=True, slots=True)
class Chain:
    """A closed outline, counterclockwise."""

    vertices: tuple[Vertex, ...]

    @property
    def pieces(self) -> list[Piece]:
        """All lines and arcs in turn."""
        following = (*self.vertices[1:], self.vertices[0])
        return [
            Piece(here.at_mm, there.at_mm, here.bulge)
            for here, there in zip(self.vertices, following, strict=True)
        ]

    @property
    def area_mm2(self) -> float:
        """Enclosed area."""
        return _signed_area(self.pieces)

    @property
    def length_mm(self) -> float:
        """Length all round."""
        return sum(piece.length_mm for piece in self.pieces)

    def moved(self, turn: complex, by_mm: complex) -> Chain:
        """Turn by a complex number of size 1 about the origin, then move."""
        return Chain(tuple(Vertex(v.at_mm * turn + by_mm, v.bulge) for v in self.vertices))

    def mirrored(self) -> Chain:
        """Turn over about the x axis."""
        return closed_chain(Vertex(v.at_mm.conjugate(), -v.bulge) for v in self.vertices)

    def heights_mm(self, x_mm: float) -> list[float]:
        """List where a line across at a station enters and leaves the outline, in rising order."""
        heights = [
            piece.point_mm(share).imag for piece in self.pieces for share in piece.crossings(x_mm)
        ]
        return sorted(heights)


def closed_chain(vertices: Iterable[Vertex]) -> Chain:
    """Make a chain, turned counterclockwise and without corners that coincide."""
    corners = list(vertices)
    size = max(abs(v.at_mm - corners[0].at_mm) for v in corners)
    kept = [
        v
        for v, following in zip(corners, [*corners[1:], corners[0]], strict=True)
        if abs(following.at_mm - v.at_mm) > ROUNDING * size
    ]
    if len(kept) < 2:
        raise ValueError("an outline with all corners at one place")
    chain = Chain(tuple(kept))
    return chain if chain.area_mm2 > 0.0 else Chain(tuple(_reversed(kept)))


def _within(share: float) -> Iterator[float]:
    """Give a share of the way, but for rounding at both ends; nothing outside."""
    if -ROUNDING <= share <= 1.0 + ROUNDING:
        yield max(0.0, min(share, 1.0))


def _reversed(vertices: Sequence[Vertex]) -> Iterator[Vertex]:
    for index in range(len(vertices) - 1, -1, -1):
        yield Vertex(vertices[index].at_mm, -vertices[index - 1].bulge)


def _signed_area(pieces: Sequence[Piece]) -> float:
    area = 0.0
    for piece in pieces:
        area += 0.5 * (piece.start_mm.conjugate() * piece.end_mm).imag
        if piece.bulge:
            sweep = piece.sweep_rad
            area += 0.5 * piece.radius_mm**2 * (sweep - math.sin(sweep))
    return area
