"""The shapes that are compared: kink and shoulder of the belly, and a free hole."""

import numpy as np

from .plane_stress_mesh import Floats, Mapping, block, joined
from .plane_stress_notch_mesh import (
    NotchedBar,
    Piece,
    arc,
    evenly,
    growing,
    line,
    strip,
    with_middles,
)

ROOT_ELEMENTS = 8


def kinked(
    thickness_mm: float,
    slopes_rad: tuple[float, float],
    root_radius_mm: float,
    lengths_mm: tuple[float, float],
) -> NotchedBar:
    """Belly falling at one angle to the kink at x = 0 and at a flatter one behind it; back y = 0.

    An angle is the belly's to the back, positive where the thickness falls with x.
    """
    left, right = slopes_rad
    reach = root_radius_mm * np.tan(0.5 * (left - right))
    start = (-reach * np.cos(left), -thickness_mm - reach * np.sin(left))
    end = (reach * np.cos(right), -thickness_mm + reach * np.sin(right))
    centre = (end[0] + root_radius_mm * np.sin(right), end[1] - root_radius_mm * np.cos(right))
    far_left = (-lengths_mm[0], -thickness_mm - lengths_mm[0] * np.tan(left))
    far_right = (lengths_mm[1], -thickness_mm + lengths_mm[1] * np.tan(right))
    root = (0.5 * np.pi + left, 0.5 * np.pi + right)
    size = root_radius_mm * (left - right) / ROOT_ELEMENTS
    pieces = [
        Piece(
            line(far_left, start),
            (far_left[0], start[0]),
            1 - growing(size, start[0] - far_left[0])[::-1],
        ),
        Piece(arc(centre, root_radius_mm, *root), (start[0], end[0]), evenly(ROOT_ELEMENTS)),
        Piece(line(end, far_right), (end[0], far_right[0]), growing(size, far_right[0] - end[0])),
    ]
    return strip(pieces, 0.0, size, halved=False)


def shouldered(large_mm: float, small_mm: float, fillet_mm: float, both_sides: bool) -> NotchedBar:
    """Thick for x < 0, thin for x > 0, a fillet between; y = 0 is the mid-line, or the back."""
    deep, shallow = (0.5 * large_mm, 0.5 * small_mm) if both_sides else (large_mm, small_mm)
    height, count = deep - shallow, 2 * ROOT_ELEMENTS
    lift = np.arcsin(max(0.0, 1.0 - height / fillet_mm))
    begin = (fillet_mm * (1 - np.cos(lift)), -shallow - fillet_mm * (1 - np.sin(lift)))
    corner, end = (begin[0], -deep), (fillet_mm, -shallow)
    length = 1.5 * large_mm
    size = fillet_mm * (0.5 * np.pi - lift) / count
    centre = (fillet_mm, -shallow - fillet_mm)
    fan = (begin[0] - 0.5 * deep, begin[0] - 0.1 * deep, fillet_mm + 0.3 * shallow)
    pieces = [
        Piece(
            line((-length, -deep), corner), (-length, fan[0]), 1 - growing(2 * size, length)[::-1]
        )
    ]
    if height > fillet_mm * (1 + 1e-9):
        pieces.append(
            Piece(
                line(corner, begin), (fan[0], fan[1]), 1 - growing(size, height - fillet_mm)[::-1]
            )
        )
    else:
        fan = (fan[0], fan[0], fan[2])
    pieces += [
        Piece(arc(centre, fillet_mm, np.pi - lift, 0.5 * np.pi), (fan[1], fan[2]), evenly(count)),
        Piece(
            line(end, (length + fillet_mm, -shallow)),
            (fan[2], length + fillet_mm),
            growing(size, length),
        ),
    ]
    return strip(pieces, 0.0, size, halved=both_sides)


def with_hole(thickness_mm: float, diameter_mm: float, offset_mm: float, refine: int) -> NotchedBar:
    """A free hole through a parallel bar, `offset_mm` from the mid-line towards the back."""
    half = 0.5 * thickness_mm
    corners = np.array([[half, -half], [half, half], [-half, half], [-half, -half]])
    columns = 4 * refine
    rings = growing(0.8 * diameter_mm / columns, 0.5 * (thickness_mm - diameter_mm))
    layers = with_middles(rings)

    def around(side: int) -> Mapping:
        a, b = corners[side], corners[(side + 1) % 4]

        def place(u: Floats, v: Floats) -> tuple[Floats, Floats]:
            angle = 0.5 * np.pi * (side + u - 0.5)
            hole_x = 0.5 * diameter_mm * np.cos(angle)
            hole_y = offset_mm + 0.5 * diameter_mm * np.sin(angle)
            x, y = a[0] + u * (b[0] - a[0]), a[1] + u * (b[1] - a[1])
            share = layers[np.rint(v * (len(layers) - 1)).astype(int)]
            return hole_x + (x - hole_x) * share, hole_y + (y - hole_y) * share

        return place

    def beside(left: float, right: float) -> Mapping:
        return lambda u, v: (left + (right - left) * u, thickness_mm * (v - 0.5))

    end = 2.0 * thickness_mm
    blocks = [block(around(side), columns, len(rings) - 1) for side in range(4)]
    blocks += [block(beside(*x), columns, columns) for x in ((-end, -half), (half, end))]
    mesh = joined(blocks)
    distance = np.hypot(mesh.xy_mm[:, 0], mesh.xy_mm[:, 1] - offset_mm)
    edge = np.flatnonzero(abs(distance - 0.5 * diameter_mm) < 1e-6)
    return NotchedBar(mesh, (-end, end), edge)
