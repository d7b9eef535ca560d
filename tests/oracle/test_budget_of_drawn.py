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
# A peak of pull lies between two degrees.
MISSED = ["two pins without holes 8"]


def peak_nmm(design: bs.Design, step_deg: float) -> float:
    checked = bs.check(design, step_deg)
    assert isinstance(checked, bs.Check)
    return max((stroke.peak_torque_nmm for stroke in checked.strokes), default=math.nan)


def test_every_drawn_design_has_a_budget_of_numbers() -> None:
    for design in DRAWN.values():
        for row in budget_data(error_budget(design))["budget"]:
            numbers = [value for value in row.values() if isinstance(value, float)]
            assert numbers
            assert all(map(math.isfinite, numbers))
            assert row["settled_by"] in SETTLED_BY.values()


@pytest.mark.parametrize("label", [*MISSED, *list(DRAWN)[:8]])
def test_a_peak_between_two_degrees_is_told_by_the_solvers_row(label: str) -> None:
    design = DRAWN[label]
    row = next(each for each in error_budget(design).rows if each.effect == "solver")
    # Pull goes with torque where friction is left out, as it is in these.
    off = abs(peak_nmm(design, 0.25) / peak_nmm(design, 1.0) - 1.0)
    assert row.pull_high_share == pytest.approx(off, abs=1e-12)
    assert (row.settled_by == "closer-grid") is (label in MISSED)
