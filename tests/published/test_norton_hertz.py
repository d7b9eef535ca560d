"""R. L. Norton, Machine Design, 4th ed., example 7-2: cylinder on a flat.

Printed results read: half width 0.0518 in, mean 55169, peak 70243, greatest shear
21354 psi at 0.041 in. The inputs are not printed there; 5000 lb, 0.875 in, radius 6 in, 30e6 psi
and nu 0.28 reproduce every figure. Each to its last printed digit. Norton rounds the greatest shear
to 0.304 p0; exact is 0.3003, so that one is held to 1.3 %.
"""

import pytest

from backspring import _core as core

STEEL = core.Elastic(youngs_modulus_mpa=30e6, poisson=0.28)
CONTACT = core.line_contact(5000.0, 0.875, 6.0, core.contact_modulus_mpa(STEEL, STEEL))


def test_example_7_2_width_and_pressure() -> None:
    assert CONTACT.half_width_mm == pytest.approx(0.0518, abs=5e-5)
    assert CONTACT.mean_mpa == pytest.approx(55169.0, abs=0.5)
    assert CONTACT.peak_mpa == pytest.approx(70243.0, abs=0.5)


def test_example_7_2_greatest_shear() -> None:
    assert CONTACT.shear_mpa == pytest.approx(21354.0, rel=0.013)
    assert CONTACT.shear_depth_mm == pytest.approx(0.041, abs=5e-4)
