"""A structured mesh of eight-node quadrilaterals for a spring seen from the side.

The thickness stands symmetric about the mid-line, which is straight where none is given: the back
of a tapered spring in the flesh is straighter, which the beam leaves out.
"""

from collections.abc import Callable
from dataclasses import dataclass
from itertools import pairwise
from math import ceil

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
Ints = NDArray[np.int64]
Mapping = Callable[[Floats, Floats], tuple[Floats, Floats]]

COARSE_LAYERS = 4
COARSE_RINGS = 3
SAME_PLACE_MM = 1e-7


@dataclass(frozen=True)
class PlaneSpring:
    """The numbers both models share. Without holes the spring is clamped at its first station."""

    width_mm: float
    thickness_mm: tuple[tuple[float, float], ...]
    pivot_mm: float
    youngs_modulus_mpa: float
    poisson: float
    rear_pin_mm: float = 0.0
    hole_diameter_mm: float = 0.0
    mid_line_mm: tuple[tuple[float, float], ...] = ()

    @property
    def stations_mm(self) -> Floats:
        return np.array([station for station, _ in self.thickness_mm])

    @property
    def hole_centres_mm(self) -> tuple[float, ...]:
        return (-self.rear_pin_mm, 0.0) if self.hole_diameter_mm > 0 else ()

    @property
    def load_half_length_mm(self) -> float:
        """A quarter of the thickness: local crushing stays small and the beam sees a point."""
        return 0.25 * float(self.thickness_at(self.pivot_mm))

    def middle_at(self, x_mm: Floats | float) -> Floats:
        """Height of the mid-line."""
        if not self.mid_line_mm:
            return np.zeros_like(np.asarray(x_mm, dtype=np.float64))
        stations, heights = zip(*self.mid_line_mm, strict=True)
        return np.asarray(np.interp(x_mm, stations, heights))

    def thickness_at(self, x_mm: Floats | float) -> Floats:
        values = [thickness for _, thickness in self.thickness_mm]
        return np.asarray(np.interp(x_mm, self.stations_mm, values))


def without_holes_ahead_of_middle_pin(spring: PlaneSpring) -> PlaneSpring:
    ahead = tuple(pair for pair in spring.thickness_mm if pair[0] > 0)
    root = (0.0, float(spring.thickness_at(0.0)))
    return PlaneSpring(
        spring.width_mm,
        (root, *ahead),
        spring.pivot_mm,
        spring.youngs_modulus_mpa,
        spring.poisson,
    )


@dataclass(frozen=True)
class Mesh:
    xy_mm: Floats
    elements: Ints

    def node_at(self, x_mm: float, y_mm: float) -> int:
        distance = np.hypot(self.xy_mm[:, 0] - x_mm, self.xy_mm[:, 1] - y_mm)
        nearest = int(np.argmin(distance))
        if distance[nearest] > 10 * SAME_PLACE_MM:
            raise ValueError(f"no mesh node at ({x_mm}, {y_mm}) mm")
        return nearest


def mesh_spring(spring: PlaneSpring, refine: int) -> Mesh:
    """Every increase of `refine` divides each coarse element once more in both directions."""
    layers = COARSE_LAYERS * refine
    blocks: list[tuple[Floats, Ints]] = []
    boxes = [_hole_box(spring, centre) for centre in spring.hole_centres_mm]
    lines = _column_lines(spring, boxes)
    for left, right in pairwise(lines):
        middle = 0.5 * (left + right)
        if any(box[0] < middle < box[1] for box in boxes):
            continue
        coarse = ceil((right - left) * COARSE_LAYERS / float(spring.thickness_at(middle)))
        blocks.append(block(_strip(spring, left, right), coarse * refine, layers))
    for centre, box in zip(spring.hole_centres_mm, boxes, strict=True):
        for side in range(4):
            around = _around_hole(spring, centre, box, side)
            blocks.append(block(around, layers, COARSE_RINGS * refine))
    return joined(blocks)


