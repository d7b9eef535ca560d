"""`backspring fit`: allowance, plan and log at the command line, and what is refused."""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import Any

import pytest

import backspring as bs
from backspring.cli import main

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"
HERON, WREN = (str(DESIGNS / f"{name}.toml") for name in ("heron", "wren"))
READ = ["--half-stop", "9 thou", "--closed", "17 thou", "--state", "unloaded"]


def data_of(words: list[str], capsys: pytest.CaptureFixture[str], code: int = 0) -> dict[str, Any]:
    assert main(["fit", *words, "--json"]) == code
    document = json.loads(capsys.readouterr().out)
    assert document["status"] == "pass"
    data: dict[str, Any] = document["data"]
    return data


def test_without_readings_the_allowance_is_told(capsys: pytest.CaptureFixture[str]) -> None:
    left = bs.allowance(bs.load(HERON))
    data = data_of([HERON], capsys)
    assert data == left.to_dict()
    assert data["allowance"] == {
        "half_stop_mm": left.half_stop_mm,
        "closed_mm": left.closed_mm,
    }
    assert data["target_mm"] == pytest.approx(0.0254)
    more = data_of([HERON, "--target", "2 thou"], capsys)
    assert more["allowance"]["closed_mm"] - data["allowance"]["closed_mm"] == pytest.approx(
        0.0254, abs=0.001
    )


def test_a_fixture_changes_the_allowance(capsys: pytest.CaptureFixture[str]) -> None:
    """A clamp is the stiffest hold: what yields more at the root loses less under load."""
    closed = [
        data_of([HERON, "--support", support], capsys)["allowance"]["closed_mm"]
        for support in ("clamped", "2e5 N mm/rad", "2e4 N mm/rad")
    ]
    assert closed == sorted(closed, reverse=True)


def test_without_a_half_stop_there_is_one_reading(capsys: pytest.CaptureFixture[str]) -> None:
    data = data_of([WREN, "--closed", "0.2 mm", "--state", "loaded"], capsys)
    assert data["allowance"]["half_stop_mm"] is None
    assert {step["face"] for step in data["plan"]} == {"closed"}
    assert all(step["half_stop_mm"] is None for step in data["plan"])


def test_readings_give_a_plan(capsys: pytest.CaptureFixture[str]) -> None:
    data = data_of([HERON, *READ], capsys)
    plan = bs.fit_plan(bs.load(HERON), half_stop="9 thou", closed="17 thou", state="unloaded")
    assert data == plan.to_dict()
    assert [step["step"] for step in data["plan"]] == list(range(1, len(plan.steps) + 1))
    assert set(data["plan"][0]) >= {"step", "face", "remove_mm", "half_stop_mm", "closed_mm"}
    assert data["plan"][-1]["closed_loaded_mm"] == pytest.approx(data["aim_mm"], abs=1e-4)


def test_repeated_readings_count_as_their_mean(capsys: pytest.CaptureFixture[str]) -> None:
    words = ["--half-stop", "0.2 mm", "--closed", "0.3 mm", "--closed", "0.34 mm"]
    twice = data_of([HERON, *words, "--state", "loaded"], capsys)
    assert twice["loaded_now"]["closed_mm"] == pytest.approx(0.32, abs=1e-7)


def test_bare_readings_are_in_the_units_of_the_design(capsys: pytest.CaptureFixture[str]) -> None:
    words = ["--half-stop", "0.2286", "--closed", "0.4318", "--state", "unloaded"]
    assert data_of([HERON, *words, "--units", "in"], capsys) == data_of([HERON, *READ], capsys)
    main(["fit", HERON, *words])
    assert capsys.readouterr().err == ""
    main(["fit", HERON, *words, "--units", "in"])
    assert capsys.readouterr().err.startswith("--half-stop 0.2286: taken as 0.229 mm or 9.0 thou, ")
    main(["fit", HERON, *READ, "--units", "in"])
    out, err = capsys.readouterr()
    assert err == ""
    assert "take off thou" in out
    assert "Caution" in out
    assert "proud rather than low" in out


def test_the_text_says_what_to_do_first(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["fit", HERON, *READ]) == 0
    first = " ".join(capsys.readouterr().out.partition("\n\n")[0].split())
    assert first.startswith("Heron: this plan sinks the blade's tip by 1.18 mm; 4 passes; first ")
    assert first.endswith("off the half-stop face")
    main(["fit", HERON, "--half-stop", "0.026", "--closed", "0.026", "--state", "loaded"])
    assert capsys.readouterr().out.startswith("Heron: nothing to grind, the fit is done")


def test_lowering_open_is_told_with_its_price(capsys: pytest.CaptureFixture[str]) -> None:
    words = ["--half-stop=-0.1 mm", "--closed", "0.1 mm", "--state", "loaded"]
    assert main(["fit", HERON, *words]) == 0
    shown = capsys.readouterr().out
    for said in ("only the open face can be lowered", "preload falls from 0.900 mm", "pull falls"):
        assert said in shown


