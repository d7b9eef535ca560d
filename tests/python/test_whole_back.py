"""The whole back: in `check` and `fit`, in words and in the picture."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import numpy as np
import pytest

import backspring as bs
from backspring.cli import main
from backspring.picture.whole_back import above_open_mm

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"
HERON = bs.load(DESIGNS / "heron.toml")
WREN = bs.load(DESIGNS / "wren.toml")
ENDS = {"least_mm", "least_at_mm", "greatest_mm", "greatest_at_mm"}
TARGETS = {"nowhere_low_target_mm", "flattest_target_mm", "per_dial_mm"}
THOU_MM = 0.0254


def asked(capsys: pytest.CaptureFixture[str], *words: str) -> dict[str, Any]:
    main([*words, "--json"])
    along: dict[str, Any] = json.loads(capsys.readouterr().out)["data"]["along"]
    return along


@pytest.mark.parametrize(
    "words",
    [
        ["check"],
        ["fit"],
        ["fit", "--half-stop", "0.3", "--closed", "0.4", "--state", "unloaded"],
    ],
)
def test_the_document_has_its_stated_shape(
    words: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    command, *rest = words
    along = asked(capsys, command, str(DESIGNS / "heron.toml"), *rest)
    assert along.keys() >= {"half_stop", "closed"} | TARGETS
    for position in ("half_stop", "closed"):
        assert along[position].keys() >= ENDS
        assert along[position]["least_mm"] <= 0.0 <= along[position]["greatest_mm"]
    assert "half_stop" not in asked(capsys, command, str(DESIGNS / "wren.toml"), *rest[2:])


def test_the_ends_are_those_of_the_loaded_shapes() -> None:
    check = bs.check(HERON.replace(**{"tang.closed": 4.55}))
    for name, ends in check.along.positions.items():
        station, above = above_open_mm(check, name)
        # The columns are 0.1 mm apart, and a back is flat to far less than 1e-5 mm over that.
        assert ends.least_mm == pytest.approx(min(above.min(), 0.0), abs=1e-5)
        assert ends.greatest_mm == pytest.approx(above.max(), abs=1e-5)
        reading = check.positions[name].reading_loaded_mm
        dial = HERON.core.fit.dial_mm
        assert np.interp(dial, station, above) == pytest.approx(reading, abs=1e-5)
        slope = np.interp(dial, station, np.gradient(above, station))
        assert ends.per_dial_mm == pytest.approx(slope, rel=1e-2)


def test_flush_at_the_dial_is_not_flush_all_along() -> None:
    ends = bs.allowance(HERON, 0.0).along.positions["half_stop"]
    assert ends.least_mm / THOU_MM == pytest.approx(-0.82, abs=0.01)
    assert ends.least_at_mm == pytest.approx(22.0, abs=0.2)
    assert ends.greatest_mm / THOU_MM == pytest.approx(0.34, abs=0.01)
    needed = bs.allowance(HERON).along.to_dict()["nowhere_low_target_mm"]
    assert needed / THOU_MM == pytest.approx(2.8, abs=0.05)
    fitted = bs.allowance(HERON, needed + 1e-4).along.positions
    assert all(each.least_mm > -1e-6 for each in fitted.values())


def test_a_plan_tells_of_the_knife_it_ends_with() -> None:
    plan = bs.fit_plan(HERON, half_stop=0.3, closed=0.4, state="unloaded")
    done = bs.fit_plan(HERON, half_stop=0.3, closed=0.4, state="unloaded", target=0.05)
    for name in ("half_stop", "closed"):
        assert plan.along.positions[name].greatest_mm < done.along.positions[name].greatest_mm


@pytest.mark.parametrize(("units", "height"), [("mm", "0.106"), ("in", "4.2")])
def test_the_report_says_it_in_short_lines(
    units: Any, height: str, capsys: pytest.CaptureFixture[str]
) -> None:
    told = bs.check(HERON).report(units)
    block = told.split("Whole back, loaded, against open")[1].split("\n\n")[0]
    assert f"half-stop: nothing low, {height} proud at most" in block
    assert "a fingertip feels" in block
    assert max(map(len, block.splitlines())) <= 100
    assert "Whole back when fitted" in bs.allowance(HERON).report(units)


@pytest.mark.parametrize("design", [HERON, WREN], ids=["heron", "wren"])
def test_the_picture_shows_each_position_above_open(design: bs.Design) -> None:
    check = bs.check(design)
    axes = bs.plot(check, "back", units="in").axes[0]
    drawn = {line.get_label(): line for line in axes.lines}
    for name in check.along.positions:
        station, above = above_open_mm(check, name)
        line = drawn[name.replace("_", "-")]
        np.testing.assert_allclose(line.get_ydata(), above / THOU_MM)
        np.testing.assert_allclose(line.get_xdata(), station / 25.4)
    assert "thou" in axes.get_ylabel()


def test_a_design_whose_blade_does_not_stay_still_answers() -> None:
    lifted = bs.check(HERON.replace(**{"fit.preload": 0.05, "tang.half_stop": 4.3}))
    assert set(lifted.along.positions) <= {"half_stop", "closed"}
    assert json.dumps(lifted.to_dict()["along"], allow_nan=False)
