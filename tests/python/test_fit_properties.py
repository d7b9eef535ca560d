"""Fitting by the plan: from any start to the target, proud all the way, with and without noise.

The bench is the model itself with a tang the plan is not told of; what comes off cannot go back.
"""

from __future__ import annotations

import itertools
from pathlib import Path

import numpy as np
import pytest

import backspring as bs
from backspring import _core

EVERY = [
    bs.load(path)
    for path in sorted((Path(__file__).resolve().parents[2] / "data" / "designs").glob("*.toml"))
]
DESIGNS = [design for design in EVERY if len(design.blades) == 1]
TARGET_MM = 0.0254
STARTS = 500
PASSES = 6
SPREAD_MM = 0.005
STATES = (_core.FitState.loaded, _core.FitState.unloaded)


def varied(design: bs.Design, rng: np.random.Generator) -> _core.Design:
    """A design of its own: a demo design with another thickness and another preload."""
    back = _core.Cut(face=_core.GrindFace.back, depth_mm=rng.uniform(0.0, 0.4))
    preload_mm = design.core.fit.preload_mm
    pad = _core.Cut(face=_core.GrindFace.pad, depth_mm=rng.uniform(0.0, 0.4) * preload_mm)
    return _core.grind(_core.grind(design.core, back), pad)


class Bench:
    """One knife: it can be read and ground, and nothing else."""

    def __init__(self, design: bs.Design, rng: np.random.Generator, spread_mm: float) -> None:
        self.drawn, self.rng, self.spread_mm = varied(design, rng), rng, spread_mm
        proud = TARGET_MM + rng.uniform(0.0, 1.0, 2)
        square = self.drawn.tang.half_stop_mm is not None
        start = _core.Measured(half_stop_mm=proud[0] if square else None, closed_mm=proud[1])
        self.knife = _core.as_measured(self.drawn, start)
        # A round end is turned before the fitting and stays: the planner knows its radius.
        self.drawn = self.drawn if square else self.knife
        self.lowest_mm = np.inf

    def true_mm(self) -> list[float]:
        """Loaded readings above the target."""
        loaded = _core.fit_readings(self.knife).loaded
        both = (loaded.half_stop_mm, loaded.closed_mm)
        return [each - TARGET_MM for each in both if each is not None]

    def read(self, state: _core.FitState) -> _core.Measured:
        both = _core.fit_readings(self.knife)
        shown = both.loaded if state == _core.FitState.loaded else both.unloaded
        assert shown.closed_mm is not None
        half = shown.half_stop_mm
        return _core.Measured(
            state=state,
            half_stop_mm=None if half is None else half + self.rng.normal(0.0, self.spread_mm),
            closed_mm=shown.closed_mm + self.rng.normal(0.0, self.spread_mm),
        )

    def grind(self, steps: list[_core.FitStep]) -> None:
        """Grind one pass."""
        for step in steps:
            off = _core.FaceDepths(**{f"{step.face.name}_mm": step.remove_mm})
            self.knife = _core.take_off(self.knife, off)
        self.lowest_mm = min(self.lowest_mm, *self.true_mm())


def first_pass(steps: list[_core.FitStep]) -> list[_core.FitStep]:
    return [step for step in steps if step.pass_number == 1]


def fit(bench: Bench, state: _core.FitState) -> int:
    """Measure, plan, grind one pass, and again; returns the passes it took."""
    rules = _core.PlanRules(target_mm=TARGET_MM, repeatability_mm=bench.spread_mm)
    for count in range(PASSES):
        now = _core.as_measured(bench.drawn, bench.read(state))
        steps = first_pass(_core.fit_plan(now, state, rules).steps)
        if not steps:
            return count
        bench.grind(steps)
    return PASSES


