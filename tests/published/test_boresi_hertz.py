"""A. P. Boresi and R. J. Schmidt, Advanced Mechanics of Materials, example 17.3, p. 621.

Two steel cylinders of 40 mm radius and 20 mm length under 24.1 kN, 200 GPa, nu 0.29. Read in a
worked notebook that follows the book (edition not stated there): stress 1445, shear 433 MPa. The
formula gives 1447.04 (recomputed) and the book rounds the share of shear to 0.300, so printed
figures are held to 0.4 %. The octahedral shear printed, 361, is 0.25 of the pressure; the stresses
below a line contact give 0.263, so it is left out.
"""

from agreement import Agree
from backspring import _core as core

STEEL = core.Elastic(youngs_modulus_mpa=200e3, poisson=0.29)
RADIUS_MM = 1.0 / (1.0 / 40.0 + 1.0 / 40.0)
CONTACT = core.line_contact(24100.0, 20.0, RADIUS_MM, core.contact_modulus_mpa(STEEL, STEEL))


def test_example_17_3_pressure(agree: Agree) -> None:
    agree("example 17.3, greatest pressure, as printed [MPa]", CONTACT.peak_mpa, 1445.0, rel=4e-3)
    agree("example 17.3, greatest pressure [MPa]", CONTACT.peak_mpa, 1447.04, abs=5e-3)


def test_example_17_3_greatest_shear(agree: Agree) -> None:
    agree("example 17.3, greatest shear [MPa]", CONTACT.shear_mpa, 433.0, rel=4e-3)
