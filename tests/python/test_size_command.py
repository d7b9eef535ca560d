"""`backspring size`: exit codes, JSON and what a maker reads."""

from __future__ import annotations

import json
import tomllib
from pathlib import Path

import pytest

import backspring as bs
from backspring.cli import main

REPO = Path(__file__).resolve().parents[2]
DESIGNS = REPO / "data" / "designs"
HERON = str(DESIGNS / "heron.toml")
KESTREL = str(DESIGNS / "kestrel.toml")
LBF_N = 4.4482216152605  # NIST SP 811, appendix B


def test_the_document_holds_the_answer(capsys: pytest.CaptureFixture[str]) -> None:
    words = ["size", HERON, "--pull", "2 lbf", "--yield-margin", "1.1", "--json"]
    assert main([*words, "--vary", "fit.preload"]) == 0
    document = json.loads(capsys.readouterr().out)
    assert (document["status"], document["command"]) == ("pass", "size")
    (solution,) = document["data"]["solutions"]
    assert solution["pull_n"] == pytest.approx(2.0 * LBF_N, rel=1e-6)
    assert solution["sizes_mm"]["fit.preload"] < 0.9


def test_a_bare_number_is_in_the_units_of_the_design(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["size", KESTREL, "--pull", "2", "--json"]) == 0
    data = json.loads(capsys.readouterr().out)["data"]
    assert data["pull_n"] == pytest.approx(2.0 * LBF_N)
    assert main(["size", KESTREL, "--pull", "2", "--units", "mm", "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["data"] == data


def test_the_text_says_what_to_put_in_the_file(capsys: pytest.CaptureFixture[str]) -> None:
    words = ["--vary", "spring.width", "--vary", "fit.preload", "--bounds", "fit.preload", "0.3"]
    assert main(["size", HERON, "--pull", "10 N", "--yield-margin", "1.2", *words, "0.8"]) == 0
    said = capsys.readouterr().out
    assert said.startswith("Heron: width ")
    changes = tomllib.loads(said.split("In the design file")[1].split("\n\n")[0])
    again = bs.check(bs.load(HERON).replace(**dotted(changes)))
    assert max(stroke.peak_pull_n for stroke in again.strokes) == pytest.approx(10.0, rel=1e-5)
    assert again.travel.yield_margin == pytest.approx(1.2, rel=1e-5)
    assert "preload 0.30 to 0.80 mm" in said
    assert "could be varied as well: thickness, pivot, length" in said


def dotted(tables: dict[str, dict[str, object]]) -> dict[str, object]:
    return {f"{table}.{key}": v for table, keys in tables.items() for key, v in keys.items()}


def test_a_spring_that_yields_is_said_to_and_exits_1(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["size", HERON, "--pull", "14 N", "--vary", "fit.preload"]) == 1
    assert "which yields" in capsys.readouterr().out.splitlines()[0]


@pytest.mark.parametrize("units", ["mm", "in"])
def test_the_document_holds_what_to_put_in_the_file(
    units: str, capsys: pytest.CaptureFixture[str]
) -> None:
    """In the file's own units, each value with its unit; a key that has to go is null."""
    path = str(DESIGNS / ("wren.toml" if units == "mm" else "kestrel.toml"))
    pull = {"mm": 11.0, "in": 17.0}[units]
    main(["size", path, "--pull", f"{pull} N", "--vary", "fit.preload", "--json"])
    data = json.loads(capsys.readouterr().out)["data"]
    changes = data["solutions"][0]["changes"]
    assert changes["fit.preload"].endswith(f" {units}")
    assert ("fit.rear_pin_offset" in changes) == (units == "mm")
    again = bs.check(bs.load(path).replace(**changes))
    assert max(stroke.peak_pull_n for stroke in again.strokes) == pytest.approx(pull, rel=1e-5)
    assert data["could_vary"] == ["thickness", "width", "pivot", "length"]
    assert data["bounds_mm"]["fit.preload"][0] > 0.0


def test_stock_sizes(capsys: pytest.CaptureFixture[str]) -> None:
    words = ["--stock", "spring.width", "3/32 in", "1/8 in"]
    assert main(["size", HERON, "--pull", "12 N", *words, "--json"]) == 1
    assert len(json.loads(capsys.readouterr().out)["data"]["solutions"]) == 2


def test_a_size_below_the_margin_of_the_file_exits_1_and_says_so(
    capsys: pytest.CaptureFixture[str],
) -> None:
    words = ["size", HERON, "--pull", "9 N", "--vary", "fit.preload"]
    assert main(words) == 0
    assert capsys.readouterr().out.count("at least 1.15  met") == 1
    assert main(["size", HERON, "--pull", "11 N", "--json"]) == 1
    (target,) = json.loads(capsys.readouterr().out)["data"]["targets"]
    assert (target["name"], target["low"], target["met"]) == ("yield_margin", 1.15, False)
    # A margin that is asked for takes the place of the file's.
    assert main(["size", HERON, "--pull", "11 N", "--yield-margin", "1.05"]) == 0


def test_without_a_solution_the_nearest_is_told(capsys: pytest.CaptureFixture[str]) -> None:
    words = ["size", HERON, "--pull", "30 N", "--yield-margin", "1", "--vary", "fit.preload"]
    assert main([*words, "--json"]) == 3
    shown = capsys.readouterr()
    document = json.loads(shown.out)
    assert (document["status"], document["diagnostics"][0]["code"]) == ("error", "no-solution")
    assert shown.err.startswith("Heron: no size gives a pull of 30.0 N with a yield ")
    assert "; nearest: preload " in shown.err
    assert shown.err.endswith("; yield_margin: must be at least 1.00\n")


def test_a_taper(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["size", HERON, "--pull", "10 N", "--taper", "1.2 mm", "--json"]) == 0
    data = json.loads(capsys.readouterr().out)["data"]
    assert data["pull_n"] == pytest.approx(10.0, rel=1e-6)
    assert min(thick for _, thick in data["thickness_mm"]) == pytest.approx(1.2)


@pytest.mark.parametrize("vary", [["fit.preload"], ["spring.width", "fit.preload"]])
def test_the_picture_is_written(tmp_path: Path, vary: list[str]) -> None:
    options = [word for key in vary for word in ("--vary", key)]
    out = tmp_path / "map.svg"
    words = ["size", HERON, "--pull", "9 N", "--yield-margin", "1.2", *options]
    assert main([*words, "--output", str(out)]) == 0
    assert "<svg" in out.read_text("utf-8")


@pytest.mark.parametrize(
    ("words", "message"),
    [
        ([], "backspring size: give --pull, --yield-margin or both"),
        (["--taper", "1 mm"], "backspring size: --taper needs --pull"),
        (
            ["--taper", "1 mm", "--pull", "9 N", "--vary", "fit.preload"],
            "backspring size: --taper does not go with --vary",
        ),
        (["--pull", "9 N", "--stock", "spring.width"], "backspring size: --stock needs a key"),
        (["--pull", "9 mm"], '--pull: must be a force, got "9 mm", which is a length'),
        (["--yield-margin", "much"], '--yield-margin: must be a plain number, got "much"'),
        (["--pull", "9 N", "--vary", "spring.widht"], 'vary: unknown dimension "spring.widht": di'),
        (["--pull", "9 N", "--bounds", "spring.width", "2", "3"], "bounds.spring.width: is not va"),
        (["--pull", "9 N", "--output", "map.pdf"], 'output: must end in .png or .svg, got "map.p'),
    ],
)
def test_wrong_use_is_told(
    words: list[str], message: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["size", HERON, *words]) == 2
    assert capsys.readouterr().err.startswith(message)
