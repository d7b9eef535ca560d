"""The whole spring as a chain of Timoshenko elements with its pins held, and what a force does.

Two nodes and four freedoms an element, exact for a constant section; the flexibility of the section
is averaged over the element. Forces may act anywhere: inside an element by its exact shape
functions and the little that an element held at both nodes gives by itself. A spring on one pin is
held there against turning, and the turn is left to whoever solves the contact. mm, N, MPa.
"""

from __future__ import annotations

import numpy as np
from scipy.sparse import coo_array
from scipy.sparse.linalg import splu

from .blades import Array, Joint
from .slow_beam import SHEAR_FACTOR, Places

ELEMENT_MM = 0.2
HOLE_PARTS = 16
GAUSS = np.polynomial.legendre.leggauss(4)


class ElementBeam:
    """One spring; `flexibility` is asked with stations of the whole spring."""

    def __init__(self, joint: Joint, element_mm: float = ELEMENT_MM) -> None:
        self._spring = joint.spring
        reach = [
            float(joint.station_mm(blade, np.array(own)))
            for blade in joint.blades
            for own in (*blade.pad_mm, blade.dial_mm)
        ]
        self.node_mm = self._nodes([0.0, -joint.spring.span_mm, *reach], element_mm)
        self._size = np.diff(self.node_mm)
        self._bend, self._shear = self._elements()
        self._phi = 12.0 * self._bend / (self._shear * self._size**2)
        self._solve(reach)

    def _nodes(self, marks: list[float], element_mm: float) -> Array:
        low, high = min(marks), max(marks)
        marks = marks + [x for x, _ in self._spring.thickness]
        for hole in self._spring.holes:
            half = 0.5 * hole.diameter_mm * np.cos(np.linspace(0.0, np.pi, HOLE_PARTS + 1))
            marks += list(hole.station_mm + half)
        even = np.linspace(low, high, int(np.ceil((high - low) / element_mm)) + 1)
        inside = [x for x in marks if low <= x <= high]
        # Marks take the place of even nodes that would make an element next to nothing.
        kept = even[np.min(np.abs(even[:, None] - np.array(inside)), axis=1) > 0.02]
        merged = np.unique(np.concatenate([kept, inside]))
        return merged[np.concatenate([[True], np.diff(merged) > 1e-7])]

    def _elements(self) -> tuple[Array, Array]:
        """E I and kappa G A of each element, by the mean of their inverses."""
        spring = self._spring
        x = self.node_mm[:-1, None] + self._size[:, None] * 0.5 * (1.0 + GAUSS[0])
        t = np.interp(x, *np.array(spring.thickness).T)
        c, e = np.zeros_like(x), np.zeros_like(x)
        for hole in spring.holes:
            squared = (0.5 * hole.diameter_mm) ** 2 - (x - hole.station_mm) ** 2
            inside = squared > 0.0
            c = np.where(inside, 2.0 * np.sqrt(np.maximum(squared, 0.0)), c)
            e = np.where(inside, hole.offset_mm, e)
        # Steel below and above the hole, each about the centroid of both.
        area = t - c
        centre = -c * e / area
        inertia = t**3 / 12.0 + t * centre**2 - c**3 / 12.0 - c * (e - centre) ** 2
        shear = spring.youngs_modulus_mpa / (2.0 * (1.0 + spring.poisson)) * SHEAR_FACTOR
        mean = 0.5 * GAUSS[1]
        bend = spring.youngs_modulus_mpa * spring.width_mm / ((1.0 / inertia) @ mean)
        return bend, shear * spring.width_mm / ((1.0 / area) @ mean)

    def _stiffness(self) -> coo_array:
        h, p, one = self._size, self._phi, np.ones_like(self._size)
        a, c = (4.0 + p) * h**2, (2.0 - p) * h**2
        cells = np.array(
            [
                [12.0 * one, 6.0 * h, -12.0 * one, 6.0 * h],
                [6.0 * h, a, -6.0 * h, c],
                [-12.0 * one, -6.0 * h, 12.0 * one, -6.0 * h],
                [6.0 * h, c, -6.0 * h, a],
            ]
        ) * (self._bend / (h**3 * (1.0 + p)))
        place = 2 * np.arange(h.size) + np.arange(4)[:, None]
        rows, columns = np.broadcast_arrays(place[:, None], place[None, :])
        return coo_array((cells.ravel(), (rows.ravel(), columns.ravel())))

    def _solve(self, reach_mm: list[float]) -> None:
        """Flexibility between the freedoms of all nodes that anyone presses or looks at."""
        pins = [0.0, -self._spring.span_mm] if self._spring.support == "two-pins" else [0.0]
        held = [2 * int(np.argmin(np.abs(self.node_mm - pin))) for pin in pins]
        if self._spring.support != "two-pins":
            held.append(held[0] + 1)
        total = self._stiffness().tocsr()
        free = np.setdiff1d(np.arange(total.shape[0]), held)
        cells = self._cell(np.array(reach_mm))
        ends = [cells[cells * 2 >= held[0]], cells[cells * 2 < held[0]]]
        live = [np.arange(2 * end.min(), 2 * end.max() + 4) for end in ends if end.size]
        seen = np.intersect1d(np.concatenate(live), free)
        loads = np.zeros((free.size, seen.size))
        loads[np.searchsorted(free, seen), np.arange(seen.size)] = 1.0
        moved = splu(total[free][:, free].tocsc()).solve(loads)[np.searchsorted(free, seen)]
        self._place = np.zeros(total.shape[0], dtype=np.intp)
        self._place[seen] = np.arange(seen.size)
        self._moved = moved

    def _cell(self, x: Array) -> Places:
        after = np.searchsorted(self.node_mm, x, side="right")
        return np.clip(after - 1, 0, self._size.size - 1)

    def _shapes(self, x: Array) -> tuple[Places, Array, Array]:
        """Element, place in it, and the share of its four freedoms in the movement there."""
        cell = self._cell(x)
        h, p, inside = self._size[cell], self._phi[cell], x - self.node_mm[cell]
        s = inside / h
        shapes = np.array(
            [
                1.0 - 3.0 * s**2 + 2.0 * s**3 + p * (1.0 - s),
                h * (s - 2.0 * s**2 + s**3 + 0.5 * p * (s - s**2)),
                3.0 * s**2 - 2.0 * s**3 + p * s,
                h * (s**3 - s**2 - 0.5 * p * (s - s**2)),
            ]
        )
        return cell, inside, (shapes / (1.0 + p)).T

    def flexibility(self, x: Array, xi: Array) -> Array:
        """Movement at every x for a unit force at each xi, a column each."""
        cell, inside, gather = self._gather(x)
        cells, insides, spread = self._gather(xi)
        moved = np.asarray(gather @ (self._moved @ spread.T))
        i, j = np.nonzero(cell[:, None] == cells[None, :])
        moved[i, j] += self._inside_element(cell[i], inside[i], insides[j])
        return moved

    def _gather(self, x: Array) -> tuple[Places, Array, Array]:
        """The shares as a matrix over all freedoms that are looked at."""
        cell, inside, shapes = self._shapes(x)
        matrix = np.zeros((x.size, self._moved.shape[0]))
        np.put_along_axis(matrix, self._place[2 * cell[:, None] + np.arange(4)], shapes, axis=1)
        return cell, inside, matrix

    def _inside_element(self, cell: Places, x: Array, xi: Array) -> Array:
        """Movement of an element held at both nodes: a cantilever put back by its tip."""
        bend, shear, h = self._bend[cell], self._shear[cell], self._size[cell]
        low, high = np.minimum(x, xi), np.maximum(x, xi)
        cantilever = low**2 * (3.0 * high - low) / (6.0 * bend) + low / shear

        def tip(a: Array) -> Array:
            lifted = a**2 * (3.0 * h - a) / (6.0 * bend) + a / shear
            return np.array([lifted, a**2 / (2.0 * bend)])

        f = np.array([[h**3 / (3.0 * bend) + h / shear, h**2 / (2.0 * bend)],
                      [h**2 / (2.0 * bend), h / bend]])  # fmt: skip
        det = f[0, 0] * f[1, 1] - f[0, 1] ** 2
        a, b = tip(x), tip(xi)
        back = f[1, 1] * a[0] * b[0] - f[0, 1] * (a[0] * b[1] + a[1] * b[0]) + f[0, 0] * a[1] * b[1]
        return cantilever - back / det
