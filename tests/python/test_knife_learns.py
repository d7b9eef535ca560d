"""A knife's log tells what nobody measured, as sure as it says, and refuses what cannot be."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import numpy as np
import pytest

import backspring as bs
from backspring import _core
from backspring.cli import main
from backspring.fit.knife_model import KnifeModel
from backspring.fit.log_entry import GroundEntry
from backspring.report.display import text
from calibrate_knife import HERON, OSPREY, WREN, errors_of
from hidden_knife import DIAL_MM, HiddenKnife
from knife_faults import refused, sound, swapped, tenfold, wrong_face

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"
HERON_FILE = str(DESIGNS / "heron.toml")
FIRST = ["--half-stop", "0.012 in", "--closed", "0.026 in", "--state", "unloaded"]
SECOND = ["--half-stop", "0.0065 in", "--closed", "0.0065 in", "--state", "unloaded"]
TRIP = ["--ground", "half_stop", "--ground", "closed"]


def begun(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], *more: str
) -> tuple[list[str], Path, dict[str, Any]]:
    """Log the first reading, then more; returns the words of the command, the file, the data."""
    path = tmp_path / "a.csv"
    words = ["fit", HERON_FILE, "--units", "in", "--log", str(path)]
    assert main([*words, *FIRST]) == 0
    capsys.readouterr()
    assert main([*words, *more, "--json"]) == 0
    data: dict[str, Any] = json.loads(capsys.readouterr().out)["data"]
    return words, path, data


def test_a_trip_without_depths_is_learned_from_readings_before_and_after(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    words, _, data = begun(tmp_path, capsys, *TRIP, *SECOND)
    ground = data["knife"]["ground"]
    assert [each["face"] for each in ground] == ["half_stop", "closed"]
    for each, fell_thou in zip(ground, (5.5, 19.5), strict=True):
        # The dial stands a little ahead of the pivot: it falls by more than came off.
        assert each["depth_mm"] == pytest.approx(fell_thou * 0.0254 * 32 / 33.5, rel=0.01)
        assert each["sd_mm"] == pytest.approx(np.sqrt(2) * DIAL_MM * 32 / 33.5, rel=0.05)
        assert each["known"]
    assert data["plan"][0]["face"] == "half_stop"
    assert data["knife"]["entries"] == 4
    assert set(data["knife"]["now"]) >= {"half_stop_loaded_mm", "half_stop_sd_mm", "peak_pull_sd_n"}
    assert main([*words, "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["data"] == data
    assert main(words) == 0
    shown = capsys.readouterr().out
    assert "half-stop face (entry 2): 5.2 thou, good to +-0.2 thou" in shown
    assert "not known yet: tilt of the pad at open" in shown


BAD = {
    "the other face": ["--ground", "closed", *SECOND],
    "tenfold depth": [*TRIP[:2], "52 thou", *TRIP[2:], "18.7 thou", *SECOND],
    "a tenth of the depth": ["--ground", "half_stop", "0.00052 in", "--ground", "closed", *SECOND],
    "a reading that rose": [*TRIP, "--half-stop", "0.020 in", "--closed", "0.01 in", *SECOND[4:]],
    "swapped": [*TRIP[2:], "--half-stop", "6.5 thou", "--closed", "12 thou", *SECOND[4:]],
}


@pytest.mark.parametrize("words", BAD.values(), ids=BAD.keys())
def test_what_cannot_be_is_refused_and_the_log_stays_to_the_byte(
    words: list[str], tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    fit, path, _ = begun(tmp_path, capsys)
    content = path.read_bytes()
    assert main([*fit, *words]) == 2
    told = capsys.readouterr().err
    assert "what fits worst is" in told
    assert "Nothing was written" in told
    assert path.read_bytes() == content


def test_a_trip_is_noted_first_and_read_later(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    words, _, data = begun(tmp_path, capsys, "--ground", "half-stop")
    assert data["plan"] == []
    assert not data["knife"]["ground"][0]["known"]
    assert main([*words, "--half-stop", "0.0065 in", "--state", "unloaded"]) == 0
    assert "half-stop face (entry 2): 5.2 thou" in capsys.readouterr().out


def test_flush_grinding_is_learned_from_the_pull(tmp_path: Path) -> None:
    rng = np.random.default_rng(3)
    hidden = HiddenKnife(HERON, rng, (GroundEntry("back", None),))
    knife = bs.Knife(HERON, tmp_path / "a.csv")
    for _ in range(2):
        knife.measure(**hidden.readings("loaded"))
        knife.measure(**hidden.pulls())
        hidden.ground("back", 0.15)
        knife.ground("back")
    knife.undo()
    found = knife.estimate()
    assert [each.face for each in found.ground] == ["back"]
    assert found.ground[0].known
    assert found.ground[0].depth_mm == pytest.approx(0.15, abs=3 * found.ground[0].sd_mm)
    assert found.ground[0].sd_mm < 0.05
    thinner = knife.design.core.spring.thickness
    assert len(thinner) == len(HERON.core.spring.thickness)
    assert bs.Knife(HERON, tmp_path / "a.csv").to_dict() == knife.to_dict()


def test_a_round_tang_needs_only_closed() -> None:
    hidden = HiddenKnife(WREN, np.random.default_rng(4))
    knife = bs.Knife(WREN)
    knife.measure(**hidden.readings("loaded"))
    hidden.ground("closed", 0.06)
    with knife.together():
        knife.ground("closed")
        knife.measure(**hidden.readings("loaded"))
    (depth,) = knife.estimate().ground
    assert depth.depth_mm == pytest.approx(0.06, abs=3 * depth.sd_mm)
    assert depth.sd_mm < 2.0 * DIAL_MM
    assert {step.face.name for step in knife.plan().steps} == {"closed"}


def test_what_to_measure_next_comes_true() -> None:
    """The deviation foretold is the one that the log tells once the measurement is in it."""
    knife = bs.Knife(HERON)
    knife.measure(half_stop=0.1, closed=0.12, state="loaded", repeatability=0.004)
    listed = {each.what: each for each in knife.next_measurement()}
    foretold = listed["pull_n"]
    assert foretold.figure == "peak_pull_n"
    assert foretold.sd_now == knife.figures["peak_pull_n"].sd
    knife.measure(pull=knife.figures["peak_pull_n"].value)
    assert knife.figures["peak_pull_n"].sd == pytest.approx(foretold.sd_then, rel=0.02)


@pytest.mark.parametrize(("design", "count"), [(HERON, 16), (OSPREY, 8)], ids=["Heron", "Osprey"])
def test_errors_are_as_large_as_they_are_said_to_be(design: bs.Design, count: int) -> None:
    """A few hidden knives; calibrate_knife.py prints the table of five hundred."""
    errors, percentiles, turned_away = errors_of(design, count, 21)
    assert turned_away <= 1
    for name, each in errors.items():
        assert abs(np.mean(each)) < 4.0 / np.sqrt(len(each)), name
        # Four of the deviation's own standard deviations.
        assert abs(np.std(each) - 1.0) < 4.0 / np.sqrt(2 * len(each)), name
    assert 0.2 < np.mean(percentiles) < 0.8


def test_faults_are_caught_and_sound_logs_are_not() -> None:
    """knife_faults.py counts a hundred of each."""
    assert [refused(each, 6, 31) for each in (tenfold, wrong_face, swapped)] == [6, 6, 6]
    assert refused(sound, 6, 31) == 0


def test_a_question_is_asked_of_the_knife_instead_of_the_drawing(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "a.csv"
    knife = bs.Knife(HERON, path)
    knife.measure(half_stop=0.1, closed=0.12, state="loaded")
    knife.measure(pull="3 lbf")
    for words in (["check"], ["grind", "--remove", "0.1 mm"], ["size", "--pull", "4 lbf"]):
        command, *more = words
        code = main([command, HERON_FILE, *more, "--log", str(path), "--json"])
        assert code in (0, 1)
        data = json.loads(capsys.readouterr().out)["data"]
        assert data["knife"] == json.loads(json.dumps(knife.to_dict()))
    assert main(["check", HERON_FILE, "--log", str(tmp_path / "b.csv")]) == 2
    assert capsys.readouterr().err.startswith("log: no such file")
    main(["check", HERON_FILE, "--log", str(path), "--units", "in"])
    pull = text(knife.figures["peak_pull_n"].value, "force", "in")
    assert f"peak pull to open: {pull} +-" in capsys.readouterr().out


@pytest.mark.parametrize("face", ["back", "belly"])
def test_a_whole_face_ground_in_a_log_is_the_one_that_grinding_takes(face: str) -> None:
    """The back behind the middle pin too, as flush grinding and `grind --face back` do."""
    model = KnifeModel(HERON.core, [GroundEntry(face, 0.3)])
    causes = np.zeros(model.width)
    causes[-1] = 0.3
    ground = bs.grind(HERON, **{face: 0.3}).core.spring.thickness
    assert [*model.design(causes).spring.thickness] == [*ground]
    behind = np.interp(-20.0, *np.transpose([(s.x_mm, s.thickness_mm) for s in ground]))
    drawn = [(s.x_mm, s.thickness_mm) for s in HERON.core.spring.thickness]
    was = np.interp(-20.0, *np.transpose(drawn))
    assert was - behind == pytest.approx(0.3 if face == "back" else 0.0)


def test_a_plan_from_readings_with_the_pin_out_stops_two_deviations_short() -> None:
    knife = bs.Knife(HERON)
    knife.measure(half_stop=0.3, closed=0.3, state="unloaded")
    plan, sd_mm = knife.plan(), knife.estimate().widest_mm
    assert plan.result.aim_mm - plan.target_mm == pytest.approx(2.0 * sd_mm)
    assert "stops short by twice that" in " ".join(each.message for each in plan.notices)
    knife.measure(half_stop=0.2, closed=0.2, state="loaded")
    plan = knife.plan()
    assert plan.result.aim_mm - plan.target_mm == pytest.approx(0.75 * knife.spread_mm, rel=0.1)


def test_a_pin_out_reading_just_above_the_target_is_not_called_low() -> None:
    knife = bs.Knife(HERON)
    knife.measure(half_stop=0.10, closed=0.10, state="unloaded")
    plan = knife.plan()
    assert plan.done
    assert plan.result.half_stop_loaded_mm > plan.target_mm
    assert {each.code for each in plan.notices} >= {"measure-loaded", "fit-done"}
    assert "slightly-low" not in {each.code for each in plan.notices}


def test_level_is_where_the_tip_stood_when_its_height_was_first_logged() -> None:
    """The kick ground alone sinks the tip, which its height shows; the plan brings it back."""
    hidden, knife = HiddenKnife(OSPREY, np.random.default_rng(5)), bs.Knife(OSPREY)

    def tip_mm() -> float:
        bench = hidden.model.bench(hidden.causes)
        height = _core.closed_figures(hidden.design(), 0.0, bench).tip_mm
        assert height is not None
        return height

    stood_mm = tip_mm()
    knife.measure(**hidden.readings("unloaded"), tip_height=stood_mm)
    assert knife.plan().rules.tip_mm == pytest.approx(0.0, abs=1e-9)
    hidden.ground("kick", 0.06)
    with knife.together():
        knife.ground("kick")
        knife.measure(**hidden.readings("unloaded"), tip_height=tip_mm())
    plan, sank_mm = knife.plan(), stood_mm - tip_mm()
    assert sank_mm > 0.4
    assert plan.rules.tip_mm == pytest.approx(sank_mm, abs=0.1)
    assert plan.result.tip_mm == pytest.approx(plan.rules.tip_mm, abs=0.1)
    assert knife.plan(tip=0.1).rules.tip_mm == 0.1
