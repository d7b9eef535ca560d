"""R. G. Budynas and J. K. Nisbett, Shigley's Mechanical Engineering Design, problem 3-142.

A cast-iron wheel of 3 in diameter and 1.25 in width on a cast-iron rail under 250 lbf, E 14.5e6
psi, nu 0.211. Read in a published solution and recomputed: half width 0.007095 in. The 9th
edition (its figure 3-39, read) gives the greatest shear as 0.300 p0 at 0.786 of the half width.
"""

from agreement import Agree
from backspring import _core as core

IRON = core.Elastic(youngs_modulus_mpa=14.5e6, poisson=0.211)
CONTACT = core.line_contact(250.0, 1.25, 1.5, core.contact_modulus_mpa(IRON, IRON))


def test_problem_3_142_width_and_pressure(agree: Agree) -> None:
    agree(
        "problem 3-142: half width of contact, as printed [in]",
        CONTACT.half_width_mm,
        0.007095,
        abs=5e-7,
    )
    agree(
        "problem 3-142: half width of contact [in]", CONTACT.half_width_mm, 0.0070950793, rel=1e-8
    )
    agree("problem 3-142: greatest pressure [psi]", CONTACT.peak_mpa, 17945.39, abs=5e-3)


def test_figure_3_39_greatest_shear(agree: Agree) -> None:
    agree(
        "figure 3-39: greatest shear over pressure",
        CONTACT.shear_mpa / CONTACT.peak_mpa,
        0.300,
        abs=5e-4,
    )
    agree(
        "figure 3-39: its depth over the half width",
        CONTACT.shear_depth_mm / CONTACT.half_width_mm,
        0.786,
        abs=5e-4,
    )
