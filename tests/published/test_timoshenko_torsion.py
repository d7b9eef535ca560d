"""S. P. Timoshenko and J. N. Goodier, Theory of Elasticity, torsion of a rectangular bar
(table and series from memory).

The table of k1 in M = k1 G theta (2a)^3 (2b), the series and the mean-line formula are from memory;
the series is summed here apart from the library, and both are held to the bar's stress function
solved on a grid (Prandtl's membrane), which needs no memory. W. C. Young, Roark's Formulas for
Stress and Strain, gives a polynomial in the sides' ratio (from memory), within half a percent.
"""

from __future__ import annotations

from math import pi, tanh

import numpy as np
import pytest
from scipy.sparse import diags_array, eye_array, kron
from scipy.sparse.linalg import spsolve

from agreement import Agree
from backspring import _core

# b/a, and k1 to the three or four decimals that are printed.
TABLE = [
    (1.0, 0.1406), (1.2, 0.166), (1.5, 0.196), (2.0, 0.229), (2.5, 0.249), (3.0, 0.263),
    (4.0, 0.281), (5.0, 0.291), (10.0, 0.312),
]  # fmt: skip
SIDES_MM = [(2.3, 2.3), (3.0, 2.5), (4.0, 1.6), (2.0, 3.5), (25.0, 2.5)]


@pytest.mark.parametrize(("ratio", "k1"), TABLE)
def test_printed_table(agree: Agree, ratio: float, k1: float) -> None:
    thickness_mm = 2.4
    constant = _core.torsion_constant_mm4(ratio * thickness_mm, thickness_mm)
    agree(f"table, k1 at b/a {ratio:g}", constant / (ratio * thickness_mm**4), k1, abs=6e-4)


def by_series(width_mm: float, thickness_mm: float) -> float:
    long, short = max(width_mm, thickness_mm), min(width_mm, thickness_mm)
    terms = sum(tanh(0.5 * n * pi * long / short) / n**5 for n in range(1, 400, 2))
    return long * short**3 / 3.0 * (1.0 - 192.0 / pi**5 * short / long * terms)


@pytest.mark.parametrize("sides_mm", SIDES_MM)
def test_series(agree: Agree, sides_mm: tuple[float, float]) -> None:
    agree(
        f"{sides_mm[0]:g} x {sides_mm[1]:g} mm by the series [mm4]",
        _core.torsion_constant_mm4(*sides_mm),
        by_series(*sides_mm),
        rel=1e-9,
    )


def by_stress_function(width_mm: float, thickness_mm: float, cells: int) -> float:
    """Twice the volume under a membrane: second differences of phi are -2, phi is 0 on the rim."""
    steps = np.array([width_mm, thickness_mm]) / cells
    curve = [
        diags_array([1.0, -2.0, 1.0], offsets=[-1, 0, 1], shape=(cells - 1, cells - 1)) / h**2
        for h in steps
    ]
    one = eye_array(cells - 1)
    phi = spsolve(
        (kron(curve[0], one) + kron(one, curve[1])).tocsc(), np.full((cells - 1) ** 2, -2.0)
    )
    return float(2.0 * phi.sum() * steps.prod())


@pytest.mark.parametrize("sides_mm", SIDES_MM[:4])
def test_stress_function_on_a_grid(agree: Agree, sides_mm: tuple[float, float]) -> None:
    """Errors of second order taken off by two grids."""
    coarse, fine = (by_stress_function(*sides_mm, cells) for cells in (32, 64))
    grid = (4.0 * fine - coarse) / 3.0
    agree(
        f"{sides_mm[0]:g} x {sides_mm[1]:g} mm by a stress function [mm4]",
        _core.torsion_constant_mm4(*sides_mm),
        grid,
        rel=2e-4,
    )


@pytest.mark.parametrize("sides_mm", SIDES_MM)
def test_roark_polynomial(agree: Agree, sides_mm: tuple[float, float]) -> None:
    a, b = 0.5 * max(sides_mm), 0.5 * min(sides_mm)
    polynomial = a * b**3 * (16.0 / 3.0 - 3.36 * b / a * (1.0 - b**4 / (12.0 * a**4)))
    agree(
        f"{sides_mm[0]:g} x {sides_mm[1]:g} mm by Roark's polynomial [mm4]",
        _core.torsion_constant_mm4(*sides_mm),
        polynomial,
        rel=5e-3,
    )


def test_either_side_may_be_called_the_width() -> None:
    assert _core.torsion_constant_mm4(3.0, 2.0) == _core.torsion_constant_mm4(2.0, 3.0)


def test_a_thin_strip_tends_to_a_third_of_its_length_times_thickness_cubed(agree: Agree) -> None:
    """J = b t^3/3 - 0.2101 t^4, the second part being what both ends lack (by the series)."""
    lacks = 1000.0 / 3.0 - _core.torsion_constant_mm4(1000.0, 1.0)
    agree("thin strip, what its ends lack [mm4]", lacks, 0.2101, abs=1e-4)
