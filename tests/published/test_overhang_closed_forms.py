"""Derived: a beam that overhangs two pins, loaded at its end, the support of a backspring.

By the unit-load theorem (the bending part of a uniform beam is also in every beam table): tip P a^2
(L + a)/(3 E I) + P a (1 + a/L)/(kappa G A); slope at the near pin P a L/(3 E I); slope of the tip P
a (2 L + 3 a)/(6 E I); reactions P a/L and P (L + a)/L. A tapering overhang brings in K(n) of
test_slocum_taper.py for bending and ln(h0/h1)/(h0 - h1) for shear. Figures evaluated to 10 digits,
hence 1e-9, forms worked out in the test held to 1e-10.
"""

from math import log

import pytest

from agreement import Agree
from backspring import _core as core
from published.beam import (
    belly_stress,
    overhang,
    peak_stress,
    slope,
    tip_deflection,
    tip_slope,
    uniform,
)
from stations import stations

SPAN_MM, REACH_MM, FORCE_N = 25.0, 40.0, 30.0
WIDTH_MM, DEPTH_MM, MODULUS_MPA, SHEAR_MODULUS_MPA = 2.5, 3.5, 207e3, 80e3
POISSON = MODULUS_MPA / (2.0 * SHEAR_MODULUS_MPA) - 1.0
KAPPA_G_B = 5.0 / 6.0 * SHEAR_MODULUS_MPA * WIDTH_MM

EVEN = [(-SPAN_MM, DEPTH_MM), *uniform(REACH_MM, DEPTH_MM)]
BENDING_ONLY = overhang(EVEN, WIDTH_MM, MODULUS_MPA, SPAN_MM)
WITH_SHEAR = overhang(EVEN, WIDTH_MM, MODULUS_MPA, SPAN_MM, POISSON)
LOADS = [core.Load(x_mm=REACH_MM, force_n=FORCE_N)]


def test_deflection_by_bending(agree: Agree) -> None:
    agree(
        "deflection at the tip, bending alone [mm]",
        tip_deflection(BENDING_ONLY, FORCE_N),
        0.5624709511,
        rel=1e-9,
    )


def test_share_of_the_span_and_of_the_overhang(agree: Agree) -> None:
    flexibility = core.make_flexibility(BENDING_ONLY)
    by_rotation = FORCE_N * REACH_MM**2 * flexibility.root_rotation_rad_per_nmm
    integrals = core.bending_integrals(flexibility, REACH_MM)
    of_overhang = FORCE_N * (
        REACH_MM**2 * integrals.a0 - 2.0 * REACH_MM * integrals.a1 + integrals.a2
    )
    agree("the span's share of it [mm]", by_rotation, 0.2163349812, rel=1e-9)
    agree("the overhang's share of it [mm]", of_overhang, 0.3461359699, rel=1e-9)


def test_shear_adds_its_closed_form(agree: Agree) -> None:
    shear = tip_deflection(WITH_SHEAR, FORCE_N) - tip_deflection(BENDING_ONLY, FORCE_N)
    agree("what shear adds [mm]", shear, 0.0053485714, rel=1e-8)


def test_slopes(agree: Agree) -> None:
    agree(
        "slope at the near pin [rad]",
        slope(BENDING_ONLY, 0.0, REACH_MM, FORCE_N),
        0.0054083745,
        rel=1e-8,
    )
    agree("slope at the tip [rad]", tip_slope(BENDING_ONLY, FORCE_N), 0.0183884734, rel=1e-8)


def test_slope_under_the_force_takes_half_the_jump_of_shear(agree: Agree) -> None:
    shear_angle = FORCE_N / (KAPPA_G_B * DEPTH_MM)
    extra = tip_slope(WITH_SHEAR, FORCE_N) - tip_slope(BENDING_ONLY, FORCE_N)
    agree(
        "what shear adds to the slope at the tip [rad]",
        extra,
        shear_angle * (REACH_MM / SPAN_MM + 0.5),
        rel=1e-10,
    )


