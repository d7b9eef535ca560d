"""F. P. Beer, E. R. Johnston and J. T. DeWolf, Mechanics of Materials: a curved beam.

Samples 4.10 and 4.11 (pp. 298-299), read in worked notebooks that follow the book
and recomputed. 4.10 prints stresses from rounded radii: 0.12 % off the unrounded ones.
"""

import pytest

from backspring import _core as core


def test_samples_4_10_and_4_11_curved_beam() -> None:
    section = core.make_curved_section(2.5, 1.5, 6.0 - 0.75)
    assert section.shift_mm == pytest.approx(0.031381, abs=5e-7)
    stress = core.curved_stress(section, -8.0)
    assert stress.outer_mpa == pytest.approx(7.861, rel=0.0012)
    assert stress.outer_mpa == pytest.approx(7.869502, abs=5e-7)
    assert stress.inner_mpa == pytest.approx(-9.305, abs=5e-4)
    assert stress.inner_mpa == pytest.approx(-9.305232, abs=5e-7)
