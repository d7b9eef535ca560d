"""A design file to start from: commented, read back, and meeting its own targets."""

from __future__ import annotations

from pathlib import Path

import pytest

import backspring as bs
from backspring.cli import main


@pytest.mark.parametrize("units", ["mm", "in"])
@pytest.mark.parametrize("half_stop", ["yes", "no"])
def test_a_new_file_passes_its_check(
    units: str, half_stop: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    made = tmp_path / "linnet.toml"
    words = ["new", "--units", units, "--half-stop", half_stop, "--name", "Linnet", "-o", str(made)]
    assert main(words) == 0
    told = capsys.readouterr().out
    assert told.startswith("Linnet: opens with ") and "all targets met" in told
    assert max(map(len, told.replace(str(made), "linnet.toml").splitlines())) <= 80
    assert main(["check", str(made)]) == 0
    design = bs.load(made)
    assert design.units == units
    assert (design.to_dict()["tang"].get("half_stop") is not None) == (half_stop == "yes")


@pytest.mark.parametrize("steel", bs.steel.names())
def test_every_steel_gives_a_file_that_passes(steel: str) -> None:
    known = bs.steel.steel(steel)
    hardness = 0.5 * (known.hardness_low_hrc + known.hardness_high_hrc)
    made = bs.new_design(steel=steel, hardness=hardness, pull="5 lbf")
    assert made.status == "pass"
    low, high = made.design.to_dict()["targets"]["pull"]
    assert low < 22.2411 < high
    assert low <= max(each.peak_pull_n or 0.0 for each in made.check.strokes) <= high


def test_what_is_printed_is_the_file_and_every_line_is_explained(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert main(["new", "--units", "in"]) == 0
    text = capsys.readouterr().out
    assert text == bs.new_design(units="in").text
    lines = text.splitlines()
    assert max(map(len, lines)) <= 80
    first = lines.index("[spring]")
    stated = [place for place, line in enumerate(lines) if " = " in line and place > first]
    assert all("#" in lines[place] or lines[place - 1].startswith("#") for place in stated)


def test_a_file_that_is_there_is_kept(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    kept = tmp_path / "mine.toml"
    kept.write_text("mine", encoding="utf-8")
    assert main(["new", "-o", str(kept)]) == 2
    assert "is there already" in capsys.readouterr().err
    assert kept.read_text(encoding="utf-8") == "mine"
    assert main(["new", "-o", str(kept), "--force"]) == 0
    assert bs.load(kept).name == "My pattern"


def test_all_faults_are_told_at_once() -> None:
    with pytest.raises(bs.InvalidInput) as refused:
        bs.new_design(steel="O2", hardness="90 HRC", pull="4 mm", name="two\nlines")
    assert {each.key for each in refused.value.faults} == {"steel", "hardness", "pull", "name"}


def test_a_pull_that_no_hand_size_knife_has_is_refused() -> None:
    with pytest.raises(bs.InvalidInput, match="no spring of this hand-size knife"):
        bs.new_design(pull="200 N", hardness=30)


def test_a_name_of_any_letters_is_read_back() -> None:
    name = 'Wren "3" \\ Zaunkönig #1'
    assert bs.new_design(name=name).design.name == name
