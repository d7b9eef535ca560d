"""Where fitted lines and arcs meet: at a corner, or one running into the other."""

from __future__ import annotations

import cmath
import math
from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from backspring.outline.chain import Chain, Vertex, closed_chain
from backspring.outline.traced import Fit, Points, bulge_of

# Neighbours whose directions differ less where they meet run into each other.
_SMOOTH_RAD = math.radians(12.0)
_LEAST_TURN_RAD = math.radians(0.2)
_NEAR = 4.0
_ROUNDS = 30


def smoothed(
    points: Points, fits: Sequence[Fit], borders: Sequence[int], blur_mm: float
) -> list[Fit]:
    """Make arcs run into the lines beside them where they nearly do.

    Blur moves the edge of an arc inward by its square over twice the radius: that is put back.
    """
    count, found = len(fits), list(fits)
    for i, fit in enumerate(fits):
        if not fit.radius:
            continue
        stretch = points[borders[i] : borders[i + 1] + 1]
        ends = complex(stretch[0]), complex(stretch[-1])
        outward = 1.0 if _turns_left(stretch) else -1.0
        shrinks = 0.5 * outward * blur_mm**2
        beside = fits[i - 1], fits[(i + 1) % count]
        smooth = [
            not line.radius and _angle(line, fit, end) < _SMOOTH_RAD
            for line, end in zip(beside, ends, strict=True)
        ]
        if all(smooth):
            found[i] = _fillet(stretch, beside, fit, shrinks) or fit
            continue
        arc = replace(fit, radius=fit.radius + shrinks / fit.radius)
        for line, is_smooth in zip(beside, smooth, strict=True):
            arc = _touching(line, arc) if is_smooth else arc
        found[i] = arc
    return found


def chain_of_fits(points: Points, fits: Sequence[Fit], borders: Sequence[int]) -> Chain:
    """Join lines and arcs where they meet."""
    corners = [
        _meeting(fits[i - 1], fits[i], complex(points[a])) for i, a in enumerate(borders[:-1])
    ]
    vertices = []
    for i, fit in enumerate(fits):
        ahead = corners[(i + 1) % len(fits)]
        middle = complex(points[(borders[i] + borders[i + 1]) // 2])
        vertices.append(Vertex(corners[i], bulge_of(fit, corners[i], ahead, middle)))
    return closed_chain(vertices)


def moved_out(points: Points, fits: Sequence[Fit], borders: Sequence[int], by_mm: float) -> Chain:
    """Join lines and arcs that are all moved outward of an outline that runs counterclockwise."""
    moved = []
    for i, fit in enumerate(fits):
        if not fit.radius:
            moved.append(replace(fit, at=fit.at - 1j * by_mm * fit.way))
            continue
        outward = 1.0 if _turns_left(points[borders[i] : borders[i + 1] + 1]) else -1.0
        moved.append(replace(fit, radius=fit.radius + outward * by_mm))
    return chain_of_fits(points, moved, borders)


def _turns_left(stretch: Points) -> bool:
    chord = complex(stretch[-1] - stretch[0])
    middle = complex(stretch[len(stretch) // 2] - stretch[0])
    return (middle / chord).imag < 0.0


def _angle(line: Fit, arc: Fit, end: complex) -> float:
    """Measure how far an arc's direction at an end is off a line's."""
    along = 1j * (end - arc.at) / line.way
    off = abs(cmath.phase(along))
    return min(off, math.pi - off)


def _touching(line: Fit, arc: Fit) -> Fit:
    """Move an arc square to a line until it touches it."""
    away = (arc.at - line.at) / line.way
    off = math.copysign(arc.radius, away.imag) - away.imag
    return replace(arc, at=arc.at + 1j * off * line.way)


def _fillet(stretch: Points, lines: tuple[Fit, Fit], arc: Fit, shrinks: float) -> Fit | None:
    """Find the radius of an arc that touches both lines."""
    corner = _crossing(*lines)
    if corner is None:
        return None
    feet = [line.nearest(arc.at) - corner for line in lines]
    ways = [foot / abs(foot) for foot in feet if foot]
    if len(ways) < 2 or abs(ways[0] + ways[1]) < 1e-3:
        return None
    middle = (ways[0] + ways[1]) / abs(ways[0] + ways[1])
    half = 0.5 * abs(cmath.phase(ways[1] / ways[0]))
    radius = arc.radius
    for _ in range(_ROUNDS):
        center = corner + middle * radius / math.sin(half)
        away = stretch - center
        off = np.abs(away) - radius + shrinks / radius
        slope = -(away * middle.conjugate()).real / np.abs(away) / math.sin(half) - 1.0
        step = float((off * slope).sum() / (slope**2).sum())
        radius -= step
        if not 0.01 * arc.radius < radius < 100.0 * arc.radius:
            return None
        if abs(step) < 1e-9:
            break
    return Fit(corner + middle * radius / math.sin(half), 1.0 + 0j, radius)


def _crossing(before: Fit, after: Fit) -> complex | None:
    turn = (before.way.conjugate() * after.way).imag
    if abs(turn) < math.sin(_LEAST_TURN_RAD):
        return None
    along = ((after.at - before.at).conjugate() * after.way).imag / turn
    return before.at + along * before.way


def _meeting(before: Fit, after: Fit, place: complex) -> complex:
    """Find where two pieces meet near a place, or come nearest to each other there."""
    if not before.radius and not after.radius:
        meeting = _crossing(before, after)
        return meeting if meeting is not None else before.nearest(place)
    if before.radius and after.radius:
        return _of_arcs(before, after, place)
    line, arc = (after, before) if before.radius else (before, after)
    foot = line.nearest(arc.at)
    inside = arc.radius**2 - abs(foot - arc.at) ** 2
    # One that runs in leaves no more than rounding beyond the foot.
    reach = math.sqrt(inside) if inside > 1e-9 * arc.radius**2 else 0.0
    return min((foot + side * reach * line.way for side in (-1, 1)), key=lambda p: abs(p - place))


def _of_arcs(before: Fit, after: Fit, place: complex) -> complex:
    apart = after.at - before.at
    size = abs(apart)
    if size < 1e-9:
        return before.nearest(place)
    along = (size**2 + before.radius**2 - after.radius**2) / (2.0 * size)
    height = math.sqrt(max(before.radius**2 - along**2, 0.0))
    along = math.copysign(min(abs(along), before.radius), along)
    unit = apart / size
    ends = (before.at + unit * complex(along, side * height) for side in (-1, 1))
    return min(ends, key=lambda p: abs(p - place))
