"""The Heron with a bowed mid-line and turns of any size: what small slopes leave out of a bow.

Run: python tests/oracle/bowed_spring.py. A chain of short stiff links with a hinge spring between
each two, in equilibrium where it lies; no shear, so only differences between shapes say anything.
The force stands square to the bent face at the touch, or leans from that by the friction angle.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray
from scipy.optimize import fsolve, minimize_scalar

Floats = NDArray[np.float64]
MODULUS_MPA, WIDTH_MM, REAR_PIN_MM, PIVOT_MM, PRELOAD_MM, OPEN_MM = (
    205000.0,
    2.3,
    34.0,
    32.0,
    0.9,
    4.5,
)
STATIONS = ((-38, 3.2), (-4, 3.8), (0, 3.8), (7, 3.1), (25, 2.4), (36.5, 2.5))
PAD_START_MM, HALF_PAD_MM = 27.0, 1.2
# The corner between half-stop and closed face: centre from the pivot with the blade open, radius.
CORNER, CORNER_RADIUS_MM = np.array([-4.62 + 0.7, -4.6 + 0.7]), 0.7


def thickness(x: Floats | float) -> Floats:
    return np.asarray(np.interp(x, *zip(*STATIONS, strict=True)))


def inertia(x: Floats, steel: Floats) -> Floats:
    """Of the net section: holes of 2 mm at both pins, on the mid-line."""
    chord = np.zeros_like(x)
    for pin in (0.0, -REAR_PIN_MM):
        chord += 2 * np.sqrt(np.maximum(1.0 - (x - pin) ** 2, 0.0))
    return WIDTH_MM * (steel**3 - chord**3) / 12


def arch(height_mm: float) -> Callable[[Floats], Floats]:
    """Height of a parabola from the rear pin to the pad, flat ahead of it."""

    def height(x: Floats) -> Floats:
        span = REAR_PIN_MM + PAD_START_MM
        rise = 4 * height_mm * (x + REAR_PIN_MM) * (PAD_START_MM - x) / span**2
        return np.where(x < PAD_START_MM, rise, 0.0) + HALF_PAD_MM

    return height


def _moment(x: Floats, y: Floats, place: Floats, force: Floats) -> Floats:
    return np.asarray((place[0] - x) * force[1] - (place[1] - y) * force[0])


@dataclass
class Chain:
    """The spring from the rear pin to its end; heights from the face of the pad."""

    height: Callable[[Floats], Floats]
    friction: float = 0.0
    links: int = 600
    last: tuple[float, float] = (1.5, 30.0)
    x: Floats = field(init=False)

    def __post_init__(self) -> None:
        behind = np.linspace(-REAR_PIN_MM, 0.0, self.links // 2 + 1)
        self.x = np.concatenate((behind, np.linspace(0.0, 40.0, self.links // 2 + 1)[1:]))
        self.root = self.links // 2
        self.y = self.height(self.x)
        self.middle = 0.5 * (self.x[1:] + self.x[:-1])
        self.dx, self.dy = np.diff(self.x), np.diff(self.y)
        length = np.hypot(self.dx, self.dy)
        steel = thickness(self.middle) * self.dx / length
        self.turn_per_nmm = length / (MODULUS_MPA * inertia(self.middle, steel))

    def bent(self, force_n: float, at_mm: float) -> tuple[Floats, Floats]:
        """Where the loaded place of the face lies, and which way the face looks there."""
        x, y, turn = self.x.copy(), self.y.copy(), np.full(len(self.middle), -PRELOAD_MM / PIVOT_MM)
        behind = self.middle < 0
        off = float(np.interp(at_mm, self.x, self.y))
        for _ in range(60):
            lean = float(np.interp(at_mm, self.middle, turn))
            normal, along = np.array([-np.sin(lean), np.cos(lean)]), [np.cos(lean), np.sin(lean)]
            place = [np.interp(at_mm, self.x, x), np.interp(at_mm, self.x, y)] - off * normal
            force = force_n * (normal + self.friction * np.array(along))

            here = _moment(0.5 * (x[1:] + x[:-1]), 0.5 * (y[1:] + y[:-1]), place, force)
            at_root = _moment(x[self.root], y[self.root], place, force)
            here = np.where(self.middle < at_mm, here, 0.0)
            here = np.where(behind, at_root * (1 + self.middle / REAR_PIN_MM), here)
            by = here * self.turn_per_nmm
            root = -PRELOAD_MM / PIVOT_MM + np.sum((by * (1 + self.middle / REAR_PIN_MM))[behind])
            summed = np.cumsum(by) - 0.5 * by
            new = root + summed - np.sum(by[behind])
            x = np.concatenate(([0.0], np.cumsum(self.dx * np.cos(new) - self.dy * np.sin(new))))
            y = np.concatenate(([0.0], np.cumsum(self.dx * np.sin(new) + self.dy * np.cos(new))))
            x, y = x - x[self.root], y - y[self.root] + self.y[self.root]
            if np.max(abs(new - turn)) < 1e-13:
                break
            turn = new
        return place, normal

    def torque_nmm(self, blade_angle_deg: float) -> float:
        """Torque of the corner that bears, about the pivot."""
        angle = np.radians(blade_angle_deg - 180.0)
        turned = np.array([[np.cos(angle), -np.sin(angle)], [np.sin(angle), np.cos(angle)]])
        corner = turned @ CORNER

        def miss(hundreds_n_and_mm: Floats) -> Floats:
            place, normal = self.bent(100 * hundreds_n_and_mm[0], hundreds_n_and_mm[1])
            return place - normal * CORNER_RADIUS_MM - corner - [PIVOT_MM, -OPEN_MM]

        found = fsolve(miss, self.last, xtol=1e-11)
        self.last = (float(found[0]), float(found[1]))
        _, normal = self.bent(100 * found[0], found[1])
        touch = corner + normal * CORNER_RADIUS_MM
        force = 100 * found[0] * (normal + self.friction * np.array([normal[1], -normal[0]]))
        return abs(float(touch[0] * force[1] - touch[1] * force[0]))


def opening_peak_nmm(height_mm: float, friction: float = 0.0) -> float:
    """Largest torque of opening from closed, for an arch of a height."""
    # Opening, the corner slides towards the pivot pin's rear: friction on the spring looks back.
    chain = Chain(arch(height_mm), -friction)
    peak = minimize_scalar(
        lambda angle: -chain.torque_nmm(angle), bounds=(10.0, 30.0), options={"xatol": 1e-3}
    )
    return float(-peak.fun)


def changes(friction: float) -> tuple[float, float]:
    """Return by what share an arch of 3 mm outward and inward changes the peak."""
    straight = opening_peak_nmm(0.0, friction)
    outward, inward = (opening_peak_nmm(height, friction) for height in (3.0, -3.0))
    return outward / straight - 1.0, inward / straight - 1.0


def main() -> None:
    print("pull of opening, an arch of 3 mm from rear pin to pad: outward, inward")
    for friction in (0.0, 0.12):
        outward, inward = changes(friction)
        print(
            f"friction {friction:4.2f}: {100 * outward:+.2f} %, {100 * inward:+.2f} %; "
            f"length {50 * (outward + inward):+.2f} %, lever {50 * (outward - inward):+.2f} %"
        )


if __name__ == "__main__":
    main()
