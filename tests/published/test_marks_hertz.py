"""T. H. Brown, Marks' Calculations for Machine Design, p. 146: wheel on a rail.

A wheel of 36 in, 4 in wide, under 32500 lb with nu 0.3 and 30e6 psi: half width of contact printed
as 0.11 in; in SI 147.5 kN, 1 m, 0.1 m and 210 GPa: 0.28 cm. Read and recomputed; tolerance is half
of the last digit, and for the SI figure, which is cut off and not rounded, all of it.
"""

from agreement import Agree
from backspring import _core as core


def half_width(force: float, length: float, radius: float, modulus: float) -> float:
    steel = core.Elastic(youngs_modulus_mpa=modulus, poisson=0.3)
    shared = core.contact_modulus_mpa(steel, steel)
    return core.line_contact(force, length, radius, shared).half_width_mm


def test_wheel_in_customary_units(agree: Agree) -> None:
    agree("half width of contact [in]", half_width(32500.0, 4.0, 18.0, 30e6), 0.11, abs=5e-3)


def test_wheel_in_si_units(agree: Agree) -> None:
    width_m = half_width(147.5e3, 0.1, 0.5, 210e9)
    agree("half width of contact in SI units [cm]", 100.0 * width_m, 0.28, abs=1e-2)
