"""The budget of designs drawn by rule: always there, finite, and its solver's row is true."""

from __future__ import annotations

import math

import pytest

import backspring as bs
from backspring.question.budget import error_budget
from backspring.report.budget import SETTLED_BY, budget_data
from oracle.designs import generated_designs

DRAWN = {
    label: bs.Design(
        name="drawn",
        spring=design["spring"] | {"steel": "O1", "hardness": 45},
        tang=design["tang"],
        fit=design["fit"],
    )
    for label, design in generated_designs(150, 11)
    if not isinstance(design["spring"].get("support"), dict)
}
# Its pull peaks where the pad's edge comes to bear, between two degrees.
CUSPED = "two pins without holes 8"


def test_every_drawn_design_has_a_budget_of_numbers() -> None:
    for design in DRAWN.values():
        for row in budget_data(error_budget(design))["budget"]:
            numbers = [value for value in row.values() if isinstance(value, float)]
            assert numbers
            assert all(map(math.isfinite, numbers))
            assert row["settled_by"] in SETTLED_BY.values()


@pytest.mark.parametrize("label", [CUSPED, *list(DRAWN)[:8]])
def test_a_peak_is_the_greatest_of_a_fine_sweep_and_found_again(label: str) -> None:
    design = DRAWN[label]
    row = next(each for each in error_budget(design).rows if each.effect == "solver")
    assert row.pull_high_share == pytest.approx(0.0, abs=1e-9)
    checked = bs.check(design)
    assert isinstance(checked, bs.Check)
    for stroke in checked.strokes:
        swept = bs.sweep(design, 0.01, stroke.from_deg, stroke.to_deg).opening_torque_nmm.max()
        assert swept <= stroke.peak_torque_nmm * (1.0 + 1e-9)
        # A cusp between two of its steps is as much steeper than the rest.
        assert swept == pytest.approx(stroke.peak_torque_nmm, rel=1e-3)
