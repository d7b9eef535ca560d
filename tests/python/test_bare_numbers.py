"""What a bare number is taken as is told of every option, where other units are printed."""

from __future__ import annotations

import argparse
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

import backspring as bs
from backspring.cli import main
from backspring.cli.commands import COMMANDS
from backspring.cli.parsing import parser_of

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"
HERON = str(DESIGNS / "heron.toml")
# What stands for a value that no unit can be wrong of, or for another thing than a number.
WORDS = (
    "A B BLADE C CODE COMMAND DEG DESIGN DIR DPI FACE FILE FOLDER HARDNESS HRC KEY KIND LAYER "
    "MARGIN N NAME SCALE SHARE SHELL SOURCE STEEL TIME yes|no"
)
# Of these `--units` are those of the bare number and of the file that is made, too.
MAKES_A_FILE = {"layout", "new", "outline"}
FEW = {
    "steel": "1095",
    "thickness": "2.5",
    "length": "32",
    "width": "2.3",
    "preload": "0.6",
    "hardness": "47",
}
READ = ["--half-stop", "0.3", "--closed", "0.4", "--state", "loaded"]
# Every option that takes such a value, in words that answer; numbers are mm, N and C here.
ASKED = {
    "bushing": [["--half-stop", "0.1", "-", "-", "-", "--closed", "0.1", "0.2", "0.1", "0.2"]],
    "card": [[HERON, "-o", "card.html", "--half-stop", "0.3", "--closed", "0.4"]],
    "check": [[word for name, each in FEW.items() for word in (f"--{name}", each)]],
    "compare": [[HERON, "--ground", "back", "0.1"]],
    "fit": [
        [HERON, *READ, "--target", "0.02", "--repeatability", "0.002", "--tip", "0.5"],
        [HERON, *READ, "--tip-allowance", "0.5", "--material", "closed", "0.9"],
        [HERON, "--support", "200000"],
        [HERON, "--after-back", "0.1"],
        [HERON, "--log", "a.csv", *READ, "--pull", "12", "--hang", "2000 at 32", "--moved", "0.34"],
        [HERON, "--log", "b.csv", "--closing-pull", "15", "--start-pull", "2.9"],
        [HERON, "--log", "c.csv", "--thickness-at", "10", "2.98"],
        [HERON, "--log", "d.csv", "--ground", "closed", "0.1"],
        [str(DESIGNS / "osprey.toml"), "--log", "e.csv", "--tip-height", "1"],
        [str(DESIGNS / "osprey.toml"), "--log", "f.csv", "--gap", "0.9 at 10"],
    ],
    "grind": [
        [HERON, "--remove", "0.1", "--step", "0.05", "--pass", "0.05", "--region", "0", "36.5"],
        [HERON, "--to-pull", "9"],
        [HERON, "--flush", "--pass", "0.5", "--liners", "-34", "8.4", "36.5", "7.2"],
    ],
    "load": [[HERON, "--at", "25", "--clearance", "0.3", "--lever", "150"]],
    "size": [
        [HERON, "--pull", "9", "--vary", "fit.preload", "--bounds", "fit.preload", "0.3", "1"],
        [HERON, "--pull", "9", "--vary", "spring.thickness@7", "--stock", "spring.width", "2.3"],
        [HERON, "--pull", "9", "--taper", "1.5"],
    ],
    "steels": [["O1", "--temper", "450", "--after", "300", "2"]],
    "template": [[HERON, "-o", "a.svg", "--kerf", "0.2", "--stock", "0.3"]],
    "tolerance": [
        [HERON, "--spread", "fit.preload=0.05", "--spread", "spring.yield=sd 30", "--n", "8"]
    ],
}


def takes_a_quantity(action: argparse.Action) -> bool:
    """Whether an option takes a number with a unit, by the word for it in the help."""
    if action.nargs == 0 or not action.option_strings or action.choices is not None:
        return False
    words = action.metavar if isinstance(action.metavar, tuple) else (action.metavar,)
    return any(set(re.findall(r"[A-Za-z|]+", word or "?")) - {*WORDS.split()} for word in words)


def quantities(command: str) -> Iterator[str]:
    for action in parser_of(command)._actions:
        if takes_a_quantity(action) and action.type is None:
            yield action.option_strings[-1]


@pytest.mark.parametrize("command", sorted(COMMANDS.keys() - MAKES_A_FILE))
def test_every_such_option_is_asked_here(command: str) -> None:
    asked = {word for words in ASKED.get(command, []) for word in words}
    assert {*quantities(command)} - asked == set()


@pytest.mark.parametrize(
    ("command", "words"), [(name, words) for name, asked in ASKED.items() for words in asked]
)
def test_a_bare_number_is_told(
    command: str,
    words: list[str],
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    monkeypatch.chdir(tmp_path)
    assert main([command, *words, "--units", "in"]) in (0, 1)
    told = capsys.readouterr().err.splitlines()
    taken = [line for line in told if ": taken as " in line]
    for option in {*quantities(command)} & {*words}:
        lines = [line for line in taken if line.startswith(f"{option} ")]
        assert lines, (option, told)
        for line in lines:
            # Both systems, and the unit that was meant.
            assert re.search(r"as [-\d.]+ \S.* or [-\d.]+ \S.*, for a bare number is in \S+", line)
    for written in tmp_path.iterdir():
        if written.suffix == ".csv":
            written.unlink()
    # With the units that are printed nothing has to be told.
    assert main([command, *words, "--units", "mm"]) in (0, 1)
    assert "taken as" not in capsys.readouterr().err


def test_a_station_of_a_size_is_in_the_units_of_the_design(
    capsys: pytest.CaptureFixture[str],
) -> None:
    kestrel = str(DESIGNS / "kestrel.toml")
    assert bs.load(kestrel).units == "in"
    told = []
    for station in ("0.35", "0.35 in", "8.89 mm"):
        main(["size", kestrel, "--pull", "4", "--vary", f"spring.thickness@{station}", "--json"])
        told.append(capsys.readouterr().out)
    assert told[0] == told[1] == told[2]
    assert "spring.thickness@8.89" in told[0]


def test_a_bare_reading_beside_one_in_inches_is_told(capsys: pytest.CaptureFixture[str]) -> None:
    words = ["fit", HERON, "--half-stop", "12 thou", "--state", "loaded"]
    assert main([*words, "--closed", "0.3"]) == 0
    told = "--closed 0.3: taken as 0.300 mm or 11.8 thou, for a bare number is in mm here"
    assert told in capsys.readouterr().err
    for closed in ("0.3 mm", "11.8 thou"):
        assert main([*words, "--closed", closed]) == 0
        assert "taken as" not in capsys.readouterr().err
