"""E. P. Popov, Engineering Mechanics of Solids, example 6.10, p. 309: curved beam of 50 x 50 mm.

Read in a worked notebook that follows the book and recomputed: to all digits that it prints.
"""

import pytest

from agreement import Agree
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
    agree: Agree, mean_mm: float, neutral_mm: float, inner_mpa: float, outer_mpa: float
) -> None:
    section = core.make_curved_section(50.0, 50.0, mean_mm - 25.0)
    agree(
        f"mean radius {mean_mm:g} mm, neutral radius [mm]",
        section.neutral_radius_mm,
        neutral_mm,
        abs=6e-8,
    )
    stress = core.curved_stress(section, MOMENT_NMM)
    agree(f"mean radius {mean_mm:g} mm, inner stress [MPa]", stress.inner_mpa, inner_mpa, rel=1e-9)
    agree(f"mean radius {mean_mm:g} mm, outer stress [MPa]", stress.outer_mpa, outer_mpa, rel=1e-9)
    factors = core.curvature_factors(50.0, mean_mm - 25.0)
    agree(
        f"mean radius {mean_mm:g} mm, inner factor",
        factors.inner,
        inner_mpa / STRAIGHT_MPA,
        rel=1e-9,
    )
    agree(
        f"mean radius {mean_mm:g} mm, outer factor",
        factors.outer,
        -outer_mpa / STRAIGHT_MPA,
        rel=1e-9,
    )
