"""`backspring load`: exit codes, the JSON document, the text a maker reads, the picture."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

import backspring as bs
from backspring.cli import main

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"
HERON = str(DESIGNS / "heron.toml")
BITTERN = str(DESIGNS / "bittern.toml")
FIGURES = {
    "force_n",
    "movement_mm",
    "peak_stress_mpa",
    "yield_margin",
    "rear_pin_force_n",
    "middle_pin_force_n",
    "stop_before_mm",
}


def asked(capsys: pytest.CaptureFixture[str], *words: str, code: int = 0) -> dict[str, Any]:
    assert main(["load", *words, "--json"]) == code
    document: dict[str, Any] = json.loads(capsys.readouterr().out)
    return document


def test_the_document_holds_the_figures_of_the_call(capsys: pytest.CaptureFixture[str]) -> None:
    document = asked(capsys, HERON, "--at", "25 mm", "--clearance", "0.25 mm")
    assert document["status"] == "pass"
    data = document["data"]
    assert data.keys() >= FIGURES
    assert all(isinstance(data[name], float) for name in FIGURES)
    assert data == bs.load_spring(bs.load(HERON), at=25, clearance=0.25).to_dict()
    # A prototype of another hand found 115 N, a margin of 2.0 and 131 lbf.
    assert data["force_n"] == pytest.approx(115.0, abs=1.0)
    assert data["yield_margin"] == pytest.approx(2.0, abs=0.05)
    assert data["stop_before_mm"] == pytest.approx(data["movement_mm"] * data["yield_margin"])
    far = asked(capsys, HERON, "--at", "8 mm")["data"]
    assert far["force_n"] / 4.448222 == pytest.approx(131.0, abs=1.5)


def test_a_margin_below_1_is_missed_where_no_target_is_stated(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert asked(capsys, BITTERN, "--at", "20 mm")["data"]["wanted_margin"] == 1.0
    document = asked(capsys, BITTERN, "--at", "8 mm", code=1)
    assert document["status"] == "fail"
    assert document["data"]["yield_margin"] < 1.0


def test_a_stated_target_is_what_the_margin_is_held_against(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    text = Path(HERON).read_text(encoding="utf-8")
    wanting = tmp_path / "wanting.toml"
    wanting.write_text(text.replace("yield_margin = 1.15", "yield_margin = 2.1"), encoding="utf-8")
    data = asked(capsys, str(wanting), "--at", "25 mm", code=1)["data"]
    assert 1.0 < data["yield_margin"] < data["wanted_margin"] == 2.1
    assert asked(capsys, str(wanting), "--at", "28 mm")["status"] == "pass"


def test_a_bare_number_is_in_the_units_of_the_design(capsys: pytest.CaptureFixture[str]) -> None:
    bare = asked(capsys, HERON, "--at", "25.4", "--units", "in")["data"]
    assert bare["at_mm"] == pytest.approx(25.4)
    assert asked(capsys, HERON, "--at", "1 in")["data"]["force_n"] == bare["force_n"]


def test_without_a_station_it_is_the_nearest_behind_the_tang(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert asked(capsys, HERON)["data"]["at_mm"] == 27.0


@pytest.mark.parametrize("units", ["mm", "in"])
def test_the_report_says_how_hard_and_how_far(
    units: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["load", HERON, "--at", "25 mm", "--lever", "150 mm", "--units", units]) == 0
    told = capsys.readouterr().out
    pull = {"mm": "115.6 N at 25.00 mm", "in": "26.00 lbf at 0.9843 in"}
    assert told.startswith(f"Heron: pull the spring out with {pull[units]}")
    assert "the spring takes a set" in told
    assert "rear pin last" in told
    assert "by a bar clamped to the spring" in told
    assert "wear eye protection" in told


def test_a_clamped_spring_has_no_rear_pin(capsys: pytest.CaptureFixture[str]) -> None:
    clamped = bs.load(HERON).replace(**{"spring.support": "clamped", "spring.pin_hole": 0})
    data = bs.load_spring(clamped, at=20).to_dict()
    assert data["rear_pin_force_n"] is data["middle_pin_force_n"] is data["rear_pin_last"] is None
    assert "rear pin" not in bs.load_spring(clamped, at=20).report()
    with pytest.raises(bs.InvalidInput, match="lever: goes with a spring on two pins"):
        bs.load_spring(clamped, at=20, lever=100)


@pytest.mark.parametrize(
    ("words", "message"),
    [
        (["--at", "0 mm"], "at: must be at least 1 mm, got 0 mm"),
        (["--at", "-5"], "at: must be at least 1 mm, got -5 mm"),
        (["--at", "40 mm"], "at: must be at most 36.5 mm, got 40 mm"),
        (["--at", "nan"], "at: "),
        (["--at", "25 N"], "at: "),
        (["--clearance", "6 mm"], "clearance: must be at most 5 mm, got 6 mm"),
        (["--lever", "0"], "lever: must be at least 1 mm, got 0 mm"),
        (["--output", "load.pdf"], "output: must end in .png or .svg"),
    ],
)
def test_bad_use_is_told_and_exits_with_2(
    words: list[str], message: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["load", HERON, *words]) == 2
    streams = capsys.readouterr()
    assert message in streams.err
    assert streams.out == ""


def test_all_faults_are_told_at_once(capsys: pytest.CaptureFixture[str]) -> None:
    document = asked(capsys, HERON, "--at", "0 mm", "--clearance", "9 mm", code=2)
    assert len(document["diagnostics"]) == 2


def test_the_picture_shows_force_falling_towards_the_tang(tmp_path: Path) -> None:
    output = tmp_path / "load.png"
    assert main(["load", HERON, "--output", str(output)]) == 0
    assert output.read_bytes().startswith(b"\x89PNG")
    line = bs.plot(bs.load_spring(bs.load(BITTERN), at=20)).axes[0].lines
    stations, borne = line[0].get_xdata(), line[0].get_ydata()
    below = line[1].get_ydata()
    missing = [bool(a != a) for a in borne]
    # What the spring bears and what it does not are two lines that share no place.
    assert missing == [not bool(b != b) for b in below]
    assert missing[0] and not missing[-1]
    assert list(stations) == sorted(stations)
    kept = [value for value in borne if value == value]
    assert kept == sorted(kept, reverse=True)
