"""Derived: a uniform cantilever with an end load, as in every text on strength of materials.

A small spring of 60 x 2.5 x 3 mm under 20 N with E = 207 GPa, evaluated to 10 digits, hence 1e-9;
the integrals a0 = L/(E I), a1 = L^2/(2 E I), a2 = L^3/(3 E I) and shear = L/(kappa G A) to 1e-12.
"""

import pytest

from agreement import Agree
from backspring import _core as core
from published.beam import (
    belly_stress,
    cantilever,
    peak_stress,
    tip_deflection,
    tip_slope,
    uniform,
)

LENGTH_MM, WIDTH_MM, DEPTH_MM, MODULUS_MPA, FORCE_N = 60.0, 2.5, 3.0, 207e3, 20.0
INERTIA_MM4 = 5.625
BEAM = cantilever(uniform(LENGTH_MM, DEPTH_MM), WIDTH_MM, MODULUS_MPA)


def test_deflection_and_slope(agree: Agree) -> None:
    agree("deflection at the tip [mm]", tip_deflection(BEAM, FORCE_N), 1.2367149758, rel=1e-9)
    agree("slope at the tip [rad]", tip_slope(BEAM, FORCE_N), 0.0309178744, rel=1e-8)


def test_stress_at_the_wall(agree: Agree) -> None:
    agree("stress at the wall [MPa]", belly_stress(BEAM, 0.0, FORCE_N), 320.0, rel=1e-12)
    peak = peak_stress(BEAM, FORCE_N)
    assert (peak.stress_mpa, peak.station_mm) == pytest.approx((320.0, 0.0), rel=1e-12)


def test_stored_energy(agree: Agree) -> None:
    energy_nmm = 0.5 * FORCE_N * tip_deflection(BEAM, FORCE_N)
    agree("stored energy [N mm]", energy_nmm, 12.3671498, rel=1e-8)
    volume_mm3 = LENGTH_MM * WIDTH_MM * DEPTH_MM
    assert energy_nmm == pytest.approx(320.0**2 * volume_mm3 / (18.0 * MODULUS_MPA), rel=1e-11)


@pytest.mark.parametrize("x_mm", [0.0, 13.0, 60.0, 75.0])
def test_bending_integrals(agree: Agree, x_mm: float) -> None:
    """The end's thickness goes on beyond the end, so 75 mm is no exception."""
    poisson = 0.29
    beam = cantilever(uniform(LENGTH_MM, DEPTH_MM), WIDTH_MM, MODULUS_MPA, poisson)
    found = core.bending_integrals(core.make_flexibility(beam), x_mm)
    stiffness = MODULUS_MPA * INERTIA_MM4
    shear_modulus = MODULUS_MPA / (2.0 * (1.0 + poisson))
    agree(f"integral a0 at {x_mm:g} mm [1/(N mm)]", found.a0, x_mm / stiffness, rel=1e-12)
    agree(f"integral a1 at {x_mm:g} mm [1/N]", found.a1, x_mm**2 / (2.0 * stiffness), rel=1e-12)
    agree(f"integral a2 at {x_mm:g} mm [mm/N]", found.a2, x_mm**3 / (3.0 * stiffness), rel=1e-12)
    agree(
        f"integral of shear at {x_mm:g} mm [mm/N]",
        found.shear,
        1.2 * x_mm / (shear_modulus * WIDTH_MM * DEPTH_MM),
        rel=1e-12,
    )
