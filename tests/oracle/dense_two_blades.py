"""A spring with two blades as a chain of dense finite elements, both tangs pressed on by force.

Timoshenko elements of two nodes, integrated exactly for bending and shear of a constant section,
over the whole spring; the pins hold nodes. Contact is a complementarity problem over every node
of both pads at once, solved by an active set, so nothing of the library's way of splitting the
spring into ends, turns or moments enters. Independent of the package under test. mm, N, MPa.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import numpy as np
from numpy.typing import NDArray
from scipy.sparse import coo_array, csr_array, diags_array
from scipy.sparse.linalg import splu

from .slow_beam import SHEAR_FACTOR, pair
from .slow_tang import TurnedTang, outline

Array = NDArray[np.float64]
CELL_MM = 0.05
# A spring on one pin turns freely; this keeps the matrix regular and bears a millionth of a moment.
BED_NMM_PER_RAD = 0.1


class DenseTwoBlades:
    """One design, in the shape of the design file; its flexibility at the pads is found once."""

    def __init__(self, design: Mapping[str, Any], youngs_modulus_mpa: float, poisson: float):
        spring = design["spring"]
        self.ends = [dict(design), self._second(design)]
        self.pinned = spring["support"] == "two-pins"
        self.span_mm = float(spring["rear_pin"]) if self.pinned else 0.0
        start = -self.span_mm - float(design["second"]["pad"][1])
        self.x_mm = self._nodes(start, float(spring["pad"][1]), design)
        stiff = self._stiffness(spring, youngs_modulus_mpa, poisson)
        held = [self._node(0.0), self._node(-self.span_mm)] if self.pinned else [self._node(0.0)]
        free = np.setdiff1d(np.arange(stiff.shape[0]), [2 * node for node in held])
        self.pads = [self._pad(0), self._pad(1)]
        self.nodes = np.concatenate(self.pads)
        bed = np.zeros(free.size)
        if not self.pinned:
            bed[np.searchsorted(free, 2 * held[0] + 1)] = BED_NMM_PER_RAD
        matrix = stiff[free][:, free] + diags_array(bed)
        loads = np.zeros((free.size, self.nodes.size))
        loads[np.searchsorted(free, 2 * self.nodes), np.arange(self.nodes.size)] = 1.0
        moved = splu(matrix.tocsc()).solve(loads)
        self.flexibility = moved[np.searchsorted(free, 2 * self.nodes)]

    @staticmethod
    def _second(design: Mapping[str, Any]) -> dict[str, Any]:
        second = design["second"]
        spring = dict(design["spring"]) | {"pad": second["pad"]}
        return {"spring": spring, "tang": second["tang"], "fit": second["fit"]}

    def _nodes(self, start: float, end: float, design: Mapping[str, Any]) -> Array:
        even = np.linspace(start, end, int((end - start) / CELL_MM) + 1)
        spring, second = design["spring"], design["second"]
        marks = [0.0, -self.span_mm, spring["pad"][0], -self.span_mm - second["pad"][0]]
        marks += [x for x, _ in spring["thickness"] if start < x < end]
        merged = np.unique(np.concatenate([even, np.array(marks, dtype=float)]))
        return merged[np.concatenate([[True], np.diff(merged) > 1e-9])]

    def _node(self, x_mm: float) -> int:
        return int(np.argmin(np.abs(self.x_mm - x_mm)))

    def _pad(self, end: int) -> NDArray[np.intp]:
        start, stop = map(float, self.ends[end]["spring"]["pad"])
        own = self.x_mm if end == 0 else -self.span_mm - self.x_mm
        return np.flatnonzero((own >= start - 1e-9) & (own <= stop + 1e-9))

    def _stiffness(self, spring: Mapping[str, Any], modulus: float, poisson: float) -> csr_array:
        x = self.x_mm
        middle, length = 0.5 * (x[1:] + x[:-1]), np.diff(x)
        rows = np.asarray(spring["thickness"], dtype=float)
        t = np.interp(middle, rows[:, 0], rows[:, 1])
        chord = np.zeros_like(t)
        for centre, hole in zip((0.0, -self.span_mm), pair(spring["pin_hole"]), strict=True):
            inside = np.maximum((hole / 2.0) ** 2 - (middle - centre) ** 2, 0.0)
            chord = np.maximum(chord, 2.0 * np.sqrt(inside))
        b = float(spring["width"])
        bend = modulus * b * (t**3 - chord**3) / 12.0
        shear = SHEAR_FACTOR * modulus / (2.0 * (1.0 + poisson)) * b * (t - chord)
        p = 12.0 * bend / (shear * length**2)
        h, one = length, np.ones_like(length)
        a, c = (4.0 + p) * h**2, (2.0 - p) * h**2
        cells = np.array(
            [
                [12.0 * one, 6.0 * h, -12.0 * one, 6.0 * h],
                [6.0 * h, a, -6.0 * h, c],
                [-12.0 * one, -6.0 * h, 12.0 * one, -6.0 * h],
                [6.0 * h, c, -6.0 * h, a],
            ]
        ) * (bend / (length**3 * (1.0 + p)))
        place = 2 * np.arange(length.size) + np.arange(4)[:, None]
        rows, columns = np.broadcast_arrays(place[:, None], place[None, :])
        total = coo_array((cells.ravel(), (rows.ravel(), columns.ravel())))
        return total.tocsr()

    def _need(self, end: int, blade_angle_deg: float) -> Array:
        """How far the tang stands through the free face at each node of a pad."""
        design = self.ends[end]
        pivot, preload = float(design["tang"]["pivot"]), float(design["fit"]["preload"])
        own = self.x_mm[self.pads[end]]
        own = own if end == 0 else -self.span_mm - own
        top = TurnedTang(outline(design), pivot, blade_angle_deg).top(own)[0]
        return np.asarray(top - float(design["tang"]["open"]) + preload * own / pivot)

    def forces_n(self, first_deg: float, second_deg: float) -> tuple[Array, Array]:
        """Forces on the nodes of both pads: gap >= 0, force >= 0, gap x force = 0."""
        need = np.maximum(
            np.concatenate([self._need(0, first_deg), self._need(1, second_deg)]), -50.0
        )
        on: list[int] = []
        force = np.zeros(need.size)
        for _ in range(20 * need.size):
            lack = need - self.flexibility @ force
            lack[on] = -np.inf
            if lack.max() <= 1e-9:
                break
            on.append(int(np.argmax(lack)))
            target = np.linalg.solve(self.flexibility[np.ix_(on, on)], need[on])
            while target.min() <= 0.0:
                held = force[on]
                pulls = target <= 0.0
                share = np.where(pulls, held / np.where(pulls, held - target, 1.0), np.inf)
                force[on] = held + share.min() * (target - held)
                leave = [node for node, s in zip(on, share, strict=True) if s <= share.min()]
                force[leave] = 0.0
                on = [node for node in on if node not in leave]
                target = np.linalg.solve(self.flexibility[np.ix_(on, on)], need[on])
            force[on] = target
        split = self.pads[0].size
        return force[:split], force[split:]
