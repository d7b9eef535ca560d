"""F. P. Beer, E. R. Johnston and J. T. DeWolf, Mechanics of Materials, examples 4.05 (p. 260) and
4.06 (p. 262).

A bar 50 x 120 mm of yield strength 240 MPa and modulus 200 GPa under 36.8 kN m. Read in a worked
notebook that follows the book (edition not stated there) and recomputed. Printed figures are held
to half of their last digit; exact ones, where the recomputation gives them, to rounding.
"""

from agreement import Agree
from backspring import _core as core

SECTION = core.make_plastic_section(50.0, 120.0, 200e3, 240.0)
MOMENT_NMM = 36.8e6


def test_example_4_05_yield_moment(agree: Agree) -> None:
    agree("example 4.05, yield moment [N mm]", SECTION.yield_moment_nmm, 28.8e6, rel=1e-14)


def test_example_4_05_elastic_core(agree: Agree) -> None:
    agree(
        "example 4.05, depth that stays elastic [mm]",
        2.0 * core.bend_section(SECTION, MOMENT_NMM).core_mm,
        80.0,
        rel=1e-12,
    )


def test_example_4_05_radius_under_load(agree: Agree) -> None:
    radius_m = 1e-3 / core.bend_section(SECTION, MOMENT_NMM).curvature_per_mm
    agree("example 4.05, radius under load, as printed [m]", radius_m, 33.3, abs=0.05)
    agree("example 4.05, radius under load [m]", radius_m, 100.0 / 3.0, rel=1e-12)


def test_example_4_06_stress_taken_off_by_unloading(agree: Agree) -> None:
    surface = core.residual_stress(SECTION, MOMENT_NMM).surface_mpa
    agree("example 4.06, stress taken off [MPa]", 240.0 - surface, 306.7, abs=0.05)


def test_example_4_06_residual_stress(agree: Agree) -> None:
    left = core.residual_stress(SECTION, MOMENT_NMM)
    agree(
        "example 4.06, stress left at the surface [MPa]", left.surface_mpa, -200.0 / 3.0, rel=1e-12
    )
    agree(
        "example 4.06, stress left at the core, as printed [MPa]",
        left.core_edge_mpa,
        35.5,
        abs=0.06,
    )  # printed cut off, not rounded
    agree("example 4.06, stress left at the core [MPa]", left.core_edge_mpa, 320.0 / 9.0, rel=1e-12)


def test_example_4_06_radius_after_unloading(agree: Agree) -> None:
    residual = core.residual_curvature_per_mm(SECTION, MOMENT_NMM)
    agree("example 4.06, radius after unloading [m]", 1e-3 / residual, 225.0, rel=1e-11)