def test_a_log_grows_and_plans(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    log = str(tmp_path / "heron.csv")
    words = [HERON, "--log", log, "--half-stop", "0.3 mm", "--closed", "0.35 mm"]
    first = data_of([*words, "--state", "loaded"], capsys)
    assert first["knife"]["entries"] == 1
    step = first["plan"][0]
    ground = ["--ground", step["face"].replace("_", "-"), f"{step['remove_mm']} mm"]
    again = ["--half-stop", f"{step['half_stop_mm']} mm", "--closed", f"{step['closed_mm']} mm"]
    words = [HERON, "--log", log, *ground, *again, "--state", "loaded"]
    second = data_of(words, capsys)
    assert second["knife"]["entries"] == 3
    assert second["loaded_now"]["half_stop_mm"] == pytest.approx(step["half_stop_mm"], abs=0.002)
    assert data_of([HERON, "--log", log], capsys) == second
    assert main(["fit", HERON, "--log", log]) == 0
    page = capsys.readouterr().out
    assert "not known yet: tilt of the pad at open" in page
    last = re.search(r"Logged last\n(.*\n)(.*\n)(.*\n)\n", page)
    assert last is not None
    assert last[1] == "  1: measured loaded, half-stop 0.300 mm proud, closed 0.350 mm proud\n"
    assert last[2].startswith(f"  2: ground {step['face'].replace('_', '-')}, ")
    assert last[3].startswith("  3: measured loaded, half-stop ")


BAD: list[tuple[list[str], int, str]] = [
    (["--half-stop", "9 thou"], 2, "backspring fit: --half-stop needs --closed"),
    (["--closed", "9 thou"], 2, "backspring fit: say --state loaded or --state unloaded"),
    (["--state", "loaded"], 2, "backspring fit: --state goes with readings: give --closed"),
    (["--repeatability", "1"], 2, "backspring fit: --repeatability goes with readings"),
    (["--ground", "open", "1"], 2, "backspring fit: --ground goes with --log FILE"),
    (
        ["--log", "k.csv", "--ground", "half-stop", "closed"],
        2,
        "backspring fit: --ground takes one face: --ground half-stop --ground closed",
    ),
    (["--reserve", "0.2"], 2, "backspring fit: --reserve goes with a plan"),
    ([*READ, "--support", "clamped"], 2, "backspring fit: --support goes with the allowance"),
    (["--closed", "9 thou", "--state", "wet"], 2, "backspring fit: argument --state: invalid"),
    (["--closed", "9 thou", "--state", "loaded"], 2, "half_stop: missing: this tang has a"),
    (["--target", "2 in"], 2, "target: must be at most 1 mm, got 50.8 mm"),
    (["--target", "soon"], 2, '--target: must be a length, got "soon"'),
    (["--target", "1 N"], 2, '--target: must be a length, got "1 N", which is a force'),
    (["--support", "loose"], 2, "spring.support: "),
    ([*READ, "--closed", "0,4"], 2, '--closed: "0,4" has a comma: write a decimal point'),
    ([*READ, "--reserve", "0.9"], 2, "reserve: must be at most 0.8, got 0.9"),
    ([*READ, "--reserve", "nan"], 2, "reserve: "),
    ([*READ, "--repeatability=-1"], 2, "repeatability: must be at least 0 mm, got -1 mm"),
    ([*READ, "--material", "nose", "1"], 2, "material: must name a face: open, half_stop, "),
    ([*READ, "--material", "closed", "-1"], 2, "material.closed: must be at least 0 mm"),
    ([*READ, "--output", "a.pdf"], 2, 'output: must end in .png or .svg, got "a.pdf"'),
    (
        [*READ, "--material", "half-stop", "0.1 mm"],
        3,
        "no plan: the half-stop face would have to lose 0.155 mm, it has 0.100 mm left",
    ),
    (
        ["--half-stop=-1.1", "--closed=-1.1", "--state", "loaded"],
        3,
        "no tang of this design has loaded readings of: half-stop -1.100 mm, closed -1.100 mm",
    ),
    (
        ["--half-stop=-0.1", "--closed", "0.1", "--state", "loaded", "--material", "open", "0.05"],
        3,
        "no plan: the open face would have to lose 0.113 mm, it has 0.050 mm left: a reading is",
    ),
]


@pytest.mark.parametrize(("words", "code", "message"), BAD)
def test_wrong_use_is_told(
    words: list[str],
    code: int,
    message: str,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    monkeypatch.chdir(tmp_path)
    assert main(["fit", HERON, *words]) == code
    shown = capsys.readouterr()
    assert shown.out == ""
    assert shown.err.startswith(message)
    assert list(tmp_path.iterdir()) == []


def test_what_a_log_refuses_is_not_kept(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    log = tmp_path / "heron.csv"
    words = ["fit", HERON, "--log", str(log), "--ground", "closed", "0.1 mm"]
    bad = ["--half-stop", "0.1", "--closed", "9 mm", "--state", "loaded"]
    assert main([*words, *bad]) == 2
    assert capsys.readouterr().err.startswith("closed: must be from -3 mm to 3 mm, got 9 mm")
    assert not log.exists()
    uneven = ["--half-stop", "0.1", "--half-stop", "0.1", "--closed", "0.2", "--state", "loaded"]
    assert main([*words, *uneven]) == 2
    assert "as many --half-stop as --closed" in capsys.readouterr().err
    log.write_text("nonsense")
    assert main(["fit", HERON, "--log", str(log)]) == 2
    assert capsys.readouterr().err.startswith(f"{log}:1: not a fitting log")


def test_grinding_the_back_is_told_before_and_after() -> None:
    ground = bs.readings_after_back_grind(bs.load(HERON), "0.1 mm")
    assert ground.after.loaded.closed_mm != ground.before.loaded.closed_mm
    assert ground.after.unloaded.closed_mm == pytest.approx(ground.before.unloaded.closed_mm)
    with pytest.raises(bs.InvalidInput, match="depth"):
        bs.readings_after_back_grind(bs.load(HERON), "much")


def test_results_read_well_in_a_notebook() -> None:
    heron = bs.load(HERON)
    plan = bs.fit_plan(heron, half_stop=0.1, closed=0.1, state="loaded", repeatability=0.004)
    for shown in (bs.allowance(heron), plan):
        assert repr(shown).startswith("Heron: ")
        assert "<table>" in shown._repr_html_()
    assert [notice.code for notice in plan.notices] == ["no-finer"]
