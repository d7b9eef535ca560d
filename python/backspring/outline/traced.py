"""Outlines traced from a scan: many short lines, fitted with few lines and arcs."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from backspring.outline.chain import Chain, Vertex, closed_chain

# Points of a tracing lie within this of the lines and arcs that are put in their place.
TOLERANCE_MM = 0.05
# What is taken as a tracing: so many straight pieces, half of them shorter than this.
_LEAST_PIECES = 100
_SHORT_MM = 0.3
# An arc must reach so much farther than a line to be one.
_ARC_GAIN = 1.2
_WIDEST_ARC_RAD = math.radians(300.0)
_KINK_RAD = math.radians(3.0)

Points = npt.NDArray[np.complex128]


@dataclass(frozen=True, slots=True)
class Fit:
    """A line through `at` along `way`, or an arc about `at` with a radius."""

    at: complex
    way: complex
    radius: float = 0.0

    def nearest(self, place: complex) -> complex:
        """Give the place on it that is nearest to another."""
        if not self.radius:
            along: float = ((place - self.at) / self.way).real
            return self.at + along * self.way
        from_center = place - self.at
        return self.at + self.radius * from_center / abs(from_center)

    def off(self, points: Points) -> npt.NDArray[np.float64]:
        """Tell how far points lie off it."""
        if not self.radius:
            return np.abs(((points - self.at) / self.way).imag)
        return np.abs(np.abs(points - self.at) - self.radius)


def is_traced(chain: Chain) -> bool:
    """Say whether an outline is of many short lines, as a scan or a photograph gives."""
    lengths = [piece.length_mm for piece in chain.pieces if not piece.bulge]
    return len(lengths) >= _LEAST_PIECES and float(np.median(lengths)) < _SHORT_MM


def round_of(chain: Chain, within_mm: float) -> tuple[complex, float] | None:
    """Return centre and radius where an outline's corners lie on a circle."""
    points = np.array([vertex.at_mm for vertex in chain.vertices])
    if len(points) < 12:
        return None
    circle = circle_of(points)
    if circle is None or float(circle.off(points).max()) > within_mm:
        return None
    return circle.at, circle.radius


def fitted(chain: Chain, within_mm: float = TOLERANCE_MM) -> tuple[Chain, float]:
    """Put lines and arcs in the place of short lines; also returns how far off they are at most."""
    points, fits, borders = stretches(
        np.array([vertex.at_mm for vertex in chain.vertices]), within_mm
    )
    off = max(
        float(fit.off(points[a : b + 1]).max())
        for fit, a, b in zip(fits, borders, borders[1:], strict=False)
    )
    return chain_of(points, fits, borders, within_mm), off


def stretches(points: Points, within_mm: float) -> tuple[Points, list[Fit], list[int]]:
    """Part points round an outline into stretches along lines and arcs.

    Returns the points from where the first begins, once round, and where each begins and ends.
    """
    start = int(np.abs(points - points.mean()).argmax())
    points = np.roll(points, -start)
    points = np.append(points, points[0])
    fits: list[Fit] = []
    borders = [0]
    while borders[-1] < len(points) - 1:
        fit, end = _farthest(points, borders[-1], within_mm)
        fits.append(fit)
        borders.append(end)
    return points, fits, borders


