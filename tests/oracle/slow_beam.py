"""The spring as a beam, by brute force: the unit-load integrals summed over very many short cells.

Independent of the package under test. Units: mm, N, MPa.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, NamedTuple

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]
Places = NDArray[np.intp]
Design = Mapping[str, Any]

SHEAR_FACTOR = 5.0 / 6.0


class Section(NamedTuple):
    """Net section at each station: area, second moment, its centroid above the mid-line, height."""

    area_mm2: Array
    inertia_mm4: Array
    centroid_mm: Array
    thickness_mm: Array


def pair(value: Any) -> tuple[float, float]:
    """A scalar stands for both of a pair."""
    if isinstance(value, (int, float)):
        return float(value), float(value)
    first, second = value
    return float(first), float(second)


class SlowBeam:
    """Flexibility and bending of one spring."""

    def __init__(self, design: Design, cell_mm: float) -> None:
        spring = design["spring"]
        self.width_mm = float(spring["width"])
        self.youngs_modulus_mpa = float(spring["youngs_modulus"])
        self.shear_modulus_mpa = self.youngs_modulus_mpa / (2.0 * (1.0 + float(spring["poisson"])))
        self.rear_pin_mm = float(spring["rear_pin"])
        self.hole_mm = pair(spring["pin_hole"])
        self.hole_offset_mm = pair(spring.get("pin_hole_offset", 0.0))
        self.end_mm = max(
            float(spring["pad"][1]), float(design["tang"]["pivot"]), float(design["fit"]["dial"])
        )
        self.knots_mm, self.knot_thickness_mm = self._profile(spring["thickness"])
        self.support = spring["support"]
        self.mid_line = np.asarray(spring.get("mid_line", [[0.0, 0.0], [1.0, 0.0]]), dtype=float).T
        # What gives under the middle pin turns the spring about its rear pin.
        self.seat_mm_per_n = float(design.get("frame", {}).get("seat", 0.0))
        self._sum_up(cell_mm)
        self.root_rotation = self._root_rotation(cell_mm)
        self._lay_out_stress_stations()

    def _profile(self, thickness: Any) -> tuple[Array, Array]:
        if isinstance(thickness, (int, float)):
            stations = np.array([-(self.rear_pin_mm + 4.0), self.end_mm])
            return stations, np.full(2, float(thickness))
        table = np.asarray(thickness, dtype=float)
        return table[:, 0], table[:, 1]

    def _breaks(self) -> Array:
        """Stations where the section has a kink: the profile's knots, holes' middles and rims."""
        breaks = [*self.knots_mm, *self.mid_line[0]]
        for centre, hole in zip((0.0, -self.rear_pin_mm), self.hole_mm, strict=True):
            breaks += [centre - hole / 2.0, centre, centre + hole / 2.0]
        return np.array(breaks)

    def _edges(self, start_mm: float, stop_mm: float, cell_mm: float) -> Array:
        even = np.linspace(start_mm, stop_mm, int(np.ceil((stop_mm - start_mm) / cell_mm)) + 1)
        breaks = self._breaks()
        inside = breaks[(breaks > start_mm) & (breaks < stop_mm)]
        return np.unique(np.concatenate([even, inside]))

    def section(self, x: Array) -> Section:
        """Net section about its own centroid; the hole's centre is e above the mid-line.

        Thickness is drawn square to the stations' line, and counts square to the mid-line.
        """
        t = np.interp(x, self.knots_mm, self.knot_thickness_mm) / np.hypot(1.0, self._rise(x))
        c = np.zeros_like(t)
        e = np.zeros_like(t)
        places = zip((0.0, -self.rear_pin_mm), self.hole_mm, self.hole_offset_mm, strict=True)
        for centre, hole, offset in places:
            inside = np.abs(x - centre) < hole / 2.0
            chord = 2.0 * np.sqrt(np.maximum((hole / 2.0) ** 2 - (x - centre) ** 2, 0.0))
            c = np.where(inside, chord, c)
            e = np.where(inside, offset, e)
        b = self.width_mm
        area = b * (t - c)
        ybar = -(b * c * e) / area
        inertia = b * t**3 / 12 + b * t * ybar**2 - (b * c**3 / 12 + b * c * (e - ybar) ** 2)
        return Section(area, inertia, ybar, t)

    def _rise(self, x: Array) -> Array:
        """Slope of the mid-line, at a kink the one ahead of it; none beyond its ends."""
        station, height = self.mid_line
        part = np.searchsorted(station, x, side="right") - 1
        slopes = np.concatenate([np.diff(height) / np.diff(station), [0.0]])
        return np.where(part < 0, 0.0, slopes[part])

    def _cells(self, edge_mm: Array) -> tuple[Array, Array]:
        """1/EI and 1/(kappa G A) of each cell, taken at its middle.

        A cell that leans is as much longer; a part of the cross force stretches it, not shears.
        """
        middle = 0.5 * (edge_mm[1:] + edge_mm[:-1])
        cut, rise = self.section(middle), self._rise(middle)
        longer = np.hypot(1.0, rise)
        bend = longer / (self.youngs_modulus_mpa * cut.inertia_mm4)
        shear = 1.0 / (SHEAR_FACTOR * self.shear_modulus_mpa * cut.area_mm2)
        stretch = rise**2 / (self.youngs_modulus_mpa * cut.area_mm2)
        return bend, (shear + stretch) / longer

    def _root_rotation(self, cell_mm: float) -> float:
        if self.support == "clamped":
            return 0.0
        if self.support != "two-pins":
            return 1.0 / float(self.support["root_stiffness"])
        length = self.rear_pin_mm
        edge = self._edges(-length, 0.0, cell_mm)
        bend, shear = self._cells(edge)
        ends = np.diff((edge + length) ** 3) / 3.0
        return float((bend @ ends + shear @ np.diff(edge)) / length**2)

    def _sum_up(self, cell_mm: float) -> None:
        """Running sums of s^n ds/EI (n = 0, 1, 2) and of ds/(kappa G A) at the cells' edges."""
        edge = self._edges(0.0, self.end_mm, cell_mm)
        bend, shear = self._cells(edge)
        weights = np.stack([bend, bend, bend, shear])
        powers = np.stack([edge, edge**2 / 2.0, edge**3 / 3.0, edge])
        sums = np.cumsum(weights * np.diff(powers, axis=1), axis=1)
        self._edge_mm, self._weights, self._powers = edge, weights, powers
        self._sums = np.concatenate([np.zeros((4, 1)), sums], axis=1)

    def sums_to(self, m: Array) -> Array:
        """The four integrals from 0 to m; within a cell the section is the one at its middle.

        Holding the section, and not the integrals, keeps the bent spring smooth inside a cell.
        """
        after = np.searchsorted(self._edge_mm, m, side="right")
        cell = np.minimum(after, self._edge_mm.size - 1) - 1
        powers = np.stack([m, m**2 / 2.0, m**3 / 3.0, m])
        part: Array = self._weights[:, cell] * (powers - self._powers[:, cell])
        return self._sums[:, cell] + part

    def flexibility(self, x: Array, xi: Array) -> Array:
        """Deflection at x for a unit force at xi (the two broadcast)."""
        return self._combine(x, xi, np.where(x < xi, self.sums_to(x), self.sums_to(xi)))

    def flexibility_columns(self, x: Array, sums: Array, xi: Array, xi_sums: Array) -> Array:
        """Deflection at every x for a unit force at each xi, a column each, sums done before."""
        behind = x[:, None] < xi
        return self._combine(
            x[:, None], xi, np.where(behind, sums[:, :, None], xi_sums[:, None, :])
        )

    def _combine(self, x: Array, xi: Array, sums: Array) -> Array:
        a0, a1, a2, shear = sums
        turn = x * xi * (a0 + self.root_rotation)
        bent = turn - (x + xi) * a1 + a2 + shear
        if self.seat_mm_per_n:
            span = self.rear_pin_mm
            bent = bent + self.seat_mm_per_n * (1.0 + x / span) * (1.0 + xi / span)
        return np.asarray(bent, dtype=np.float64)

    def slope_per_force(self, x: Array, xi: Array) -> Array:
        """Slope at x for a unit force at xi; at the force itself the mean of both sides."""
        a0, a1, _, _ = np.where(x < xi, self.sums_to(x), self.sums_to(xi))
        shear = 1.0 / (SHEAR_FACTOR * self.shear_modulus_mpa * self.section(x).area_mm2)
        share = np.where(x < xi, 1.0, np.where(x > xi, 0.0, 0.5))
        turn = xi * (a0 + self.root_rotation)
        if self.seat_mm_per_n:
            turn = turn + self.seat_mm_per_n * (1.0 + xi / self.rear_pin_mm) / self.rear_pin_mm
        return np.asarray(turn - a1 + share * shear, dtype=np.float64)

    def _lay_out_stress_stations(self) -> None:
        """Behind the middle pin only a spring held by a rear pin carries a moment."""
        start = -self.rear_pin_mm if self.support == "two-pins" else 0.0
        self._stress_mm = self._edges(start, self.end_mm, 0.01)
        cut = self.section(self._stress_mm)
        far = cut.thickness_mm / 2.0 + np.abs(cut.centroid_mm)
        self._stress_per_moment = far / cut.inertia_mm4

    def moment_nmm(self, x: Array, station_mm: Array, force_n: Array) -> Array:
        """Bending moment along the spring under forces at stations of the overhang."""
        ahead = np.maximum(station_mm[None, :] - np.maximum(x, 0.0)[:, None], 0.0) @ force_n
        return np.where(x < 0.0, ahead * (x + self.rear_pin_mm) / self.rear_pin_mm, ahead)

    def peak_stress(self, station_mm: Array, force_n: Array) -> tuple[float, float]:
        """Greatest outer-fibre stress of the net section, and its station."""
        moment = self.moment_nmm(self._stress_mm, station_mm, force_n)
        stress = moment * self._stress_per_moment
        worst = int(np.argmax(stress))
        return float(stress[worst]), float(self._stress_mm[worst])
