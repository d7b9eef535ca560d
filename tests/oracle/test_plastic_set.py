"""The set of a spring that yields, held to fibres and segments.

Independent of the package: the spring is cut into segments, each section into fibres of elastic,
perfectly plastic steel; the force that holds the spring at a rise is found by bisection.
"""

from __future__ import annotations

import numpy as np
import pytest
from numpy.typing import NDArray

from backspring import _core as core
from stations import stations

Array = NDArray[np.float64]
MODULUS_MPA, POISSON, YIELD_MPA = 205000.0, 0.29, 1000.0
WIDTH_MM, REAR_PIN_MM, HOLE_MM = 2.3, 34.0, 2.0
STATIONS = [(-38.0, 3.2), (-4.0, 3.8), (0.0, 3.8), (7.0, 3.1), (25.0, 2.4), (36.5, 2.5)]
FIBRES, POINTS = 401, 240


class Fibres:
    """Moment and residual curvature of sections given by thickness, chord and offset."""

    def __init__(self, thickness: Array, chord: Array, offset: float) -> None:
        share = (np.arange(FIBRES) + 0.5) / FIBRES - 0.5
        self.y = thickness[:, None] * share
        # A fibre at the slot's edge counts for the part of it that is there.
        half = 0.5 * thickness[:, None] / FIBRES
        low = np.maximum(self.y - half, offset - 0.5 * chord[:, None])
        high = np.minimum(self.y + half, offset + 0.5 * chord[:, None])
        self.area = WIDTH_MM * (2.0 * half - np.maximum(high - low, 0.0))
        total = self.area.sum(axis=1)
        self.centroid = (self.area * self.y).sum(axis=1) / total
        self.inertia = (self.area * (self.y - self.centroid[:, None]) ** 2).sum(axis=1)

    def moment(self, curvature: Array) -> Array:
        """Moment, the neutral axis where the fibres carry no force."""
        low, high = self.y[:, 0].copy(), self.y[:, -1].copy()
        for _ in range(40):
            axis = 0.5 * (low + high)
            pulls = (self.area * self._stress(curvature, axis)).sum(axis=1) > 0.0
            low, high = np.where(pulls, axis, low), np.where(pulls, high, axis)
        stress = self._stress(curvature, 0.5 * (low + high))
        return np.asarray((self.area * stress * self.y).sum(axis=1))

    def _stress(self, curvature: Array, axis: Array) -> Array:
        strain = curvature[:, None] * (self.y - axis[:, None])
        return np.clip(MODULUS_MPA * strain, -YIELD_MPA, YIELD_MPA)


