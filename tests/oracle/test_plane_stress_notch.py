"""CalculiX, plane-stress finite elements, run here: local stress at holes, kinks and shoulders.

See plane_stress_notch.py. The limits are those that the docstrings of the closed forms state.
"""

from collections.abc import Callable

import pytest

from agreement import Agree

from .plane_stress_notch import (
    CASES,
    Row,
    even_kink,
    free_hole,
    pinned_hole,
    shoulder,
    tapered_kink,
)
from .plane_stress_notch_bar import bend
from .plane_stress_notch_shapes import kinked, with_hole

NEEDS_CALCULIX = True
LIMITS = {
    free_hole: 0.05,
    pinned_hole: 0.05,
    tapered_kink: 0.02,
    even_kink: 0.04,
    shoulder: 0.08,
}


@pytest.mark.parametrize(
    ("compare", "case"), CASES, ids=[f"{compare.__name__} {case}" for compare, case in CASES]
)
def test_closed_form_is_the_models(
    agree: Agree, compare: Callable[..., Row], case: tuple[object, ...]
) -> None:
    row = compare(*case)
    agree(f"{row.shape} [MPa]", row.form_mpa, row.model_mpa, rel=LIMITS[compare])


def test_models_reach_the_exact_small_hole() -> None:
    """Twice the nominal stress at the edge, derived; here the hole is a fiftieth of the bar."""
    thickness, diameter = 5.0, 0.1
    edge = bend(with_hole(thickness, diameter, 0.0, refine=4), thickness**3 / 12.0)
    assert edge.largest_mpa == pytest.approx(diameter, rel=0.01)
    assert edge.smallest_mpa == pytest.approx(-diameter, rel=0.01)


def test_models_bend_a_plain_bar_as_a_beam() -> None:
    """A kink of a hundredth of a degree is none."""
    edge = bend(kinked(3.0, (1e-4, -1e-4), 1000.0, (6.0, 6.0)), 9.0 / 6.0)
    assert edge.largest_mpa == pytest.approx(1.0, rel=0.002)


def test_an_outward_kink_carries_less_than_the_beam() -> None:
    outward = kinked(3.0, (-0.05, 0.05), -0.5, (6.0, 6.0))
    station, stress = outward.mesh.xy_mm[outward.edge, 0], bend(outward, 9.0 / 6.0).stress_mpa
    assert stress[abs(station).argmin()] < 1.0
