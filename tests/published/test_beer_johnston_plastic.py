"""F. P. Beer, E. R. Johnston and J. T. DeWolf, Mechanics of Materials, examples 4.05 and 4.06.

A bar 50 x 120 mm of yield strength 240 MPa and modulus 200 GPa under 36.8 kN m. Read in a worked
notebook that follows the book (pp. 260 and 262, edition not stated there) and recomputed. Printed
figures are held to half of their last digit; exact ones, where the recomputation gives them, to
rounding.
"""

import pytest

from backspring import _core as core

SECTION = core.make_plastic_section(50.0, 120.0, 200e3, 240.0)
MOMENT_NMM = 36.8e6


def test_example_4_05_yield_moment() -> None:
    assert SECTION.yield_moment_nmm == pytest.approx(28.8e6, rel=1e-14)


def test_example_4_05_elastic_core() -> None:
    assert 2.0 * core.bend_section(SECTION, MOMENT_NMM).core_mm == pytest.approx(80.0, rel=1e-12)


def test_example_4_05_radius_under_load() -> None:
    radius_m = 1e-3 / core.bend_section(SECTION, MOMENT_NMM).curvature_per_mm
    assert radius_m == pytest.approx(33.3, abs=0.05)
    assert radius_m == pytest.approx(100.0 / 3.0, rel=1e-12)


def test_example_4_06_stress_taken_off_by_unloading() -> None:
    surface = core.residual_stress(SECTION, MOMENT_NMM).surface_mpa
    assert 240.0 - surface == pytest.approx(306.7, abs=0.05)


def test_example_4_06_residual_stress() -> None:
    left = core.residual_stress(SECTION, MOMENT_NMM)
    assert left.surface_mpa == pytest.approx(-200.0 / 3.0, rel=1e-12)
    assert left.core_edge_mpa == pytest.approx(35.5, abs=0.06)  # printed cut off, not rounded
    assert left.core_edge_mpa == pytest.approx(320.0 / 9.0, rel=1e-12)


def test_example_4_06_radius_after_unloading() -> None:
    residual = core.residual_curvature_per_mm(SECTION, MOMENT_NMM)
    assert 1e-3 / residual == pytest.approx(225.0, rel=1e-11)