def chain_of(points: Points, fits: list[Fit], borders: list[int], within_mm: float) -> Chain:
    """Join the lines and arcs of all stretches at their corners."""
    corners = [
        _corner(fits[i - 1], fits[i], complex(points[borders[i]]), within_mm)
        for i in range(len(fits))
    ]
    vertices = []
    for i, fit in enumerate(fits):
        ahead = corners[(i + 1) % len(fits)]
        middle = complex(points[(borders[i] + borders[i + 1]) // 2])
        vertices.append(Vertex(corners[i], bulge_of(fit, corners[i], ahead, middle)))
    return closed_chain(vertices)


def _farthest(points: Points, start: int, within: float) -> tuple[Fit, int]:
    """Find the line or arc that goes farthest on."""
    line, straight = _reach(points, start, within, False)
    arc, round_ = _reach(points, start, within, True)
    return (arc, round_) if round_ - start > _ARC_GAIN * (straight - start) else (line, straight)


def _reach(points: Points, start: int, within: float, is_round: bool) -> tuple[Fit, int]:
    """Double the stretch until a fit is off, then halve the doubt."""
    last = len(points) - 1
    good, end = line_of(points[start : start + 2]), start + 1
    step, low, high = 4, end, last + 1
    while low < last:
        trial = min(low + step, last) if high > last else (low + high) // 2
        if trial <= low:
            break
        fit = _trial(points[start : trial + 1], within, is_round)
        if fit is not None:
            good, end, low, step = fit, trial, trial, 2 * step
        else:
            high = trial
    return good, end


def _trial(points: Points, within: float, is_round: bool) -> Fit | None:
    fit = (circle_of if is_round else line_of)(points)
    if fit is None or float(fit.off(points).max()) > within:
        return None
    # A corner at either end belongs to the neighbour, and would turn the fit.
    inner = points[2:-2]
    return (circle_of if is_round else line_of)(inner) or fit if len(inner) > 8 else fit


def line_of(points: Points) -> Fit:
    """Fit a line, all distances square to it."""
    middle = complex(points.mean())
    ends = complex(points[-1] - points[0])
    spread = ((points - middle) ** 2).sum()
    way = complex(np.sqrt(spread)) if abs(spread) else ends
    way = way / abs(way) if way else 1.0 + 0j
    return Fit(middle, way if (ends * way.conjugate()).real >= 0.0 else -way)


def circle_of(points: Points) -> Fit | None:
    """Fit an arc, nearly: of a short one the radius comes out small where points stray."""
    if len(points) < 5:
        return None
    middle = complex(points.mean())
    x, y = (points - middle).real, (points - middle).imag
    columns = np.stack([x, y, np.ones_like(x)], axis=1)
    found, _, rank, _ = np.linalg.lstsq(columns, x * x + y * y, rcond=1e-9)
    if rank < 3:
        return None
    center = 0.5 * complex(found[0], found[1])
    radius = math.sqrt(max(float(found[2]) + abs(center) ** 2, 0.0))
    turned = np.unwrap(np.angle(points - middle - center))
    if not 0.0 < radius < 1e4 or abs(turned[-1] - turned[0]) > 2.0 * math.pi + 0.1:
        return None
    return Fit(middle + center, 1.0 + 0j, radius)


def _corner(before: Fit, after: Fit, place: complex, within: float) -> complex:
    """Find where two pieces meet: two lines where they cross, others near the traced point."""
    if not before.radius and not after.radius:
        turn = (before.way.conjugate() * after.way).imag
        if abs(turn) > math.sin(_KINK_RAD):
            along = ((after.at - before.at).conjugate() * after.way).imag / turn
            meeting = before.at + along * before.way
            if abs(meeting - place) < 10.0 * within:
                return meeting
    for _ in range(20):
        place = 0.5 * (before.nearest(place) + after.nearest(place))
    return place


def bulge_of(fit: Fit, start: complex, end: complex, middle: complex) -> float:
    """Find how far a piece from corner to corner bulges, by a place half-way along it."""
    if not fit.radius:
        return 0.0
    chord = end - start
    # From the chord out to the arc's middle, to its right where it turns counterclockwise.
    half = 0.5 * abs(chord)
    side = math.copysign(1.0, -((middle - start) / chord).imag)
    out = -side * 1j * chord / abs(chord)
    tip = fit.at + fit.radius * (
        out if (middle - fit.at).real * out.real + (middle - fit.at).imag * out.imag > 0.0 else -out
    )
    sagitta = abs(((tip - start) / chord * abs(chord)).imag)
    return side * sagitta / half
