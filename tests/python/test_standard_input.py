"""A design may come from the standard input, and a file may be watched while it is worked on."""

from __future__ import annotations

import io
import sys
import time
from collections.abc import Callable
from pathlib import Path

import pytest

from backspring.cli import COMMANDS, main, parser_of

REPO = Path(__file__).resolve().parents[2]
HERON = REPO / "data" / "designs" / "heron.toml"
# What each command that takes a design needs beside it.
ASKED = {
    "advise": [],
    "check": [],
    "compare": ["--ground", "back", "0.1 mm"],
    "fit": [],
    "grind": ["--remove", "0.1 mm", "--step", "0.1 mm"],
    "load": [],
    "size": ["--pull", "9 N", "--vary", "fit.preload"],
    "tolerance": ["--n", "64"],
}
DRAWN = {"card": "card.html", "plot": "action.svg", "report": "page.html", "template": "out.svg"}


@pytest.fixture
def feed(monkeypatch: pytest.MonkeyPatch) -> Callable[[bytes], None]:
    """Put bytes on the standard input."""

    def put(content: bytes) -> None:
        monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(content)))

    return put


def takes_design(command: str) -> bool:
    """Whether a command's parser has a design among its arguments."""
    return any(action.dest == "design" for action in parser_of(command)._actions)


def test_every_command_that_takes_a_design_is_asked_here() -> None:
    assert {each for each in COMMANDS if takes_design(each)} == {*ASKED, *DRAWN}


@pytest.mark.parametrize("command", ASKED)
def test_a_design_from_the_standard_input_is_answered_as_its_file(
    command: str, feed: Callable[[bytes], None], capsys: pytest.CaptureFixture[str]
) -> None:
    expected = main([command, str(HERON), *ASKED[command]])
    of_file = capsys.readouterr()
    feed(HERON.read_bytes())
    assert main([command, "-", *ASKED[command]]) == expected
    assert capsys.readouterr() == of_file


@pytest.mark.parametrize("command", DRAWN)
def test_a_design_from_the_standard_input_is_drawn(
    command: str, feed: Callable[[bytes], None], tmp_path: Path, undrawn: None
) -> None:
    output = tmp_path / DRAWN[command]
    kind = ["--kind", "action"] if command == "plot" else []
    feed(HERON.read_bytes())
    assert main([command, "-", "--output", str(output), *kind]) in (0, 1)
    assert "Heron" in output.read_text("utf-8")


def test_faults_of_the_standard_input_have_their_lines(
    feed: Callable[[bytes], None], capsys: pytest.CaptureFixture[str]
) -> None:
    feed(HERON.read_bytes().replace(b"width = 2.3", b"width = 2.3 mm"))
    assert main(["check", "-"]) == 2
    line = 1 + HERON.read_text("utf-8").split("\n").index(
        next(each for each in HERON.read_text("utf-8").split("\n") if each.startswith("width"))
    )
    said = f'-:{line}: spring.width: 2.3 mm has a unit: put it in quotes: "2.3 mm"'
    assert capsys.readouterr().err.strip() == said
    feed(b"")
    assert main(["check", "-"]) == 2
    assert capsys.readouterr().err.strip() == "-: the file is empty"


def test_the_standard_input_gives_one_design(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["compare", "-", "-"]) == 2
    assert "only one design can come from the standard input" in capsys.readouterr().err


def test_a_watched_file_is_checked_after_each_change_until_stopped(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    design = tmp_path / "heron.toml"
    text = HERON.read_text("utf-8")
    design.write_text(text)
    saved = [
        text.replace('name = "Heron"', 'name = "Grey heron"'),
        text.replace("width = 2.3", "width = 2.3 mm"),
        None,  # an editor takes the old file away before it puts the new one there
        text,
    ]

    def pause(_: float) -> None:
        if not saved:
            raise KeyboardInterrupt
        content = saved.pop(0)
        if content is None:
            design.unlink()
        else:
            design.write_text(content)

    monkeypatch.setattr(time, "sleep", pause)
    assert main(["check", str(design), "--watch"]) == main(["check", str(HERON)])
    printed = capsys.readouterr()
    heads = [line.split(":")[0] for line in printed.out.split("\n") if "opens with" in line]
    assert heads == ["Heron", "Grey heron", "Heron", "Heron"]
    assert printed.err.count("put it in quotes") == 1
    assert "no such file" not in printed.err and "Traceback" not in printed.err
    assert f"watching {design}; Ctrl-C ends" in printed.err


@pytest.mark.parametrize("words", [["-"], [str(HERON), "--json"], ["--thickness", "2.5 mm"]])
def test_what_cannot_be_watched_is_refused(
    words: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["check", *words, "--watch"]) == 2
    assert "--watch" in capsys.readouterr().err
