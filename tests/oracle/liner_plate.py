"""A liner as a plate in its own plane, pressed by three pins, solved by CalculiX.

The pins press as in plane_stress.py: a cosine pressure on the half of the hole that they bear on,
and the liner's movement there is the mean over that half with the same weight. Rear pin and pivot
hold the liner, the middle pin pushes its hole outward; an even plate with straight edges. Plates
of the same material behind one another do as one of their whole thickness.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise
from math import ceil

import numpy as np

from .plane_stress import even_shares
from .plane_stress_mesh import SAME_PLACE_MM, Floats, Ints, Mapping, Mesh, block, joined
from .plane_stress_solver import SLICE_WIDTH_MM, Term, equation, input_deck, run_calculix


@dataclass(frozen=True)
class Pin:
    """A hole of the liner; depth is from the back edge to its centre."""

    x_mm: float
    depth_mm: float
    diameter_mm: float
    presses_outward: bool


@dataclass(frozen=True)
class Liner:
    """Lengths are multiples of the mesh's cell, 0.5 mm."""

    height_mm: float
    thickness_mm: float
    youngs_modulus_mpa: float
    poisson: float
    rear: Pin
    middle: Pin
    pivot: Pin
    beyond_mm: float = 6.0

    @property
    def pins(self) -> tuple[Pin, Pin, Pin]:
        return self.rear, self.middle, self.pivot


def seat_mm_per_n(liner: Liner, refine: int = 1) -> float:
    """Movement of the middle pin from the line through the other two per force on it."""
    mesh = mesh_liner(liner, refine)
    held = [equation(_bearing_terms(mesh, pin)) for pin in (liner.rear, liner.pivot)]
    held.append(equation(_lengthwise_terms(mesh, liner.rear)))
    pushed = list(_bearing_terms(mesh, liner.middle))
    whole = sum(weight for _, axis, weight in pushed if axis == 2)
    share = SLICE_WIDTH_MM / liner.thickness_mm / whole
    loads = [(node, axis, weight * share) for node, axis, weight in pushed]
    steel = (liner.youngs_modulus_mpa, liner.poisson)
    moved, _ = run_calculix(input_deck(mesh, steel, "\n".join(held), loads))
    return float(sum(weight * moved[node, axis - 1] for node, axis, weight in pushed) / whole)


def mesh_liner(liner: Liner, refine: int) -> Mesh:
    """Square cells about the holes, longer ones between; y is 0 at the back edge, outward."""
    cell = 0.5 / refine
    boxes = [_box(pin) for pin in liner.pins]
    lines = sorted(
        {liner.rear.x_mm - liner.beyond_mm, liner.pivot.x_mm + liner.beyond_mm}
        | {edge for box in boxes for edge in box[:2]}
    )
    blocks: list[tuple[Floats, Ints]] = []
    for left, right in pairwise(lines):
        middle = 0.5 * (left + right)
        inside = [
            pin for pin, box in zip(liner.pins, boxes, strict=True) if box[0] < middle < box[1]
        ]
        if not inside:
            columns = ceil((right - left) / 1.5) * refine
            blocks.append(_rectangle(left, right, -liner.height_mm, 0.0, columns, cell))
            continue
        box = _box(inside[0])
        columns = round((right - left) / cell)
        for low, high in ((-liner.height_mm, box[2]), (box[3], 0.0)):
            if high - low > SAME_PLACE_MM:
                blocks.append(_rectangle(left, right, low, high, columns, cell))
        for side in range(4):
            blocks.append(block(_around(inside[0], side), columns, 3 * refine))
    return joined(blocks)


def _box(pin: Pin) -> tuple[float, float, float, float]:
    half = min(pin.depth_mm, 0.5 * (np.floor(pin.diameter_mm) + 2.0))
    return pin.x_mm - half, pin.x_mm + half, -pin.depth_mm - half, -pin.depth_mm + half


def _rectangle(
    left: float, right: float, low: float, high: float, columns: int, cell: float
) -> tuple[Floats, Ints]:
    def place(u: Floats, v: Floats) -> tuple[Floats, Floats]:
        return left + (right - left) * u, low + (high - low) * v

    return block(place, columns, round((high - low) / cell))


def _around(pin: Pin, side: int) -> Mapping:
    """A quarter of the ring between hole and box; sides 0 to 3 are front, back, rear, belly."""
    half = _box(pin)[1] - pin.x_mm

    def place(u: Floats, v: Floats) -> tuple[Floats, Floats]:
        angle = 0.5 * np.pi * (side + u - 0.5)
        along, across = half * (2.0 * u - 1.0), np.full_like(u, half)
        x, y = ((across, along), (-along, across), (-across, -along), (along, -across))[side]
        radius = 0.5 * pin.diameter_mm
        hole_x, hole_y = radius * np.cos(angle), radius * np.sin(angle)
        return pin.x_mm + hole_x + (x - hole_x) * v, -pin.depth_mm + hole_y + (y - hole_y) * v

    return place


def _hole_edge(mesh: Mesh, pin: Pin) -> tuple[Ints, Floats, Floats]:
    arm = mesh.xy_mm - np.array([pin.x_mm, -pin.depth_mm])
    distance = np.hypot(arm[:, 0], arm[:, 1])
    nodes = np.flatnonzero(abs(distance - 0.5 * pin.diameter_mm) < 10 * SAME_PLACE_MM)
    angle = np.arctan2(arm[nodes, 1], arm[nodes, 0])
    # Starting at the element corner at 45 degrees keeps corners and middles in turn.
    nodes = nodes[np.argsort(np.round(angle - 0.25 * np.pi, 6) % (2 * np.pi))]
    chain = even_shares(np.arange(len(nodes) + 1, dtype=np.float64))
    chain[0] += chain[-1]
    return nodes, chain[:-1], arm[nodes] / distance[nodes, None]


def _bearing_terms(mesh: Mesh, pin: Pin) -> Iterator[Term]:
    nodes, share, direction = _hole_edge(mesh, pin)
    cosine = direction[:, 1] * (1 if pin.presses_outward else -1)
    # The largest term comes first: the solver eliminates it.
    for i in np.argsort(-cosine):
        for axis in (1, 0):
            weight = float(share[i] * cosine[i] * direction[i, axis])
            if cosine[i] > 1e-6 and abs(weight) > 1e-12:
                yield int(nodes[i]), axis + 1, weight


def _lengthwise_terms(mesh: Mesh, pin: Pin) -> Iterator[Term]:
    nodes, share, direction = _hole_edge(mesh, pin)
    for i in np.argsort(-direction[:, 1]):
        yield int(nodes[i]), 1, float(share[i])
