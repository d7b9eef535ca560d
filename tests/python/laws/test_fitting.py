"""A plan that is carried out ends where it says, and an allowance left comes out at the target."""

from __future__ import annotations

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

import backspring as bs
from backspring import _core
from law_designs import ONE, designs

PROUD = st.floats(0.02, 0.3)
TARGET = st.floats(0.0, 0.03)
# The core aims to 0.0001 mm, a fortieth of what a dial shows. Less than 0.0005 mm off a closed
# face, or a kick, it leaves standing: nobody grinds that.
AIM_MM, STANDING_MM = 1e-4, 5e-4


def read(core: _core.Design) -> _core.FitReadings:
    found = _core.fit_readings(core)
    assume(found.loaded.closed_mm is not None and found.unloaded.closed_mm is not None)
    assume((found.loaded.half_stop_mm is None) == (core.tang.half_stop_mm is None))
    return found


@given(designs(kinds=(ONE,)), PROUD, PROUD, TARGET, st.sampled_from(("loaded", "unloaded")))
def test_a_plan_carried_out_reads_as_it_says(
    design: bs.Design, half_mm: float, closed_mm: float, target_mm: float, state: str
) -> None:
    read(design.core)
    square = design.core.tang.half_stop_mm is not None
    try:
        plan = bs.fit_plan(
            design, half_stop=half_mm if square else None, closed=closed_mm,
            state=state, target=target_mm,
        )  # fmt: skip
    except bs.NoConvergence:
        assume(False)
        raise
    knife = plan.result.now
    for step in plan.steps:
        off = _core.FaceDepths(**{f"{step.face.name}_mm": step.remove_mm})
        knife = _core.take_off(knife, off)
        both = _core.fit_readings(knife)
        shown = both.loaded if state == "loaded" else both.unloaded
        assert shown.closed_mm == pytest.approx(step.closed_mm, abs=1e-8)
        assert both.loaded.closed_mm == pytest.approx(step.closed_loaded_mm, abs=1e-8)
        if square:
            assert shown.half_stop_mm == pytest.approx(step.half_stop_mm, abs=1e-8)
    if plan.steps and not any(step.face.name == "open" for step in plan.steps):
        # What stood lower than the aim cannot be brought up.
        least = min(plan.result.aim_mm, plan.result.closed_loaded_mm)
        ends = plan.steps[-1].closed_loaded_mm
        standing = STANDING_MM * (1 if design.core.tang.kick is None else 2)
        assert least - AIM_MM <= ends <= plan.result.aim_mm + standing + AIM_MM


@given(designs(kinds=(ONE,), kick=False), TARGET)
def test_what_is_left_unloaded_comes_out_loaded_and_the_other_way(
    design: bs.Design, target_mm: float
) -> None:
    """Without a kick: with one a reading does not tell how much is nose and how much is face."""
    read(design.core)
    square = design.core.tang.half_stop_mm is not None
    try:
        left = bs.allowance(design, target_mm)
    except bs.NoConvergence:
        assume(False)
        raise
    half = left.half_stop_mm
    for state, half_mm, closed_mm in (
        (_core.FitState.unloaded, half, left.closed_mm),
        (_core.FitState.loaded, target_mm if square else None, target_mm),
    ):
        shown = _core.Measured(state=state, half_stop_mm=half_mm, closed_mm=closed_mm)
        both = read(_core.as_measured(design.core, shown))
        assert both.loaded.closed_mm == pytest.approx(target_mm, abs=1e-6)
        assert both.unloaded.closed_mm == pytest.approx(left.closed_mm, abs=1e-6)
        if square:
            assert both.loaded.half_stop_mm == pytest.approx(target_mm, abs=1e-6)
            assert both.unloaded.half_stop_mm == pytest.approx(half, abs=1e-6)
