"""E. P. Popov, Engineering Mechanics of Solids, example 6.10, p. 309: curved beam of 50 x 50 mm.

Read in a worked notebook that follows the book and recomputed: to all digits that it prints.
"""

import pytest

from backspring import _core as core

MOMENT_NMM = 2_083_000.0
STRAIGHT_MPA = 99.984


@pytest.mark.parametrize(
    ("mean_mm", "neutral_mm", "inner_mpa", "outer_mpa"),
    [
        (250.0, 249.1644327, 107.093207632, -93.6813516989),
        (75.0, 72.1347520, 128.733538525, -81.0307692623),
    ],
)
def test_example_6_10(
    mean_mm: float, neutral_mm: float, inner_mpa: float, outer_mpa: float
) -> None:
    section = core.make_curved_section(50.0, 50.0, mean_mm - 25.0)
    assert section.neutral_radius_mm == pytest.approx(neutral_mm, abs=6e-8)
    stress = core.curved_stress(section, MOMENT_NMM)
    assert stress.inner_mpa == pytest.approx(inner_mpa, rel=1e-9)
    assert stress.outer_mpa == pytest.approx(outer_mpa, rel=1e-9)
    factors = core.curvature_factors(50.0, mean_mm - 25.0)
    assert factors.inner == pytest.approx(inner_mpa / STRAIGHT_MPA, rel=1e-9)
    assert factors.outer == pytest.approx(-outer_mpa / STRAIGHT_MPA, rel=1e-9)
