"""Where an answer cannot be printed a word says so, and 1 still means only a missed target."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

from backspring import Check
from backspring.cli import entry, main

REPO = Path(__file__).resolve().parents[2]
KESTREL = str(REPO / "data" / "designs" / "kestrel.toml")
FULL = "backspring: cannot write the answer: no space left on device\n"


def run(words: str, **environment: str) -> subprocess.CompletedProcess[str]:
    """Run in a shell, for what is closed or full is so before the command begins."""
    command = f"{sys.executable} -m backspring {words}"
    settings = {name: each for name, each in os.environ.items() if name != "PYTHONUNBUFFERED"}
    return subprocess.run(
        ["bash", "-c", command], env={**settings, **environment}, capture_output=True, text=True
    )


@pytest.mark.parametrize("words", [f"check {KESTREL}", "--version", "check --help"])
def test_a_full_device(words: str) -> None:
    done = run(f"{words} > /dev/full")
    assert (done.returncode, done.stderr) == (2, FULL)


def test_a_closed_output() -> None:
    done = run("--version >&-")
    assert done.returncode == 2
    assert done.stderr == "backspring: cannot write the answer: the standard output is closed\n"


def test_a_full_error_stream_changes_no_answer() -> None:
    assert run("check nowhere.toml 2> /dev/full").returncode == 2


def test_a_closed_input() -> None:
    done = run("check - <&-")
    assert (done.returncode, done.stderr) == (
        2,
        "-: cannot be read: the standard input is closed\n",
    )


def test_letters_that_the_output_has_not(tmp_path: Path) -> None:
    text = Path(KESTREL).read_text().replace('name = "Kestrel"', 'name = "K\u00e4rnt\u03bb"')
    path = tmp_path / "named.toml"
    path.write_text(text, "utf-8")
    done = run(f"check {path}", PYTHONIOENCODING="ascii")
    assert done.returncode in (0, 1) and not done.stderr
    assert done.stdout.startswith(r"K\xe4rnt\u03bb: ")


def test_a_fault_of_the_program_is_no_missed_target(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def fails(_: object) -> None:
        raise ZeroDivisionError("what nobody thought of")

    monkeypatch.setattr("backspring.cli._answers", fails)
    # The collector of a command of its own is set, not that of the tests.
    monkeypatch.setattr("gc.set_threshold", lambda *_: None)
    assert entry() == 2
    assert "what nobody thought of" in capsys.readouterr().err


class Terminal:
    """Stands for a terminal, whatever the tests run on."""

    encoding = "utf-8"

    def __init__(self) -> None:
        self.text = ""

    def write(self, text: str) -> int:
        self.text += text
        return len(text)

    def flush(self) -> None: ...

    def isatty(self) -> bool:
        return True


@pytest.mark.parametrize(
    ("settings", "words", "colored"),
    [
        ({}, [], True),
        ({"NO_COLOR": "1"}, [], False),
        ({"NO_COLOR": ""}, [], True),
        ({"TERM": "dumb"}, [], False),
        ({}, ["--no-color"], False),
    ],
)
def test_colors_are_left_out_where_they_are_not_wanted(
    settings: dict[str, str], words: list[str], colored: bool, monkeypatch: pytest.MonkeyPatch
) -> None:
    for name in ("NO_COLOR", "FORCE_COLOR", "COLORTERM"):
        monkeypatch.delenv(name, raising=False)
    for name, value in {"TERM": "xterm-256color", **settings}.items():
        monkeypatch.setenv(name, value)
    terminal = Terminal()
    monkeypatch.setattr(sys, "stdout", terminal)
    main(["check", KESTREL, *words])
    assert ("\x1b" in terminal.text) == colored
    assert "Kestrel" in terminal.text


@pytest.mark.parametrize("number", [float("nan"), float("inf")])
def test_a_number_that_json_cannot_say_is_told(
    number: float, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    data = {"travel": {"yield_margin": 1.2, "peak_stress_mpa": [0.0, number]}}
    monkeypatch.setattr(Check, "to_dict", lambda _: data)
    assert main(["check", KESTREL, "--json"]) == 2
    told = capsys.readouterr()
    document = json.loads(told.out)
    assert (document["status"], document["data"]) == ("error", {})
    assert [each["code"] for each in document["diagnostics"]] == ["not-finite"]
    assert told.err == (
        f"data.travel.peak_stress_mpa[1]: is {number}: the design is beyond what can be computed\n"
    )