def law(thickness: Array, chord: Array, offset: float) -> tuple[Array, Array]:
    """Tables of moment and residual curvature of sections, to be read between points."""
    fibres = Fibres(thickness, chord, offset)
    outer = np.abs(0.5 * thickness) + np.abs(fibres.centroid)
    at_yield = YIELD_MPA / (MODULUS_MPA * outer)
    growth = np.concatenate(
        [np.linspace(1.0, 2.0, POINTS // 2), np.geomspace(2.01, 60.0, POINTS // 2)]
    )
    moments = np.stack([fibres.moment(at_yield * g) for g in growth])
    residual = np.outer(growth, at_yield) - moments / (MODULUS_MPA * fibres.inertia)
    return moments, residual - residual[0]


class SlowSpring:
    """The spring in segments, with the moments that unit forces make in them."""

    def __init__(self, offset: float) -> None:
        spans = [(-REAR_PIN_MM, -1.0, 900), (-1.0, 1.0, 100), (1.0, 36.5, 1000)]
        parts = [np.linspace(*span[:2], span[2] + 1) for span in spans]
        edges = np.unique(np.concatenate(parts))
        self.length = np.diff(edges)
        self.x = 0.5 * (edges[1:] + edges[:-1])
        t = np.interp(self.x, *np.array(STATIONS).T)
        inside = [0.25 * HOLE_MM**2 - (self.x - pin) ** 2 for pin in (-REAR_PIN_MM, 0.0)]
        c = 2.0 * np.sqrt(np.maximum(np.maximum(*inside), 0.0))
        # Every whole section is the same but for its size; the rear pin's bears no moment.
        moments, residual = law(np.ones(1), np.zeros(1), 0.0)
        self.moments, self.residual = moments * t**2, residual / t
        pierced = np.abs(self.x) < 0.5 * HOLE_MM
        self.moments[:, pierced], self.residual[:, pierced] = law(t[pierced], c[pierced], offset)
        axis = -c * offset / (t - c)
        inertia = t**3 / 12.0 + t * axis**2 - c**3 / 12.0 - c * (offset - axis) ** 2
        self.bending = self.length / (MODULUS_MPA * WIDTH_MM * inertia)
        shear = MODULUS_MPA / (2.0 * (1.0 + POISSON)) * 5.0 / 6.0
        self.shear = self.length / (shear * WIDTH_MM * (t - c))

    def unit_moment(self, at: float) -> Array:
        ahead = np.maximum(at - self.x, 0.0)
        behind = at * (1.0 + self.x / REAR_PIN_MM)
        return np.asarray(np.where(self.x < 0.0, behind, ahead), dtype=np.float64)

    def elastic(self, at: float) -> float:
        """Deflection for a unit force in the same place."""
        unit_shear = np.where(self.x < 0.0, at / REAR_PIN_MM, (self.x < at).astype(float))
        return float(self.bending @ self.unit_moment(at) ** 2 + self.shear @ unit_shear**2)

    def set_at(self, at: float, force: float, force_at: float) -> float:
        """What stays, at a station, of a force; infinite beyond what a section bears."""
        moment = force * self.unit_moment(force_at)
        if np.any(moment > self.moments[-1]):
            return np.inf
        rows = (self.moments < moment).sum(axis=0)
        low, high = np.maximum(rows - 1, 0), np.minimum(rows, len(self.moments) - 1)
        column = np.arange(self.x.size)
        gap = self.moments[high, column] - self.moments[low, column]
        share = np.divide(moment - self.moments[low, column], gap, where=gap > 0.0, out=0.0 * gap)
        kept = self.residual[low, column] * (1.0 - share) + self.residual[high, column] * share
        yielded = moment > self.moments[0]
        return float((self.length * kept * yielded) @ self.unit_moment(at))

    def force(self, at: float, rise: float) -> float:
        low, high = 0.0, rise / self.elastic(at)
        for _ in range(60):
            middle = 0.5 * (low + high)
            short = rise - middle * self.elastic(at) - self.set_at(at, middle, at)
            low, high = (middle, high) if short > 0.0 else (low, middle)
        return 0.5 * (low + high)


def spring(offset: float) -> core.Spring:
    return core.Spring(
        thickness=stations(STATIONS),
        width_mm=WIDTH_MM,
        support=core.Support(kind=core.SupportKind.two_pins, rear_pin_mm=REAR_PIN_MM),
        holes=[
            core.Hole(center_mm=-REAR_PIN_MM, diameter_mm=HOLE_MM, offset_mm=offset),
            core.Hole(center_mm=0.0, diameter_mm=HOLE_MM, offset_mm=offset),
        ],
        elastic=core.Elastic(youngs_modulus_mpa=MODULUS_MPA, poisson=POISSON),
    )


@pytest.mark.parametrize(("offset", "rises"), [(0.0, (2.4, 2.55, 2.7)), (0.4, (1.8, 1.95, 2.1))])
def test_set_of_a_tapered_spring_on_two_pins_with_holes(
    offset: float, rises: tuple[float, ...]
) -> None:
    """Force within 3e-4, set within 1 %.

    Refined, both meet at 1e-6 and 1e-4; what is left is the fast one's few places across a hole
    off the mid-line and the slow one's tables where yielding begins.
    """
    slow, fast = SlowSpring(offset), spring(offset)
    at = 30.8
    for rise in rises:
        hold = core.Hold(x_mm=at, rise_mm=rise)
        bent = core.bend_by_hold(fast, [hold], YIELD_MPA)
        force = slow.force(at, rise)
        assert bent.loads[0].force_n == pytest.approx(force, rel=3e-4)
        for station in (32.0, 36.5):
            expected = slow.set_at(station, force, at)
            assert expected > 0.0
            assert bent.shift.at_mm(station) == pytest.approx(expected, rel=1e-2)
