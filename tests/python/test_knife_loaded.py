"""A reading with both pins in is what the knife reads, whatever the model foretold."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

import backspring as bs
from backspring.cli import main
from backspring.fit.priors import LOADED_MM

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"
HERON = bs.load(DESIGNS / "heron.toml")
WREN_FILE = str(DESIGNS / "wren.toml")
THOU_MM = 0.0254
FORETOLD_THOU = 7.8


@pytest.fixture
def words(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> list[str]:
    """The command on a Wren that was read, ground and read again with the rear pin out."""
    words = ["fit", WREN_FILE, "--units", "in", "--log", str(tmp_path / "a.csv")]
    assert main([*words, "--closed", "0.020 in", "--state", "unloaded"]) == 0
    more = ["--ground", "closed", "--closed", "0.009 in", "--state", "unloaded"]
    assert main([*words, *more]) == 0
    capsys.readouterr()
    return words


def loaded(words: list[str], thou: float) -> list[str]:
    return [*words, "--closed", f"{thou} thou", "--state", "loaded"]


def answer(words: list[str], capsys: pytest.CaptureFixture[str]) -> dict[str, Any]:
    assert main([*words, "--json"]) == 0
    found: dict[str, Any] = json.loads(capsys.readouterr().out)
    return found


def test_what_the_model_leaves_out_makes_a_loaded_reading_less_sure(
    words: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    now = answer(words, capsys)["data"]["knife"]["now"]
    assert now["closed_loaded_mm"] == pytest.approx(FORETOLD_THOU * THOU_MM, abs=0.002)
    assert LOADED_MM < now["closed_sd_mm"] < LOADED_MM + 0.008


@pytest.mark.parametrize("thou", [4.0, 6.0, 6.5, 7.0, 8.5, 10.0, 12.0])
def test_the_estimate_follows_the_first_loaded_reading(
    thou: float, words: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    found = answer(loaded(words, thou), capsys)
    now = found["data"]["knife"]["now"]
    assert now["closed_loaded_mm"] == pytest.approx(thou * THOU_MM, abs=0.004)
    assert now["closed_sd_mm"] < 0.005
    assert found["data"]["loaded_now"]["closed_mm"] == now["closed_loaded_mm"]
    codes = [each["code"] for each in found["diagnostics"]]
    # What stop and liners do not make is told.
    assert ("loaded-off" in codes) == (abs(thou - FORETOLD_THOU) > 3.5 * LOADED_MM / THOU_MM)


@pytest.mark.parametrize("thou", [0.78, 78.0, -78.0])
def test_a_slip_of_the_pen_is_refused_and_the_log_stays_to_the_byte(
    thou: float, words: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    content = Path(words[-1]).read_bytes()
    assert main(loaded(words, thou)) == 2
    told = capsys.readouterr().err
    assert "what fits worst is closed" in told
    assert "less than once in 1,000,000)" in told
    assert Path(words[-1]).read_bytes() == content


def test_a_disagreement_that_may_be_chance_is_told_and_planned_by_the_reading() -> None:
    """Twenty readings before a trip of 0.001 mm, after which one reads 0.0225 mm lower."""
    log = bs.Knife(HERON)
    for _ in range(10):
        log.measure(half_stop=0.3, closed=0.3, state="loaded")
    with log.together():
        log.ground("closed", 0.001)
        log.measure(half_stop=0.3, closed=0.2775, state="loaded")
    plan = log.plan()
    assert plan.result.closed_loaded_mm == pytest.approx(0.2775, abs=0.0005)
    (told,) = [each.message for each in plan.notices if each.code == "by-reading"]
    assert told.startswith("closed loaded 0.278 mm (entry 12) lies ")
    assert "what fits worst is closed loaded" in told
    assert plan.to_dict()["loaded_now"]["closed_mm"] == log.figures["closed_loaded_mm"].value


def test_rough_depths_and_a_loaded_reading_far_off_go_together() -> None:
    """Each alone is taken; so are both."""
    log = bs.Knife(bs.load(WREN_FILE))
    log.measure(closed=0.5, state="unloaded")
    for stated, read in ((0.15, 0.39), (0.16, 0.27)):
        with log.together():
            log.ground("closed", stated)
            log.measure(closed=read, state="unloaded")
    foretold = log.figures["closed_loaded_mm"].value
    log.measure(closed=foretold - 0.1, state="loaded")
    plan = log.plan()
    assert {"rough-depths", "loaded-off"} <= {each.code for each in plan.notices}
    assert plan.result.closed_loaded_mm == pytest.approx(foretold - 0.1, abs=0.004)


def test_every_question_to_the_knife_tells_of_the_misfit(
    words: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(loaded(words, 4.0)) == 0
    capsys.readouterr()
    asked = ["check", WREN_FILE, "--log", words[-1], "--units", "in"]
    assert main(asked) in (0, 1)
    assert "it reads 3.7 thou lower than the rest of the log foretells" in capsys.readouterr().out
    assert main([*asked, "--json"]) in (0, 1)
    found = json.loads(capsys.readouterr().out)
    assert "loaded-off" in [each["code"] for each in found["diagnostics"]]
    # The drawing that is asked reads as the knife does.
    reading = found["data"]["positions"]["closed"]["reading_loaded_mm"]
    assert reading == pytest.approx(4.0 * THOU_MM, abs=0.003)
