"""Every command serves each blade of a spring, or the one that `--blade` names."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from backspring.cli import main

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"
TURNSTONE, SANDERLING = (str(DESIGNS / f"{name}.toml") for name in ("turnstone", "sanderling"))
HERON = str(DESIGNS / "heron.toml")
Capture = pytest.CaptureFixture[str]
QUESTIONS = {
    "check": [],
    "grind": ["--remove", "0.1 mm"],
    "size": ["--pull", "7 N"],
    "tolerance": ["--spread", "fit.preload=0.01 mm", "--n", "16"],
    "load": [],
}
EACH = pytest.mark.parametrize("command", QUESTIONS)


def asked(capsys: Capture, command: str, design: str, *words: str) -> tuple[int, dict[str, Any]]:
    code = main([command, design, *QUESTIONS[command], *words, "--json"])
    document: dict[str, Any] = json.loads(capsys.readouterr().out)
    return code, document


@EACH
def test_without_a_name_each_blade_is_asked(command: str, capsys: Capture) -> None:
    code, every = asked(capsys, command, TURNSTONE)
    assert list(every["data"]["blades"]) == ["long", "pen"]
    codes = []
    for name, data in every["data"]["blades"].items():
        one_code, one = asked(capsys, command, TURNSTONE, "--blade", name)
        codes.append(one_code)
        assert one["data"] == data
        assert one["data"]["design"]["blade"] == name
    assert code == max(codes)
    assert every["status"] == ("pass" if code == 0 else "fail")


@EACH
def test_the_report_has_a_part_for_each_blade(command: str, capsys: Capture) -> None:
    main([command, SANDERLING, *QUESTIONS[command]])
    told = capsys.readouterr().out
    assert told.startswith("Sanderling: clip") and "sheep" in told.splitlines()[0]
    assert told.count("A computed margin does not replace a test") <= 1
    if command != "check":
        assert "Blade clip\n  Sanderling, clip: " in told
        assert "Blade sheep\n  Sanderling, sheep: " in told


@EACH
def test_a_blade_that_is_none_is_refused(command: str, capsys: Capture) -> None:
    assert main([command, TURNSTONE, *QUESTIONS[command], "--blade", "wren"]) == 2
    streams = capsys.readouterr()
    assert streams.err == 'blade: no blade is called "wren": known are long, pen\n'
    assert streams.out == ""


@EACH
def test_the_only_blade_may_be_named(command: str, capsys: Capture) -> None:
    assert asked(capsys, command, HERON, "--blade", "main") == asked(capsys, command, HERON)


def test_one_blade_that_misses_a_target_is_enough_to_fail(tmp_path: Path, capsys: Capture) -> None:
    path = tmp_path / "turnstone.toml"
    path.write_text(Path(TURNSTONE).read_text().replace("pull = [5, 10]", "pull = [5.2, 10]"))
    codes = [
        asked(capsys, "grind", str(path), *words)[0]
        for words in (["--blade", "long"], ["--blade", "pen"], [])
    ]
    assert codes == [1, 0, 1]


def test_a_size_that_one_blade_cannot_have_names_it(capsys: Capture) -> None:
    words = ["size", TURNSTONE, "--pull", "7 N", "--vary", "fit.preload"]
    words += ["--bounds", "fit.preload", "0.1 mm", "0.11 mm"]
    assert main(words) == 3
    assert capsys.readouterr().err.startswith("long: ")


def test_each_blade_has_a_picture_of_its_own(tmp_path: Path, capsys: Capture) -> None:
    code, document = asked(capsys, "load", TURNSTONE, "--output", str(tmp_path / "load.png"))
    assert code == 0
    for name, data in document["data"]["blades"].items():
        assert data["output"] == str(tmp_path / f"load-{name}.png")
        assert Path(data["output"]).stat().st_size > 5_000


def test_a_spread_of_another_blade_moves_the_readings(capsys: Capture) -> None:
    words = ["tolerance", SANDERLING, "--blade", "clip", "--n", "16", "--json"]
    main([*words, "--spread", "blades.sheep.tang.closed=0.02 mm"])
    data = json.loads(capsys.readouterr().out)["data"]
    assert data["spreads"][0]["key"] == "blades.sheep.tang.closed"
    assert main([*words[:-1], "--spread", "blades.sheep.tang.closd=0.02 mm"]) == 2
    assert 'did you mean "blades.sheep.tang.closed"?' in capsys.readouterr().err


def test_check_tells_each_blade_beside_each_position_of_the_other(capsys: Capture) -> None:
    assert main(["check", TURNSTONE]) == 0
    told = capsys.readouterr().out
    for line in (
        "Turnstone: long opens with",
        "long: positions",
        "half-stop, pen closed",
        "long: strokes, opening",
        "pen: positions",
        "closed to open, long half-stop",
        "pen: worst of the travel",
        "Targets, the worst of all blades",
        "blades.pen.tang.round_end:",
    ):
        assert line in told


def test_a_blade_can_be_shown_in_inches(capsys: Capture) -> None:
    assert main(["check", TURNSTONE, "--blade", "pen", "--units", "in"]) == 0
    told = capsys.readouterr().out
    assert "lbf" in told and "thou" in told and "With the other blades" in told
