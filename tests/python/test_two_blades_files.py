"""A second blade in the design file, and the commands on it."""

from __future__ import annotations

import json
import tomllib
from pathlib import Path

import pytest

import backspring as bs
from backspring.cli import main

BAD = tomllib.loads(Path(__file__).with_name("bad_two_blades.toml").read_text("utf-8"))
ROWS = [pytest.param(row, id=row["reason"]) for row in BAD["bad"]]
TURNSTONE = Path(__file__).resolve().parents[2] / "data" / "designs" / "turnstone.toml"
Capture = pytest.CaptureFixture[str]


def test_the_text_that_is_spoiled_is_good(tmp_path: Path) -> None:
    path = tmp_path / "siskin.toml"
    path.write_text(BAD["good"])
    assert bs.check_two(bs.load(path)).first["open"].strokes


@pytest.mark.parametrize("row", ROWS)
def test_a_bad_value_is_told(row: dict[str, str], tmp_path: Path) -> None:
    assert BAD["good"].count(row["old"]) >= 1
    path = tmp_path / "siskin.toml"
    path.write_text(BAD["good"].replace(row["old"], row["new"], 1))
    with pytest.raises(bs.InvalidInput) as refused:
        bs.load(path)
    assert str(refused.value).replace(str(path), "") == row["message"]


def test_check_prints_both_blades_beside_each_position_of_the_other(capsys: Capture) -> None:
    assert main(["check", str(TURNSTONE)]) == 0
    told = capsys.readouterr().out
    for line in (
        "Turnstone: the first blade opens with",
        "First blade: positions",
        "half-stop, other closed",
        "First blade: strokes, opening",
        "Second blade: positions",
        "closed to open, other half-stop",
        "Second blade: worst of the travel",
        "Targets, worst of both blades",
        "second.tang.round_end:",
    ):
        assert line in told


def test_the_document_holds_both_blades(capsys: Capture) -> None:
    assert main(["check", str(TURNSTONE), "--json"]) == 0
    document = json.loads(capsys.readouterr().out)
    check = bs.check_two(bs.load(TURNSTONE))
    assert document["data"] == check.to_dict()
    two = document["data"]["two_blades"]
    assert list(two["first"]) == ["open", "closed"]
    assert list(two["second"]) == ["open", "half_stop", "closed"]
    row = two["first"]["closed"]
    assert set(row) == {
        "positions", "strokes", "travel", "other_force_low_n", "other_force_high_n",
    }  # fmt: skip
    assert row["positions"]["open"]["force_n"] == pytest.approx(52.3, abs=0.1)


def test_units_of_the_output(capsys: Capture) -> None:
    assert main(["check", str(TURNSTONE), "--units", "in"]) == 0
    told = capsys.readouterr().out
    assert "force lbf" in told
    assert "thou" in told


@pytest.mark.parametrize(
    "words",
    [
        ["grind", "--remove", "0.1 mm"],
        ["size", "--pull", "8 N"],
        ["fit"],
        ["tolerance", "--spread", "fit.preload=0.05 mm", "--n", "10"],
    ],
    ids=lambda words: words[0],
)
def test_other_commands_refuse_two_blades(words: list[str], capsys: Capture) -> None:
    assert main([words[0], str(TURNSTONE), *words[1:]]) == 2
    told = capsys.readouterr().err
    assert told == (
        "second: this works on a spring with one blade; for two blades there are the commands "
        "check and plot, and check_two() in Python\n"
    )


@pytest.mark.parametrize("words", [["--kind", "stress"], ["--kind", "positions", "--angle", "9"]])
def test_plot_draws_positions_only(words: list[str], tmp_path: Path, capsys: Capture) -> None:
    picture = tmp_path / "two.png"
    assert main(["plot", str(TURNSTONE), "--output", str(picture), *words]) == 2
    assert "two blades are drawn in their positions only" in capsys.readouterr().err
    assert not picture.exists()


def test_plot_draws_the_spring_with_both_tangs(tmp_path: Path) -> None:
    from backspring.picture import two_blades

    assert main(["plot", str(TURNSTONE), "--output", str(tmp_path / "two.png")]) == 0
    assert (tmp_path / "two.png").stat().st_size > 10_000
    figure = two_blades(bs.load(TURNSTONE))
    panels = figure.axes[:-1]
    said = [text.get_text() for ax in panels for text in ax.texts]
    assert [word for word in said if word.startswith("first ")] == [
        "first closed, second closed",
        "first open, second closed",
        "first closed, second open",
        "first open, second open",
    ]
    for ax in panels:
        tangs = [patch for patch in ax.patches if patch.get_gid() == "tang"]
        sides = [patch.get_xy()[:, 0].mean() > 0.0 for patch in tangs]
        assert sorted(sides) == [False, True]
    assert any("52.3 N" in word for word in said)
