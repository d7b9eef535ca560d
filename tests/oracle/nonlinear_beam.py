"""A spring bent as far as it likes: a planar beam with stretch and shear, large turns.

Stations x are those of the free spring. A section stands square to x; its centre lies on the
mid-line. Strains, moments and the way on follow from the forces on the bent shape (Reissner), so
axial forces, levers that move and large slopes are all in it. Integrated from the rear pin to the
spring's end by Runge-Kutta steps. Independent of the package under test. Units: mm, N, MPa, rad.
"""

from __future__ import annotations

import math
from bisect import bisect_right
from collections.abc import Callable
from functools import cached_property
from typing import Any, NamedTuple

Design = dict[str, Any]
Line = Callable[[float], float]
KAPPA = 5.0 / 6.0


class Force(NamedTuple):
    """A force in the plane [N]."""

    x: float
    y: float


class Place(NamedTuple):
    """A section of the bent spring and the moment in it."""

    station: float
    x: float
    y: float
    turn: float
    moment: float


def turned(turn: float, along: float, across: float) -> tuple[float, float]:
    """A vector given along and across a direction."""
    c, s = math.cos(turn), math.sin(turn)
    return c * along - s * across, s * along + c * across


class Rows:
    """Numbers at stations, straight between them, the end's beyond."""

    def __init__(self, rows: list[tuple[float, float]]) -> None:
        self.stations = [float(x) for x, _ in rows]
        self.values = [float(v) for _, v in rows]

    def _piece(self, x: float) -> int:
        return bisect_right(self.stations, x) - 1

    def slope(self, x: float) -> float:
        i = self._piece(x)
        if i < 0 or i + 1 >= len(self.stations):
            return 0.0
        run = self.stations[i + 1] - self.stations[i]
        return (self.values[i + 1] - self.values[i]) / run

    def __call__(self, x: float) -> float:
        i = self._piece(x)
        if i < 0:
            return self.values[0]
        return self.values[i] + self.slope(x) * (x - self.stations[i])


class Spring:
    """Shape and steel of a free spring.

    belly: height of the belly against the straight line of the pad, as rows of stations; straight
    where left out. width: a number, or rows.
    """

    def __init__(self, design: Design, belly: list[tuple[float, float]] | None = None) -> None:
        spring = design["spring"]
        self.e_mpa = float(spring["youngs_modulus"])
        self.g_mpa = self.e_mpa / (2.0 * (1.0 + float(spring["poisson"])))
        thickness, width = spring["thickness"], spring["width"]
        self.thickness = Rows(thickness if isinstance(thickness, list) else [(0.0, thickness)])
        self.width = Rows(width if isinstance(width, list) else [(0.0, width)])
        self.belly = Rows(belly or [(0.0, 0.0)])
        self.rear_mm = -float(spring["rear_pin"])
        hole = spring["pin_hole"]
        middle, rear = hole if isinstance(hole, list) else (hole, hole)
        self.holes = [(0.0, float(middle)), (self.rear_mm, float(rear))]
        self.pad = tuple(float(x) for x in spring["pad"])

    def chord(self, x: float) -> float:
        squares = (max(d * d / 4.0 - (x - at) ** 2, 0.0) for at, d in self.holes)
        return sum(2.0 * math.sqrt(square) for square in squares)

    def mid_line(self, x: float) -> float:
        """Height of the mid-line above the pad's line."""
        return self.belly(x) + 0.5 * self.thickness(x)

    def mid_slope(self, x: float) -> float:
        return self.belly.slope(x) + 0.5 * self.thickness.slope(x)

    def softness(self, x: float) -> tuple[float, float, float]:
        """Per unit of length: stretch per force, shear per force, turn per moment."""
        b, t, c = self.width(x), self.thickness(x), self.chord(x)
        area, inertia = b * (t - c), b * (t**3 - c**3) / 12.0
        return (
            1.0 / (self.e_mpa * area),
            1.0 / (KAPPA * self.g_mpa * area),
            1.0 / (self.e_mpa * inertia),
        )

    @cached_property
    def breaks(self) -> list[float]:
        """Stations where the section changes its law."""
        edges = [at + side * d / 2.0 for at, d in self.holes for side in (-1.0, 0.0, 1.0)]
        rows = [*self.thickness.stations, *self.width.stations, *self.belly.stations]
        return sorted({*edges, *rows, *self.pad})


class Steps:
    """Runge-Kutta steps between two stations, the section's figures kept."""

    def __init__(self, spring: Spring, start: float, end: float, longest_mm: float) -> None:
        cuts = [start, *(x for x in spring.breaks if start < x < end), end]
        self.rows: list[tuple[float, list[tuple[float, float, float, float, float]]]] = []
        for low, high in zip(cuts, cuts[1:], strict=False):
            if high - low > 1e-13:
                self._cut(spring, low, high, longest_mm)

    def _cut(self, spring: Spring, low: float, high: float, longest_mm: float) -> None:
        pierced = spring.chord(0.5 * (low + high)) > 0.0
        count = max(math.ceil((high - low) / longest_mm), 6 if pierced else 1)
        # Beside the edge of a hole the section changes as a square root: shorter steps there.
        middle_of_hole = any(abs(high - at) < 1e-9 for at, _ in spring.holes)
        share = [i / count for i in range(count + 1)]
        if pierced:
            share = [s * s if middle_of_hole else s * (2.0 - s) for s in share]
        nodes = [low + s * (high - low) for s in share]
        inset = 1e-9 * (high - low)
        for a, b in zip(nodes, nodes[1:], strict=False):
            at = (min(a + inset, b), 0.5 * (a + b), max(b - inset, a))
            figures = [(x, *spring.softness(x), spring.mid_slope(x)) for x in at]
            self.rows.append((b - a, figures))

    def walk(self, place: Place, force: Force, path: list[Place]) -> Place:
        """From a place to the end of the steps with a force in the sections, by what lies ahead."""
        x, y, turn, moment = place.x, place.y, place.turn, place.moment
        fx, fy = force

        def rate(
            f: tuple[float, float, float, float, float], t: float, m: float
        ) -> tuple[float, float, float, float]:
            c, s = math.cos(t), math.sin(t)
            along = 1.0 + f[1] * (fx * c + fy * s)
            across = f[4] + f[2] * (fy * c - fx * s)
            dx, dy = c * along - s * across, s * along + c * across
            return dx, dy, f[3] * m, fx * dy - fy * dx

        at = place.station
        for h, (f0, f1, f2) in self.rows:
            k1 = rate(f0, turn, moment)
            k2 = rate(f1, turn + 0.5 * h * k1[2], moment + 0.5 * h * k1[3])
            k3 = rate(f1, turn + 0.5 * h * k2[2], moment + 0.5 * h * k2[3])
            k4 = rate(f2, turn + h * k3[2], moment + h * k3[3])
            x += h / 6.0 * (k1[0] + 2.0 * (k2[0] + k3[0]) + k4[0])
            y += h / 6.0 * (k1[1] + 2.0 * (k2[1] + k3[1]) + k4[1])
            turn += h / 6.0 * (k1[2] + 2.0 * (k2[2] + k3[2]) + k4[2])
            moment += h / 6.0 * (k1[3] + 2.0 * (k2[3] + k3[3]) + k4[3])
            at += h
            path.append(Place(at, x, y, turn, moment))
        return Place(at, x, y, turn, moment)
