"""What a check says of feel: rise, evenness, seats, oiled and dry pull, in text and JSON."""

from __future__ import annotations

import json
import re
from pathlib import Path

import numpy as np
import pytest

import backspring as bs
from backspring.cli import main

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"
HERON = bs.load(DESIGNS / "heron.toml")
ALL = sorted(path for path in DESIGNS.glob("*.toml") if len(bs.load(path).blades) == 1)


def feel(design: bs.Design) -> dict[str, object]:
    data: dict[str, object] = bs.check(design).to_dict()["feel"]
    return data


def test_the_document_holds_what_the_check_knows(capsys: pytest.CaptureFixture[str]) -> None:
    main(["check", str(DESIGNS / "heron.toml"), "--json"])
    told = json.loads(capsys.readouterr().out)["data"]["feel"]
    assert told == feel(HERON)
    assert {"open", "half_stop", "closed"} == {*told["seat_stiffness_nmm_per_deg"]}
    assert len(told["rise_mm"]) == 2


def test_seat_stiffness_is_the_slope_of_the_torque_curve() -> None:
    """A central difference of the sweep over 0.2 degrees about the rest."""
    check = bs.check(HERON)
    seats = check.to_dict()["feel"]["seat_stiffness_nmm_per_deg"]
    for name in ("half_stop", "closed"):
        at = check.positions[name].blade_angle_deg
        low, high = (bs._core.contact_at(HERON.core, at + step).torque_nmm for step in (-0.1, 0.1))
        # The torque bends within that stretch: 5 %.
        assert (high - low) / 0.2 == pytest.approx(seats[name], rel=0.05)


@pytest.mark.parametrize("path", ALL, ids=lambda path: path.stem)
def test_oil_lowers_the_pull_in_proportion_to_friction(path: Path) -> None:
    """At each angle torque is linear in the coefficients, so both stand alike about the middle."""
    design = bs.load(path)
    told = bs.check(design).feel
    pull_n = max(stroke.peak_pull_n for stroke in bs.check(design).strokes)
    assert told.pull_oiled_n < pull_n < told.pull_dry_n
    # The peak's angle moves with friction, and the highest of many straight lines is convex.
    mean_n = 0.5 * (told.pull_oiled_n + told.pull_dry_n)
    assert pull_n <= mean_n < 1.005 * pull_n


def test_a_design_without_friction_tells_the_usual_band() -> None:
    bare = HERON.replace(friction=None)
    usual = {"spring": 0.08, "pivot": 0.08}
    oiled = bs.check(HERON.replace(friction=usual))
    told = bs.check(bare).feel
    assert told.pull_oiled_n == pytest.approx(max(s.peak_pull_n for s in oiled.strokes), rel=1e-12)
    assert "friction 0.08 and 0.16" in bs.check(bare).report()


def test_the_lift_at_the_dial_is_the_highest_of_the_sweep() -> None:
    """Heights of the back from the deflected spring, a degree apart: 0.2 % of the top missed."""
    heights = [
        bs.spring_along(HERON, angle, 0.5).deflection_mm[
            np.argmin(np.abs(bs.spring_along(HERON, angle, 0.5).station_mm - 33.5))
        ]
        for angle in (*range(45, 62), 180)
    ]
    lift = max(heights) - heights[-1]
    assert bs.check(HERON).feel.dial_lift_mm == pytest.approx(lift, rel=2e-3)


@pytest.mark.parametrize("units", ["mm", "in"])
def test_the_text_says_it_in_a_makers_words(units: str, capsys: pytest.CaptureFixture[str]) -> None:
    main(["check", str(DESIGNS / "wren.toml"), "--units", units])
    text = capsys.readouterr().out
    assert "common practice, no source" in text
    assert "the spring rises at the crest by " in text and "seat stiffness, " in text
    # One stroke has none to be even with.
    assert "the lighter stroke" not in text


def test_a_blade_that_does_not_snap_has_no_feel() -> None:
    loose = HERON.replace(**{"fit.preload": 0.0, "tang.half_stop": 3.0, "tang.closed": 3.0})
    check = bs.check(loose)
    assert not check.strokes and check.feel.rise_mm == []
    assert "\nFeel\n" not in check.report()
    json.dumps(check.to_dict(), allow_nan=False)


def test_a_joint_that_is_neither_oiled_nor_dry_is_not_called_so() -> None:
    assert "pull oiled" in bs.check(HERON).report()
    galled = HERON.replace(**{"friction.spring": 0.5, "friction.pivot": 0.5})
    text = bs.check(galled).report()
    assert "oiled" not in text
    assert re.search(r"pull \d+\.\d N with friction 0\.46, \d+\.\d N with 0\.54", text)
