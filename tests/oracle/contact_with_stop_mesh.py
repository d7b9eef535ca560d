"""Meshes of a spring and of the tang that bears on its belly, fine where they meet."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from .plane_stress_mesh import Floats, Mapping, Mesh, PlaneSpring, block, joined

# Lengths of elements, and layers of them, that a finer mesh divides.
FINE_MM = 0.05  # elements beside the place of contact
SPRING_MM, TANG_MM, ARC_MM = 0.6, 0.5, 0.02  # elements elsewhere
SPRING_LAYERS, TANG_LAYERS = 4, 4
FINE_REACH_MM = 0.4
ARC_DEG = 20.0


@dataclass(frozen=True)
class SolidJoint:
    spring: PlaneSpring
    pad_mm: tuple[float, float]
    face_mm: float  # pivot to the working face that is up
    reach_mm: tuple[float, float]  # of that face, from the pivot
    corner_radius_mm: float  # behind the face; 0 for none
    seat_mm: float  # belly above the pivot as fitted
    rear_pin_offset_mm: float
    dial_mm: float
    finer: int = 1

    @property
    def fine_at_mm(self) -> float:
        """Where the tang bears: behind the face, or over the pivot on a blade free to seat."""
        behind = self.reach_mm[0] if self.corner_radius_mm else 0.0
        return self.spring.pivot_mm + behind


def _lines(ends: list[float], fine_at: float) -> list[float]:
    """Column lines, with two more beside the place of contact."""
    low, high = min(ends), max(ends)
    beside = [fine_at - FINE_REACH_MM, fine_at, fine_at + FINE_REACH_MM]
    return [
        float(v) for v in np.unique(np.round([*ends, *(b for b in beside if low < b < high)], 9))
    ]


def _columns(left: float, right: float, size: float, joint: SolidJoint) -> int:
    inside = abs(0.5 * (left + right) - joint.fine_at_mm) < FINE_REACH_MM
    return joint.finer * int(np.ceil((right - left) / (FINE_MM if inside else size) - 1e-9))


def mesh_spring(joint: SolidJoint) -> Mesh:
    """Columns of the thickness, the belly at height 0."""
    spring, fine_at = joint.spring, joint.fine_at_mm
    ends = [*map(float, spring.stations_mm), -spring.rear_pin_mm, 0.0, *joint.pad_mm]
    lines = _lines(ends, fine_at)

    def strip(left: float, right: float) -> Mapping:
        def place(u: Floats, v: Floats) -> tuple[Floats, Floats]:
            x = left + (right - left) * u
            return x, spring.thickness_at(x) * v

        return place

    return joined(
        [
            block(strip(a, b), _columns(a, b, SPRING_MM, joint), SPRING_LAYERS * joint.finer)
            for a, b in pairwise(lines)
        ]
    )


def mesh_tang(joint: SolidJoint) -> Mesh:
    """The face at height 0, the pivot below it; behind the face the corner's arc begins."""
    pivot, radius = joint.spring.pivot_mm, joint.corner_radius_mm
    low, high = (pivot + reach for reach in joint.reach_mm)
    layers = TANG_LAYERS * joint.finer
    blocks = []

    def below(x: Floats, top: Floats, v: Floats) -> tuple[Floats, Floats]:
        return x, top + (1.0 - v) * (-joint.face_mm - top)

    def flat(left: float, right: float) -> Mapping:
        return lambda u, v: below(left + (right - left) * u, np.zeros_like(u), v)

    def arc(u: Floats, v: Floats) -> tuple[Floats, Floats]:
        angle = np.radians(ARC_DEG) * (1.0 - u)
        return below(low - radius * np.sin(angle), radius * (np.cos(angle) - 1.0), v)

    if radius:
        columns = joint.finer * int(np.ceil(radius * np.radians(ARC_DEG) / ARC_MM))
        blocks.append(block(arc, columns, layers))
    lines = _lines([low, pivot, high], joint.fine_at_mm)
    for a, b in pairwise(lines):
        blocks.append(block(flat(a, b), _columns(a, b, TANG_MM, joint), layers))
    return joined(blocks)
