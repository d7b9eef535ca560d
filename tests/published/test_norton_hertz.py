"""R. L. Norton, Machine Design, 4th ed., example 7-2: cylinder on a flat.

Printed results read: half width 0.0518 in, mean 55169, peak 70243, greatest shear
21354 psi at 0.041 in. The inputs are not printed there; 5000 lb, 0.875 in, radius 6 in, 30e6 psi
and nu 0.28 reproduce every figure. Each to its last printed digit. Norton rounds the greatest shear
to 0.304 p0; exact is 0.3003, so that one is held to 1.3 %.
"""

from agreement import Agree
from backspring import _core as core

STEEL = core.Elastic(youngs_modulus_mpa=30e6, poisson=0.28)
CONTACT = core.line_contact(5000.0, 0.875, 6.0, core.contact_modulus_mpa(STEEL, STEEL))


def test_example_7_2_width_and_pressure(agree: Agree) -> None:
    agree("example 7-2, half width of contact [in]", CONTACT.half_width_mm, 0.0518, abs=5e-5)
    agree("example 7-2, mean pressure [psi]", CONTACT.mean_mpa, 55169.0, abs=0.5)
    agree("example 7-2, greatest pressure [psi]", CONTACT.peak_mpa, 70243.0, abs=0.5)


def test_example_7_2_greatest_shear(agree: Agree) -> None:
    agree("example 7-2, greatest shear [psi]", CONTACT.shear_mpa, 21354.0, rel=0.013)
    agree("example 7-2, depth of the greatest shear [in]", CONTACT.shear_depth_mm, 0.041, abs=5e-4)
