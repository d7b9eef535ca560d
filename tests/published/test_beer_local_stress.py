"""F. P. Beer, E. R. Johnston and J. T. DeWolf, Mechanics of Materials, samples 4.10 and 4.11, pp.
298-299: a curved beam.

Read in worked notebooks that follow the book and recomputed. 4.10 prints stresses from rounded
radii: 0.12 % off the unrounded ones.
"""

from agreement import Agree
from backspring import _core as core


def test_samples_4_10_and_4_11_curved_beam(agree: Agree) -> None:
    section = core.make_curved_section(2.5, 1.5, 6.0 - 0.75)
    agree("shift of the neutral line [in]", section.shift_mm, 0.031381, abs=5e-7)
    stress = core.curved_stress(section, -8.0)
    agree("outer stress, as printed in 4.10 [ksi]", stress.outer_mpa, 7.861, rel=0.0012)
    agree("outer stress [ksi]", stress.outer_mpa, 7.869502, abs=5e-7)
    agree("inner stress, as printed in 4.10 [ksi]", stress.inner_mpa, -9.305, abs=5e-4)
    agree("inner stress [ksi]", stress.inner_mpa, -9.305232, abs=5e-7)
