"""Lines are folded to fit, and a number always stands with the word that it belongs to."""

from __future__ import annotations

import io
import re
import sys
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

import backspring as bs
from backspring.cli import main
from backspring.report.wrapping import COLUMNS, folded, narrowest, that_fits

DESIGNS = sorted((Path(__file__).resolve().parents[2] / "data" / "designs").glob("*.toml"))
WORDS = st.sampled_from(["the", "spring", "12.5 mm", "0.9 thou", "99 %", "station 27", "and", "a"])


@given(st.lists(WORDS, min_size=1, max_size=60), st.integers(10, 100))
def test_a_folded_line_fits_and_says_the_same(words: list[str], width: int) -> None:
    line = " ".join(words)
    width = max(width, narrowest(line) + 2)
    lines = folded(line, width).split("\n")
    assert max(map(len, lines)) <= width
    assert " ".join(" ".join(lines).split()) == line
    for each in lines[:-1]:
        assert not re.search(r"(\d|station)$", each.removesuffix("station 27"))


def test_a_text_is_as_narrow_as_its_widest_tie() -> None:
    assert narrowest("pull, yield margin, 0.087 proud") == len("0.087 proud")
    assert narrowest("") == 0


def test_what_does_not_fit_is_left_to_the_tables() -> None:
    assert that_fits("Heron", "a" * 60, "b" * 20, "c") == f"Heron: {'a' * 60}"
    assert that_fits("Heron", "opens", "holds") == "Heron: opens, holds"


@pytest.mark.parametrize(
    "words", [["check"], ["fit"], ["grind", "--remove", "0.1 mm", "--step", "0.1 mm"], ["load"]]
)
def test_the_answer_stands_in_the_first_line(
    words: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    for design in DESIGNS:
        for units in ("mm", "in"):
            main([words[0], str(design), *words[1:], "--units", units])
            first = capsys.readouterr().out.split("\n")[0]
            assert first.startswith(bs.load(design).name) and len(first) <= COLUMNS


class Terminal(io.StringIO):
    def isatty(self) -> bool:
        return True


@pytest.mark.parametrize("name", ["kestrel", "osprey"])
def test_a_terminal_of_80_columns_shows_numbers_with_their_words(
    name: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    (path,) = (each for each in DESIGNS if each.stem == name)
    terminal = Terminal()
    monkeypatch.setenv("COLUMNS", str(COLUMNS))
    monkeypatch.setenv("TERM", "dumb")
    monkeypatch.setattr(sys, "stdout", terminal)
    main(["check", str(path), "--all", "--no-color"])
    lines = re.sub(r"\x1b\[[0-9;]*m", "", terminal.getvalue()).split("\n")
    assert max(map(len, lines)) <= COLUMNS
    assert not [
        line for line in lines if re.match(r" *(proud|low|mm|thou|ksi|MPa)\b(?! +\w)", line)
    ]
    assert sum("proud" in line for line in lines) >= 4
