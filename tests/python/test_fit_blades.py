"""Several blades on one spring: allowances and plan together, at the command line too."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

import backspring as bs
from backspring import _core
from backspring.cli import main
from backspring.core_record import changed

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"
PATH = str(DESIGNS / "turnstone.toml")
TURNSTONE, SANDERLING = (bs.load(DESIGNS / f"{n}.toml") for n in ("turnstone", "sanderling"))
READ = {
    "long": {"half_stop": "0.3 mm", "closed": "0.25 mm"},
    "pen": {"closed": ["0.199 mm", "0.201 mm"]},
}


def test_a_low_reading_beside_another_blade_is_never_called_done(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    sanderling, log = str(DESIGNS / "sanderling.toml"), str(tmp_path / "log.csv")
    words = ["fit", sanderling, "--log", log, "--blade", "clip", "--state", "unloaded"]
    assert main([*words, "--half-stop", "0.138 mm", "--closed", "0.23 mm"]) == 0
    # Each bears the spring beside the other: what one alone tells takes too much off it.
    assert capsys.readouterr().out.startswith("Sanderling: logged; read sheep, too, then a plan")
    other = [*words[:5], "sheep", *words[6:], "--half-stop", "0.06 mm", "--closed", "0.06 mm"]
    assert main(other) == 0
    capsys.readouterr()
    low = ["--half-stop", "0.138 mm", "--closed", "-0.076 mm"]
    assert main([*words, "--ground", "closed", *low]) == 1
    shown = capsys.readouterr().out
    assert "NOT done, and no plan: clip, half-stop, 0." in shown
    assert "the fit is done" not in shown and "as wanted" not in shown


def test_a_depth_that_no_tang_could_lose_is_not_written(
    capsys: pytest.CaptureFixture[str],
) -> None:
    low = [f"{name}: {value}" for name in ("clip", "sheep") for value in ("0.1 mm",)]
    words = [word for each in low for word in ("--half-stop", each, "--closed", each)]
    words[3] = "clip: -0.1 mm"
    asked = ["fit", str(DESIGNS / "sanderling.toml"), *words, "--state", "unloaded"]
    assert main(asked) == 3
    assert capsys.readouterr().err == (
        "no plan: the open face would have to lose more than the 0.750 mm it has left: "
        "a reading is low, and only lowering open would raise it\n"
    )


def answered(words: list[str], capsys: pytest.CaptureFixture[str], code: int = 0) -> dict[str, Any]:
    assert main([*words, "--json"]) == code
    data: dict[str, Any] = json.loads(capsys.readouterr().out)["data"]
    return data


@pytest.mark.parametrize("design", [TURNSTONE, SANDERLING], ids=["both ends", "one pin"])
def test_allowances_of_all_blades_are_fitted_together(design: bs.Design) -> None:
    left = bs.allowance(design, target="0.02 mm")
    tangs = zip(design.core.blades, left.blades.values(), strict=True)
    fitted = changed(design.core, blades=[changed(b, tang=each.result.tang) for b, each in tangs])
    for place, (name, each) in enumerate(left.blades.items()):
        seen = _core.seen_from(fitted, place)
        lowest = _core.lowest_readings(seen)
        assert lowest.closed_mm == pytest.approx(0.02, abs=1e-7)
        assert lowest.half_stop_mm in (None, pytest.approx(0.02, abs=1e-7))
        unloaded = _core.readings_in(_core.FitState.unloaded, seen)
        assert each.closed_mm == pytest.approx(unloaded.closed_mm, abs=1e-9)
        assert left.to_dict()["blades"][name]["allowance"]["closed_mm"] == each.closed_mm


def test_steps_of_a_plan_name_their_blade(capsys: pytest.CaptureFixture[str]) -> None:
    plan = bs.fit_plan(TURNSTONE, READ, state="loaded")
    assert {step.blade for step in plan.steps} == {"long", "pen"}
    words = ["fit", PATH, "--state", "loaded", "--half-stop", "long: 0.3", "--closed", "long: 0.25"]
    data = answered([*words, "--closed", "pen:0.199", "--closed", "pen: 0.201"], capsys)
    assert data == json.loads(json.dumps(plan.to_dict()))
    assert [row["blade"] for row in data["plan"]] == [step.blade for step in plan.steps]
    for name, each in plan.blades.items():
        own = [step for step in plan.steps if step.blade == name]
        assert [step.remove_mm for step in own] == [step.remove_mm for step in each.steps]
        removed = sum(step.remove_mm for step in own if step.face.name == "closed")
        assert each.result.removed.closed_mm == pytest.approx(removed, abs=1e-12)
    assert "first take" in plan.report()
    assert all(row["blades"].keys() == {"long", "pen"} for row in data["moves"])


def test_a_blade_is_planned_alone_when_it_is_chosen(capsys: pytest.CaptureFixture[str]) -> None:
    data = answered(["fit", PATH, "--blade", "pen", "--closed", "0.2", "--state", "loaded"], capsys)
    alone = bs.fit_plan(TURNSTONE.seen_from("pen"), closed="0.2 mm", state="loaded")
    assert data == json.loads(json.dumps(alone.to_dict()))
    both = bs.fit_plan(TURNSTONE, {"pen": {"closed": "0.2 mm"}}, state="loaded")
    assert [s.remove_mm for s in both.steps] == [s.remove_mm for s in alone.steps]


def test_without_readings_every_blade_has_its_allowance(capsys: pytest.CaptureFixture[str]) -> None:
    data = answered(["fit", PATH], capsys)
    left = bs.allowance(TURNSTONE)
    assert {n: each["allowance"]["closed_mm"] for n, each in data["blades"].items()} == {
        name: each.closed_mm for name, each in left.blades.items()
    }


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (["--closed", "0.1"], 'closed: say whose, as "NAME: READING", of long, pen; or --blade'),
        (["--closed", "pin: 0.1"], 'no blade is called "pin": known are long, pen'),
        (["--closed", "long: 0.1"], "half_stop: missing: this tang has a half-stop"),
        (["--closed", "pen: 0.1", "--half-stop", "pen: 0.1"], "this tang has no half-stop"),
        (["--closed", "pen: 9"], "closed: must be"),
    ],
)
def test_readings_that_no_blade_can_have_are_refused(
    words: list[str], told: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["fit", PATH, "--state", "loaded", *words]) == 2
    assert told in capsys.readouterr().err


def test_a_plan_of_several_blades_asks_whose_readings_they_are() -> None:
    with pytest.raises(bs.InvalidInput, match="say whose readings these are: this spring has long"):
        bs.fit_plan(TURNSTONE, closed="0.1 mm", state="loaded")
    with pytest.raises(bs.InvalidInput, match="at least one blade"):
        bs.fit_plan(TURNSTONE, {}, state="loaded")