@pytest.mark.parametrize("state", STATES, ids=lambda state: state.name)
def test_from_any_start_to_the_target_in_six_passes_and_never_below(
    state: _core.FitState,
) -> None:
    rng = np.random.default_rng(5)
    for _, design in zip(range(STARTS // 2), itertools.cycle(DESIGNS), strict=False):
        bench = Bench(design, rng, 0.0)
        fit(bench, state)
        assert bench.lowest_mm >= 0.0, design.name
        assert all(0.0 <= each <= 0.002 for each in bench.true_mm()), design.name


@pytest.mark.parametrize("state", STATES, ids=lambda state: state.name)
def test_with_noise_no_pass_ends_two_deviations_low_and_all_end_within_four(
    state: _core.FitState,
) -> None:
    rng = np.random.default_rng(6)
    for _, design in zip(range(STARTS // 2), itertools.cycle(DESIGNS), strict=False):
        bench = Bench(design, rng, SPREAD_MM)
        fit(bench, state)
        assert bench.lowest_mm >= -2.0 * SPREAD_MM, design.name
        assert all(abs(each) <= 4.0 * SPREAD_MM for each in bench.true_mm()), design.name


@pytest.mark.parametrize("design", DESIGNS, ids=lambda design: design.name)
def test_a_whole_plan_carried_out_without_measuring_reads_as_it_says(design: bs.Design) -> None:
    square = design.core.tang.half_stop_mm is not None
    read = {"closed": 0.4, "half_stop": 0.6 if square else None}
    plan = bs.fit_plan(design, state="unloaded", **read)
    knife = plan.result.now
    for step in plan.steps:
        off = _core.FaceDepths(**{f"{step.face.name}_mm": step.remove_mm})
        knife = _core.take_off(knife, off)
        both = _core.fit_readings(knife)
        assert step.closed_mm == pytest.approx(both.unloaded.closed_mm, abs=1e-9)
        assert step.closed_loaded_mm == pytest.approx(both.loaded.closed_mm, abs=1e-9)
        assert step.half_stop_mm == pytest.approx(both.unloaded.half_stop_mm, abs=1e-9)
    assert plan.steps[-1].closed_loaded_mm == pytest.approx(plan.result.aim_mm, abs=1e-4)


@pytest.mark.parametrize("closed_by", ["least", "closed", "kick", "level"])
def test_a_kick_can_be_fitted_every_way(closed_by: str) -> None:
    """Osprey's kick carries the closed blade; 0.06 mm proud is within what its kick can lose."""
    osprey = next(design for design in DESIGNS if design.name == "Osprey")
    plan = bs.fit_plan(osprey, half_stop=0.06, closed=0.06, state="loaded", closed_by=closed_by)
    assert plan.steps[-1].closed_mm == pytest.approx(plan.result.aim_mm, abs=1e-4)
    tip_mm = plan.steps[-1].tip_mm
    assert tip_mm is not None
    wanted = {"closed": tip_mm > 0.05, "kick": tip_mm < -0.05, "level": abs(tip_mm) < 0.01}
    assert wanted.get(closed_by, True)


def test_two_facts_of_the_bench_come_out_of_an_ordinary_design() -> None:
    """Common practice, no source: makers leave 0.004 to 0.005 in unloaded; loading takes 0.002 to
    0.003 in of it; within 0.001 in of open is done, and proud is better than low.

    The design is Heron as it stands, held fast at the middle pin as on a fixture. Loading takes
    2.8 thou. For 1 thou proud when loaded it leaves 3.8 thou, for 2 thou 4.8: so 4 to 5 thou left
    end between 1.2 and 2.2 thou proud, and the last thou comes off when loaded.
    """
    heron = next(design for design in DESIGNS if design.name == "Heron")
    left = {thou: bs.allowance(heron, f"{thou} thou", support="clamped") for thou in (1, 2)}
    for thou, each in left.items():
        assert each.half_stop_mm is not None
        for unloaded_mm in (each.half_stop_mm, each.closed_mm):
            unloaded = unloaded_mm / 0.0254
            assert 2.0 <= unloaded - thou <= 3.0
            assert unloaded - thou == pytest.approx(2.8, abs=0.05)
    assert left[1].closed_mm / 0.0254 < 4.0 < left[2].closed_mm / 0.0254 < 5.0


def test_allowance_moves_with_preload_and_hardly_with_thickness() -> None:
    """A held strip bent by a given distance has one shape whatever its thickness: beam theory."""
    from backspring.fit.plan import allowance_table

    heron = next(design for design in DESIGNS if design.name == "Heron")
    by_preload = [row.closed_mm for row in allowance_table(heron, "preload", (0.7, 1.0, 1.3))]
    assert by_preload == sorted(by_preload)
    assert by_preload[2] - by_preload[0] > 0.02
    by_thickness = [row.closed_mm for row in allowance_table(heron, "thickness", (0.8, 1.0, 1.2))]
    assert max(by_thickness) - min(by_thickness) < 0.002
