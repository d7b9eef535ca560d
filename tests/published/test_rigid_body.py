"""Derived: a blade as a flat plate that turns, by the mechanics of a rigid body.

Plate of 80 x 18 x 2.5 mm, 7.85e-6 kg/mm3, pivot on its centre line 4 mm from one end: 28.26 g, J =
m [(L^2 + w^2)/12 + d^2] = 52.45998 kg mm2 with d = 36 mm; 20 and 50 mJ turn it at 27.6131489 and
43.6602220 rad/s. Figures evaluated to 7 and 9 digits.

A slender rod let go level, hinged at its end, passes the lowest point at sqrt(3 g/L): 4.949747
rad/s for 1.2 m and g = 9.8 m/s2. Derived; one printed answer, 3.5 rad/s, is wrong.
"""

import pytest

from agreement import Agree
from backspring import _core as core

MASS_G = 80.0 * 18.0 * 2.5 * 7.85e-3


def _inertia(mass_g: float, length_mm: float, height_mm: float, behind_pivot_mm: float) -> float:
    blade = core.BladeBody(mass_g=mass_g, length_mm=length_mm, height_mm=height_mm)
    inertia = core.inertia_kg_mm2(blade, core.Tang(half_stop_mm=behind_pivot_mm))
    assert inertia is not None
    return inertia


def test_plate_blade_inertia(agree: Agree) -> None:
    assert pytest.approx(28.26, rel=1e-12) == MASS_G
    agree(
        "inertia of a plate about the pivot [kg mm2]",
        _inertia(MASS_G, 80.0, 18.0, 4.0),
        52.45998,
        rel=1e-7,
    )


@pytest.mark.parametrize(("energy_mj", "rad_per_s"), [(20.0, 27.6131489), (50.0, 43.6602220)])
def test_plate_blade_speed(agree: Agree, energy_mj: float, rad_per_s: float) -> None:
    inertia = _inertia(MASS_G, 80.0, 18.0, 4.0)
    agree(
        f"speed of the plate with {energy_mj:g} mJ [rad/s]",
        core.angular_speed_rad_per_s(energy_mj, inertia),
        rad_per_s,
        rel=2e-9,
    )


def test_measured_inertia_goes_before_the_plate() -> None:
    blade = core.BladeBody(mass_g=MASS_G, length_mm=80.0, height_mm=18.0, inertia_kg_mm2=47.0)
    assert core.inertia_kg_mm2(blade, core.Tang(half_stop_mm=4.0)) == 47.0


def test_slender_rod_falling_about_its_end(agree: Agree) -> None:
    length_mm, mass_g, gravity_m_per_s2 = 1200.0, 250.0, 9.8
    inertia = _inertia(mass_g, length_mm, 0.0, 0.0)
    energy_mj = mass_g / 1000.0 * gravity_m_per_s2 * length_mm / 2.0
    agree(
        "speed of a falling rod [rad/s]",
        core.angular_speed_rad_per_s(energy_mj, inertia),
        4.949747,
        rel=2e-7,
    )
