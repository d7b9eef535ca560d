"""Meshes of bars with one notch of the belly, seen from the side.

The belly is a chain of pieces, the other face a straight line. Each column of elements joins a
place of the belly with its partner on the other face. Elements are smallest along the notch's
root and grow by a constant ratio away from it.
"""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from .plane_stress_mesh import Floats, Ints, Mapping, Mesh, block, joined

# Finer growth, 1.25, moves none of the compared stresses by more than 0.22 %, a thirtieth of the
# differences that the closed forms are allowed.
GROWTH = 1.4


@dataclass(frozen=True)
class Piece:
    """A part of the belly: places by fraction, stations of its partners, corners of elements."""

    place: Callable[[Floats], Floats]
    partner_mm: tuple[float, float]
    fractions: Floats


@dataclass(frozen=True)
class NotchedBar:
    """A mesh with what is asked of it. Without a lower half it is mirrored about y = 0."""

    mesh: Mesh
    ends_mm: tuple[float, float]
    edge: Ints
    halved: bool = False


def evenly(count: int) -> Floats:
    return np.linspace(0.0, 1.0, count + 1)


def growing(first: float, total: float) -> Floats:
    """Fractions of a length whose parts grow from `first` on."""
    count = max(2, int(np.ceil(np.log1p(total / first * (GROWTH - 1)) / np.log(GROWTH))))
    corners = np.cumsum([0.0, *(GROWTH ** np.arange(count))])
    return np.asarray(corners / corners[-1])


def line(start: tuple[float, float], end: tuple[float, float]) -> Callable[[Floats], Floats]:
    a, b = np.array(start), np.array(end)
    return lambda u: a + u[:, None] * (b - a)


def arc(
    centre: tuple[float, float], radius: float, from_rad: float, to_rad: float
) -> Callable[[Floats], Floats]:
    def place(u: Floats) -> Floats:
        angle = from_rad + u * (to_rad - from_rad)
        return np.array(centre) + radius * np.column_stack([np.cos(angle), np.sin(angle)])

    return place


def with_middles(corners: Floats) -> Floats:
    halves = np.empty(2 * len(corners) - 1)
    halves[::2] = corners
    halves[1::2] = 0.5 * (corners[1:] + corners[:-1])
    return halves


def strip(
    pieces: list[Piece], other_y_mm: float, first_layer_mm: float, halved: bool
) -> NotchedBar:
    """One block between the pieces of the belly and the straight face at `other_y_mm`."""
    belly, other = [], []
    for number, piece in enumerate(pieces):
        u = with_middles(piece.fractions)[1 if number else 0 :]
        belly.append(piece.place(u))
        start, end = piece.partner_mm
        other.append(start + u * (end - start))
    low, top_x = np.vstack(belly), np.concatenate(other)
    top = np.column_stack([top_x, np.full_like(top_x, other_y_mm)])
    layers = with_middles(growing(first_layer_mm, float(np.min(other_y_mm - low[:, 1]))))
    xy, elements = block(_between(low, top, layers), len(low) // 2, len(layers) // 2)
    mesh = joined([(xy, elements)])
    edge = np.array([mesh.node_at(x, y) for x, y in low])
    return NotchedBar(mesh, (float(low[0, 0]), float(low[-1, 0])), edge, halved)


def _between(low: Floats, top: Floats, layers: Floats) -> Mapping:
    def place(u: Floats, v: Floats) -> tuple[Floats, Floats]:
        column = np.rint(u * (len(low) - 1)).astype(int)
        share = layers[np.rint(v * (len(layers) - 1)).astype(int)][:, None]
        xy = low[column] * (1 - share) + top[column] * share
        return xy[:, 0], xy[:, 1]

    return place
