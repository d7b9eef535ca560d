"""No plan orders off what no dial tells; what stays is read as it stands."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

import backspring as bs
from backspring import _core
from backspring.cli import main

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"
TARGET_MM, DIAL_MM, GOOD_DIAL_MM = 0.0254, 0.004, 0.0025
# Readings between nothing to do and several passes.
OVER_MM = (0.001, 0.002, 0.0035, 0.005, 0.007, 0.011, 0.03)
# What is worked out twice, once from a knife changed step by step.
ROUNDING_MM = 1e-9


def planned(name: str, half_mm: float, closed_mm: float, dial_mm: float) -> bs.FitPlan:
    design = bs.load(DESIGNS / f"{name}.toml")
    square = design.core.tang.half_stop_mm is not None
    half = {"half_stop": TARGET_MM + half_mm} if square else {}
    plan = bs.fit_plan(
        design, **half, closed=TARGET_MM + closed_mm, state="loaded", repeatability=dial_mm
    )
    assert isinstance(plan, bs.FitPlan)
    return plan


def left_on(plan: bs.FitPlan) -> dict[str, float]:
    """What stands on faces, by name."""
    left = plan.result.left_standing
    on = {face: getattr(left, f"{face}_mm") for face in _core.TangFace.__members__}
    return {face: depth for face, depth in on.items() if depth}


@pytest.mark.parametrize("name", ["heron", "osprey", "kestrel"])
@pytest.mark.parametrize("dial_mm", [GOOD_DIAL_MM, DIAL_MM])
def test_no_step_is_less_than_the_dial_repeats_to(name: str, dial_mm: float) -> None:
    fewer = 0
    for half_mm in OVER_MM[1::2]:
        for closed_mm in OVER_MM:
            plan = planned(name, half_mm, closed_mm, dial_mm)
            assert all(step.remove_mm > dial_mm for step in plan.steps)
            assert all(left < dial_mm for left in left_on(plan).values())
            fewer += bool(left_on(plan))
            shown = _core.readings_in(_core.FitState.loaded, plan.result.done)
            low = min(each for each in (shown.half_stop_mm, shown.closed_mm) if each is not None)
            assert low >= TARGET_MM
            # What a pass may leave, what stays on the face, and on a kick beside it.
            assert shown.closed_mm is not None
            assert shown.closed_mm <= plan.result.aim_mm + 3.0 * dial_mm
    assert fewer


def test_readings_without_a_spread_are_planned_to_the_last() -> None:
    plan = planned("heron", 0.0015, 0.002, 0.0)
    assert not left_on(plan)
    assert 0.0 < plan.result.removed.closed_mm < GOOD_DIAL_MM
    shown = _core.readings_in(_core.FitState.loaded, plan.result.done)
    assert shown.closed_mm == pytest.approx(TARGET_MM, abs=plan.result.aim_mm - TARGET_MM + 0.0005)


def test_what_is_read_after_each_step_is_what_the_knife_then_reads() -> None:
    plan = planned("heron", 0.03, 0.0055, DIAL_MM)
    assert left_on(plan).keys() == {"closed"}
    assert [step.face.name for step in plan.steps] == ["half_stop"] * len(plan.steps)
    off = 0.0
    for number, step in enumerate(plan.steps, start=1):
        off += step.remove_mm
        knife = _core.take_off(plan.result.now, _core.FaceDepths(half_stop_mm=off))
        shown = _core.readings_in(_core.FitState.loaded, knife)
        assert step.half_stop_mm == pytest.approx(shown.half_stop_mm, abs=ROUNDING_MM)
        assert step.closed_mm == pytest.approx(shown.closed_mm, abs=ROUNDING_MM)
        assert (step.step, step.pass_number) == (number, number)
    assert plan.result.removed.half_stop_mm == pytest.approx(off)
    assert plan.result.removed.closed_mm == 0.0
    (told,) = (each for each in plan.notices if each.code == "left-standing")
    assert "left on the closed face: less than 0.004 mm" in told.message
    left = plan.to_dict()["left_standing"]
    assert left["least_mm"] == DIAL_MM
    assert left["closed_mm"] == left_on(plan)["closed"] > left["half_stop_mm"] == 0.0


def test_a_low_reading_still_takes_the_open_face_with_what_goes_with_it() -> None:
    heron = bs.load(DESIGNS / "heron.toml")
    plan = bs.fit_plan(heron, half_stop=TARGET_MM - 0.001, closed=TARGET_MM + 0.02, state="loaded")
    assert isinstance(plan, bs.FitPlan)
    assert plan.result.removed.open_mm > 0.0
    assert plan.steps[0].face.name == "open"
    shown = _core.readings_in(_core.FitState.loaded, plan.result.done)
    assert shown.half_stop_mm is not None
    assert shown.half_stop_mm >= TARGET_MM


def test_with_every_face_left_the_fit_is_done(capsys: pytest.CaptureFixture[str]) -> None:
    heron = str(DESIGNS / "heron.toml")
    words = ["fit", heron, "--half-stop", "0.030", "--closed", "0.031", "--state", "loaded"]
    assert main([*words, "--repeatability", "0.004"]) == 0
    out = capsys.readouterr().out
    assert out.startswith("Heron: nothing to grind, the fit is done\n")
    assert "left on the half-stop face and closed face: less" in " ".join(out.split())


def test_of_several_blades_each_keeps_its_own_steps() -> None:
    turnstone = bs.load(DESIGNS / "turnstone.toml")
    read: dict[str, Any] = {
        "long": {"half_stop": "0.1 mm", "closed": "0.03 mm"},
        "pen": {"closed": "0.031 mm"},
    }
    plan = bs.fit_plan(turnstone, read, state="loaded", repeatability=GOOD_DIAL_MM)
    left = {name: set(left_on(each)) for name, each in plan.blades.items()}
    assert left == {"long": {"closed"}, "pen": set()}
    assert all(step.remove_mm > GOOD_DIAL_MM for step in plan.steps)
    # What stands on the long blade's face the pen reads, too: as the knife that is done does.
    places = {name: turnstone.blades.index(name) for name in plan.blades}
    for name, each in plan.blades.items():
        last = each.steps[-1]
        seen = _core.seen_from(plan.result.done, places[name])
        shown = _core.lowest_readings(seen)
        # The other blade may have lost its last pass after this.
        assert last.closed_loaded_mm == pytest.approx(shown.closed_mm, abs=0.001)
    own = [step for step in plan.steps if step.blade == "long"]
    assert [step.remove_mm for step in own] == [s.remove_mm for s in plan.blades["long"].steps]