def _hole_box(spring: PlaneSpring, centre: float) -> tuple[float, float]:
    half = 0.5 * float(spring.thickness_at(centre))
    kinks = spring.stations_mm
    inside = (abs(kinks - centre) < half) & (abs(kinks - centre) > SAME_PLACE_MM)
    if inside.any():
        raise ValueError(f"thickness station too near the hole at {centre} mm: {kinks[inside]}")
    return centre - half, centre + half


def _column_lines(spring: PlaneSpring, boxes: list[tuple[float, float]]) -> list[float]:
    half = spring.load_half_length_mm
    lines = [*spring.stations_mm, *(edge for box in boxes for edge in box)]
    lines += [x for x, _ in spring.mid_line_mm if not any(a < x < b for a, b in boxes)]
    lines += [spring.pivot_mm - half, spring.pivot_mm, spring.pivot_mm + half]
    return [float(line) for line in np.unique(np.round(lines, 9))]


def _strip(spring: PlaneSpring, left: float, right: float) -> Mapping:
    def place(u: Floats, v: Floats) -> tuple[Floats, Floats]:
        x = left + (right - left) * u
        return x, spring.middle_at(x) + spring.thickness_at(x) * (v - 0.5)

    return place


def _around_hole(
    spring: PlaneSpring, centre: float, box: tuple[float, float], side: int
) -> Mapping:
    """One quarter of the ring, from the hole's edge (v = 0) to the box (v = 1).

    Sides 0 to 3 are right, back, left and belly; u runs anticlockwise.
    """
    left, right = box

    def box_edge(u: Floats) -> tuple[Floats, Floats]:
        if side in (0, 2):
            x = np.full_like(u, right if side == 0 else left)
            share = u - 0.5 if side == 0 else 0.5 - u
        else:
            x = right + (left - right) * u if side == 1 else left + (right - left) * u
            share = np.full_like(u, 0.5 if side == 1 else -0.5)
        return x, spring.middle_at(x) + spring.thickness_at(x) * share

    def place(u: Floats, v: Floats) -> tuple[Floats, Floats]:
        angle = 0.5 * np.pi * (side + u - 0.5)
        radius = 0.5 * spring.hole_diameter_mm
        x_edge, y_edge = box_edge(u)
        x_hole = centre + radius * np.cos(angle)
        y_hole = spring.middle_at(centre) + radius * np.sin(angle)
        return x_hole + (x_edge - x_hole) * v, y_hole + (y_edge - y_hole) * v

    return place


def block(place: Mapping, columns: int, rows: int) -> tuple[Floats, Ints]:
    """Points on a half-step grid, and elements as eight indices into them."""
    u, v = np.meshgrid(
        np.linspace(0, 1, 2 * columns + 1), np.linspace(0, 1, 2 * rows + 1), indexing="ij"
    )
    x, y = place(u.ravel(), v.ravel())
    index = np.arange(u.size).reshape(u.shape)
    corner = index[:-2:2, :-2:2].ravel()
    step = 2 * rows + 1
    offsets = np.array([0, 2 * step, 2 * step + 2, 2, step, 2 * step + 1, step + 2, 1])
    elements = corner[:, None] + offsets
    return np.column_stack([x, y]), _anticlockwise(np.column_stack([x, y]), elements)


def _anticlockwise(xy: Floats, elements: Ints) -> Ints:
    first, second, _, fourth = (xy[elements[0, corner]] for corner in range(4))
    along, across = second - first, fourth - first
    if along[0] * across[1] - along[1] * across[0] > 0:
        return elements
    return elements[:, [0, 3, 2, 1, 7, 6, 5, 4]]


def joined(blocks: list[tuple[Floats, Ints]]) -> Mesh:
    """Blocks share the nodes of their common edges; centres of elements are dropped."""
    starts = np.cumsum([0, *(len(xy) for xy, _ in blocks[:-1])])
    points = np.vstack([xy for xy, _ in blocks])
    elements = np.vstack([e + start for (_, e), start in zip(blocks, starts, strict=True)])
    used, renumbered = np.unique(elements, return_inverse=True)
    places = np.round(points[used] / SAME_PLACE_MM).astype(np.int64)
    _, first, same = np.unique(places, axis=0, return_index=True, return_inverse=True)
    joined = same.ravel()[renumbered.reshape(elements.shape)]
    return Mesh(points[used][first], joined)