def test_reactions() -> None:
    pins = core.pin_forces(WITH_SHEAR, LOADS)
    assert (pins.rear_n, pins.middle_n) == pytest.approx((48.0, 78.0), rel=1e-12)


def test_stress_at_the_near_pin(agree: Agree) -> None:
    agree(
        "stress at the near pin [MPa]", belly_stress(WITH_SHEAR, 0.0, FORCE_N), 235.102041, rel=1e-8
    )
    peak = peak_stress(WITH_SHEAR, FORCE_N)
    agree("greatest stress [MPa]", peak.stress_mpa, 235.102041, rel=1e-8)
    assert peak.station_mm == 0.0


def test_moment_falls_in_a_straight_line_on_both_sides_of_the_near_pin() -> None:
    stations = [-25.0, -10.0, 0.0, 10.0, 40.0]
    moments = [core.bending_moment_nmm(WITH_SHEAR, LOADS, x) for x in stations]
    assert moments == pytest.approx([0.0, 720.0, 1200.0, 900.0, 0.0], rel=1e-12, abs=1e-12)


@pytest.mark.parametrize(
    ("tip_depth_mm", "sinks_mm"), [(1.75, 0.7824515516), (0.875, 1.0902451983)]
)
def test_tapering_overhang(agree: Agree, tip_depth_mm: float, sinks_mm: float) -> None:
    tapering = [(-SPAN_MM, DEPTH_MM), (0.0, DEPTH_MM), (REACH_MM, tip_depth_mm)]
    bending_only = overhang(tapering, WIDTH_MM, MODULUS_MPA, SPAN_MM)
    with_shear = overhang(tapering, WIDTH_MM, MODULUS_MPA, SPAN_MM, POISSON)
    agree(
        f"taper to {tip_depth_mm:g} mm, deflection at the tip [mm]",
        tip_deflection(bending_only, FORCE_N),
        sinks_mm,
        rel=1e-9,
    )
    of_span = (REACH_MM / SPAN_MM) ** 2 * SPAN_MM / DEPTH_MM
    of_overhang = REACH_MM * log(DEPTH_MM / tip_depth_mm) / (DEPTH_MM - tip_depth_mm)
    shear = tip_deflection(with_shear, FORCE_N) - tip_deflection(bending_only, FORCE_N)
    agree(
        f"taper to {tip_depth_mm:g} mm, what shear adds [mm]",
        shear,
        FORCE_N * (of_span + of_overhang) / KAPPA_G_B,
        rel=1e-9,
    )


def test_span_of_another_depth(agree: Agree) -> None:
    """P a^2 L/(3 E I_span) + P a^3/(3 E I_overhang), with a step at the near pin."""
    stepped = [(-SPAN_MM, 4.5), (0.0, 4.5), (0.0, 3.0), (REACH_MM, 3.0)]
    of_span = REACH_MM**2 * SPAN_MM / 4.5**3
    of_overhang = REACH_MM**3 / 3.0**3
    expected = 4.0 * FORCE_N * (of_span + of_overhang) / (MODULUS_MPA * WIDTH_MM)
    beam = overhang(stepped, WIDTH_MM, MODULUS_MPA, SPAN_MM)
    agree(
        "span of another depth, deflection at the tip [mm]",
        tip_deflection(beam, FORCE_N),
        expected,
        rel=1e-10,
    )


def test_span_turned_into_a_root_stiffness(agree: Agree) -> None:
    """A uniform span resists rotation at its near pin with 3 E I/L."""
    inertia = WIDTH_MM * DEPTH_MM**3 / 12.0
    root = core.Support(
        kind=core.SupportKind.root_stiffness,
        root_stiffness_nmm_per_rad=3.0 * MODULUS_MPA * inertia / SPAN_MM,
    )
    beam = core.Spring(
        thickness=stations(EVEN),
        width_mm=WIDTH_MM,
        support=root,
        elastic=BENDING_ONLY.elastic,
    )
    agree(
        "span as a root stiffness, deflection at the tip [mm]",
        tip_deflection(beam, FORCE_N),
        0.5624709511,
        rel=1e-9,
    )
