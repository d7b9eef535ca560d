"""The stop of the open blade and friction's couple, from the file to report and JSON."""

from __future__ import annotations

from pathlib import Path

import pytest

import backspring as bs
from backspring import _core
from backspring.report.check import check_report

DESIGNS = Path(__file__).parents[2] / "data" / "designs"


@pytest.fixture(scope="module")
def heron() -> bs.Design:
    return bs.load(DESIGNS / "heron.toml")


@pytest.mark.parametrize("place", ["back", "middle", "belly"])
def test_a_place_by_a_word_or_by_its_height_is_one(heron: bs.Design, place: str) -> None:
    height = {"back": 2.5, "middle": 1.25, "belly": 0.0}[place]
    by_word, by_height = (heron.replace(**{"fit.stop": each}) for each in (place, height))
    assert by_word.core.fit.stop.place is _core.StopPlace[place]
    assert by_height.core.fit.stop.place is _core.StopPlace.height
    word, number = bs.check(by_word), bs.check(by_height)
    assert word.positions["open"].force_n == number.positions["open"].force_n


def test_a_stop_as_high_as_the_end_bears_at_the_back_after_the_back_is_ground(
    heron: bs.Design,
) -> None:
    by_word, by_height = (
        bs.grind(heron.replace(**{"fit.stop": each}), back="0.1 mm") for each in ("back", 2.5)
    )
    word, number = bs.check(by_word), bs.check(by_height)
    for name, position in word.positions.items():
        assert number.positions[name].reading_loaded_mm == position.reading_loaded_mm


def test_a_stated_stop_moves_the_zero_of_the_loaded_readings(heron: bs.Design) -> None:
    plain, stated = bs.check(heron), bs.check(heron.replace(**{"fit.stop": "back"}))
    moved = {
        name: stated.positions[name].reading_loaded_mm - plain.positions[name].reading_loaded_mm
        for name in ("half_stop", "closed")
    }
    assert moved["half_stop"] == pytest.approx(moved["closed"], abs=1e-12)
    # Nonlinear beam: -0.219 thou.
    assert moved["closed"] / 0.0254 == pytest.approx(-0.219, rel=0.1)
    assert stated.positions["closed"].force_n == plain.positions["closed"].force_n
    assert [s.peak_pull_n for s in stated.strokes] == [s.peak_pull_n for s in plain.strokes]


def test_json_tells_the_band_with_every_loaded_reading(heron: bs.Design) -> None:
    data = bs.check(heron).to_dict()
    low, high = data["stop"]["reading_mm"]
    for name in ("half_stop", "closed"):
        position = data["positions"][name]
        assert position["reading_loaded_low_mm"] == position["reading_loaded_mm"] + low
        assert position["reading_loaded_high_mm"] == position["reading_loaded_mm"] + high
    assert data["positions"]["open"]["reading_loaded_low_mm"] is None
    assert data["stop"]["place"] == "unstated"
    rows = {row["effect"]: row for row in data["budget"]}
    assert [rows["stop"]["reading_low_mm"], rows["stop"]["reading_high_mm"]] == [low, high]
    assert rows["friction-couple"]["pull_share"] == pytest.approx(0.011, rel=0.1)


@pytest.mark.parametrize("units", ["mm", "in"])
def test_the_report_says_what_is_left_out(heron: bs.Design, units: bs.units.System) -> None:
    report = check_report(bs.check(heron), units, everything=True).plain()
    left_out = " ".join(report[report.index("Left out") :].split())
    assert "blue the spring's end" in left_out
    assert "friction's own bending of the spring: pull +1." in left_out


def test_frictions_couple_counts_when_it_is_asked_for(heron: bs.Design) -> None:
    plain, bent = bs.check(heron), bs.check(heron.replace(**{"friction.bending": True}))
    shares = [
        with_couple.peak_pull_n / without.peak_pull_n - 1.0
        for with_couple, without in zip(bent.strokes, plain.strokes, strict=True)
        if with_couple.peak_pull_n is not None and without.peak_pull_n is not None
    ]
    assert len(shares) == 2
    assert all(0.009 < share < 0.015 for share in shares)
    assert "friction-couple" not in [row.effect for row in bent.budget]
    assert bent.positions["closed"].force_n == plain.positions["closed"].force_n


def test_one_of_several_blades_has_its_own_stop() -> None:
    kestrel = bs.load(DESIGNS / "turnstone.toml")
    name = list(kestrel.blades)[-1]
    stated = kestrel.replace(**{f"blades.{name}.fit.stop": "belly"})
    place = next(each for each in stated.core.blades if each.name == name).fit.stop.place
    assert place is _core.StopPlace.belly


def test_a_narrow_target_of_readings_brings_the_bench_test(heron: bs.Design) -> None:
    check = bs.check(heron.replace(**{"targets.reading": "0.0005 in"}))
    told = next(each.text("in") for each in check.notices if each.code == "stop-unknown")
    assert "blue the spring's end" in told
    assert "0.5 thou" in told
