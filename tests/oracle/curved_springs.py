"""Curved springs as beams beside the same springs as plane-stress solids.

Run: python tests/oracle/curved_springs.py. Prints the tables; the test of the same name holds the
first. Source of the solids' numbers: CalculiX, run here. The shapes are invented.
"""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from math import cos, pi, sqrt
from pathlib import Path

import numpy as np

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

import backspring as bs
from backspring import _core
from oracle.plane_stress import solve
from oracle.plane_stress_mesh import PlaneSpring
from stations import stations

REFINE = 2
_HERON = PlaneSpring(
    width_mm=2.3,
    thickness_mm=((-38, 3.2), (-4, 3.8), (0, 3.8), (7, 3.1), (25, 2.4), (36.5, 2.5)),
    pivot_mm=32.0,
    youngs_modulus_mpa=205000.0,
    poisson=0.29,
    rear_pin_mm=34.0,
    hole_diameter_mm=2.0,
)


def _rows(height: Callable[[float], float], first: float, last: float) -> tuple:
    return tuple((float(x), height(float(x))) for x in np.arange(first, last + 0.5))


def _hump(x: float, first: float, last: float) -> float:
    """Rise from 0 to 1 and back, level at both ends and in the middle."""
    return 0.5 - 0.5 * cos(2 * pi * (x - first) / (last - first)) if first < x < last else 0.0


def _arc(x: float, radius: float) -> float:
    """Fall along a circle that is level at the middle pin."""
    return sqrt(radius**2 - x**2) - radius


SPRINGS = {
    "clamped, arched 3 mm": PlaneSpring(
        2.3,
        ((0, 3.8), (7, 3.1), (25, 2.4), (36.5, 2.5)),
        32.0,
        205000.0,
        0.29,
        mid_line_mm=_rows(lambda x: 3.0 * _hump(x, 2, 27), 0, 36),
    ),
    "clamped, falls along a circle of 60 mm": PlaneSpring(
        2.5,
        ((0, 3.4), (38, 3.0)),
        34.0,
        205000.0,
        0.29,
        mid_line_mm=_rows(lambda x: _arc(x, 60.0), 0, 38),
    ),
    "two pins, humps of 2 mm on either side": replace(
        _HERON,
        mid_line_mm=_rows(lambda x: 2.0 * _hump(x, -31, -3) + 2.0 * _hump(x, 3, 27), -38, 36),
    ),
}


@dataclass(frozen=True)
class Row:
    """Stiffness at the pivot [N/mm]."""

    name: str
    beam: float
    solid: float
    straight_beam: float

    @property
    def off(self) -> float:
        return self.beam / self.solid - 1.0


def as_beam(spring: PlaneSpring) -> _core.Spring:
    pinned = bool(spring.hole_centres_mm)
    kind = _core.SupportKind.two_pins if pinned else _core.SupportKind.clamped
    return _core.Spring(
        thickness=stations(spring.thickness_mm),
        width_mm=spring.width_mm,
        support=_core.Support(kind=kind, rear_pin_mm=spring.rear_pin_mm),
        holes=[
            _core.Hole(center_mm=center, diameter_mm=spring.hole_diameter_mm)
            for center in spring.hole_centres_mm
        ],
        elastic=_core.Elastic(youngs_modulus_mpa=spring.youngs_modulus_mpa, poisson=spring.poisson),
        mid_line=[_core.MidLinePoint(x_mm=x, height_mm=y) for x, y in spring.mid_line_mm],
    )


def stiffness_n_per_mm(spring: PlaneSpring) -> float:
    flexibility = _core.make_flexibility(as_beam(spring))
    return 1.0 / _core.deflection_per_force(flexibility, spring.pivot_mm, spring.pivot_mm)


def compared(name: str) -> Row:
    """Solve one of the springs both ways."""
    spring = SPRINGS[name]
    return Row(
        name,
        stiffness_n_per_mm(spring),
        solve(spring, REFINE).stiffness_n_per_mm,
        stiffness_n_per_mm(replace(spring, mid_line_mm=())),
    )


def _shapes() -> Iterator[tuple[str, dict[str, list[list[float]]]]]:
    """Yield what a drawing of the Heron may leave out, each by itself."""
    x = np.linspace(-34.0, 27.0, 31)
    for height in (3.0, -3.0):
        rows = [[float(a), float(4 * height * (a + 34) * (27 - a) / 61**2)] for a in x]
        yield f"bowed {height:+g} mm from rear pin to pad", {"spring.mid_line": rows}
    full, less = 2.3, 0.96 * 2.3
    for first in (0.0, -5.0):
        sides = [[-38, full], [first, full], [first, less], [27, less], [27, full], [36.5, full]]
        yield f"sides relieved 4 % from {first:g} mm to the pad", {"spring.width": sides}
    ends = [[-38.0, 1.03 * full], [36.5, 0.97 * full]]
    yield "width tapers 6 % from end to end", {"spring.width": ends}


def _figures(design: bs.Design) -> tuple[float, float, float]:
    check = bs.check(design)
    return (
        max(stroke.peak_pull_n for stroke in check.strokes),
        check.positions["half_stop"].reading_loaded_mm / 0.0254,
        check.positions["closed"].reading_loaded_mm / 0.0254,
    )


def main() -> None:
    heads = f"{'solid':>8} {'beam':>8} {'off':>7} {'straight':>9}"
    print(f"{'stiffness at the pivot, N/mm':42} {heads}")
    for name in SPRINGS:
        row = compared(name)
        print(
            f"{name:42} {row.solid:8.3f} {row.beam:8.3f} {100 * row.off:+6.2f}% "
            f"{row.straight_beam:9.3f}"
        )
    heron = bs.load(Path(__file__).resolve().parents[2] / "data/designs/heron.toml")
    pull, half, closed = _figures(heron)
    print(f"\n{'Heron':42} {'pull':>8} {'half-stop':>10} {'closed':>8}  [%, thou loaded]")
    for name, changes in _shapes():
        figures = _figures(heron.replace(**changes))
        print(
            f"{name:42} {100 * (figures[0] / pull - 1):+7.2f}% {figures[1] - half:+10.3f} "
            f"{figures[2] - closed:+8.3f}"
        )


if __name__ == "__main__":
    main()
