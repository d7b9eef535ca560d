"""What strength says beside its margins: lives, kinks that are not judged, skins, both sides."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

import backspring as bs
from backspring import _core
from backspring.report.sentences import margin_sentence

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"


@pytest.fixture(scope="module")
def heron() -> bs.Design:
    return bs.load(DESIGNS / "heron.toml")


def fatigue(design: bs.Design) -> tuple[_core.Margin, dict[str, Any]]:
    check = bs.check(design)
    data = json.loads(json.dumps(check.to_dict(), allow_nan=False))
    place = [each.name for each in check.verdict].index("fatigue")
    return check.verdict[place], data["verdict"][place]


@pytest.mark.parametrize("openings", [3000, 6000, 7000, 50_000])
def test_the_openings_wanted_are_met_where_the_life_reaches_them(
    heron: bs.Design, openings: int
) -> None:
    margin, data = fatigue(heron.replace(**{"targets.openings": openings}))
    assert margin.margin is not None
    assert (margin.margin >= 1.0) == (data["life_openings"]["99_percent"] >= openings)
    assert (margin.margin_low >= 1.0) == (data["life_openings"]["low"] >= openings)


def test_a_life_without_limit_is_endless_and_null_in_json(heron: bs.Design) -> None:
    margin, data = fatigue(heron.replace(**{"fit.preload": 0.3, "tang.corner_radius": 3.0}))
    lives = {each.name: each.value for each in margin.parameters}
    assert lives["life"] == float("inf") > 1e5
    assert data["life_openings"]["99_percent"] is None
    assert "no limit found" in margin_sentence(margin)


def test_peening_is_told_where_fatigue_fails_or_all_is_asked_for(heron: bs.Design) -> None:
    failing, data = fatigue(heron)
    assert "burnishing the hole to 621 MPa of compression" in margin_sentence(failing)
    assert data["peened"]["margin"] > failing.margin
    # Pressed in and stated, it does as foretold, and no more is promised.
    done = heron.replace(**{"spring.hole_residual_stress": data["peened"]["residual_mpa"]})
    by_hole = [
        each for each in bs.check(done).verdict if each.name == "fatigue" and "notch" in each.names
    ]
    for each in by_hole:
        assert each.margin == pytest.approx(data["peened"]["margin"], rel=1e-9)
    holding, _ = fatigue(heron.replace(**{"targets.openings": 1000}))
    assert "burnishing" not in margin_sentence(holding)
    assert "burnishing" in margin_sentence(holding, everything=True)


def test_a_kink_without_a_root_radius_is_told(heron: bs.Design) -> None:
    told = bs.check(heron).to_dict()["kink_not_judged"]
    assert told["station_mm"] == 7.0
    assert [each["radius_mm"] for each in told["with_radius"]] == [0.3, 1.0, 3.0]
    stresses = [each["stress_mpa"] for each in told["with_radius"]]
    assert stresses == sorted(stresses, reverse=True)
    # Sharp, about a fifth above the beam.
    assert stresses[0] / told["nominal_mpa"] == pytest.approx(1.2, abs=0.03)
    assert "kink_not_judged" not in bs.check(heron.replace(**{"spring.kink_radius": 1.0})).to_dict()


def test_a_fold_is_stretched_and_not_cracked() -> None:
    """About 1.1 % by elastic-plastic finite elements; O1 of 42 HRC breaks at 5 % or more."""
    check = bs.check(bs.load(DESIGNS / "bittern.toml"))
    (strain,) = (each for each in check.verdict if each.name == "strain")
    assert strain.value == pytest.approx(0.011, abs=0.002)
    assert strain.margin_low is not None and strain.margin_low > 4.0
    assert "it does not crack for that" in margin_sentence(strain)
    (lasting,) = (each for each in check.verdict if each.name == "set")
    assert "folds as on a hinge" in margin_sentence(lasting)
    assert "crack" not in margin_sentence(lasting)


def test_a_soft_skin_is_told(heron: bs.Design) -> None:
    check = bs.check(heron.replace(**{"spring.soft_skin": "0.1 mm"}))
    (notice,) = (each for each in check.notices if each.code == "soft-skin")
    assert "a skin 0.10 mm deep" in notice.text() and "50 %" in notice.text()
    (row,) = (each for each in check.verdict if each.name == "fatigue")
    assert "the soft skin is counted" in margin_sentence(row)


def test_a_derivative_that_is_none_is_none(heron: bs.Design) -> None:
    still = heron.replace(**{"friction.spring": 0.0, "friction.pivot": 0.0})
    assert bs.gradient(still)["peak_pull_n"]["friction.offset"] is None
    sides = bs.gradient_sides(still)["peak_pull_n"]
    assert sides["friction.offset"][0] == 0.0 < (sides["friction.offset"][1] or 0.0)
    assert sides["friction.spring"][0] is None
    smooth = bs.gradient(heron)["peak_pull_n"]["fit.preload"]
    assert bs.gradient_sides(heron)["peak_pull_n"]["fit.preload"] == (smooth, smooth)
