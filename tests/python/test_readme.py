"""README's Python examples run as printed, and its commands are the ones that exist."""

import re
import shlex
import subprocess
import sys
from pathlib import Path

import pytest

from backspring.cli import main

ROOT = Path(__file__).parents[2]
README = (ROOT / "README.md").read_text(encoding="utf-8")
SHELL = re.findall(r"```sh\n(.*?)```", README, flags=re.DOTALL)
# What the demo that misses its targets is asked.
MISSED = (
    "backspring check data/designs/bittern.toml",
    "backspring advise data/designs/bittern.toml",
)
(PATH,) = (block.splitlines() for block in SHELL if "-o linnet.toml" in block)
PROJECT = (ROOT / "pyproject.toml").read_text(encoding="utf-8")
FIRST_MAKE = "python3 -m venv .venv && "
EXAMPLES = re.findall(r"```python\n(.*?)```", README, flags=re.DOTALL)
(TOOL,) = (each for each in EXAMPLES if "subprocess" in each)


def test_the_python_examples_run_one_after_the_other() -> None:
    examples = [each for each in EXAMPLES if each != TOOL]
    done = subprocess.run(
        [sys.executable, "-c", "\n".join(examples)],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=True,
    )
    assert done.stdout.startswith("Heron: opens with ")
    assert "first take" in done.stdout
    assert all(len(example.strip().splitlines()) <= 12 for example in examples)


def test_the_tool_that_asks_the_command_runs_as_printed(tmp_path: Path) -> None:
    good, bad = tmp_path / "a.toml", tmp_path / "b.toml"
    text = (ROOT / "data" / "designs" / "kestrel.toml").read_text(encoding="utf-8")
    good.write_text(text, encoding="utf-8")
    bad.write_text(re.sub(r'width = "(.*?)"', r"width = \1", text), encoding="utf-8")
    words = [sys.executable, "-c", TOOL, str(tmp_path)]
    done = subprocess.run(words, capture_output=True, text=True, check=True)
    *told, fault = done.stdout.splitlines()
    assert re.fullmatch(r"a\.toml: pull \d+\.\d N, missed: nothing", told[-1])
    line = 1 + text[: text.index("width = ")].count("\n")
    place = f"b.toml:{line}: error: spring.width: "
    assert fault == f'{place}1/8 in has a unit: put it in quotes: "1/8 in"'
    assert len(TOOL.strip().splitlines()) <= 20


def test_a_newcomer_needs_less_than_ten_lines() -> None:
    """Lines that are run with all others: from the install to the check of an own design."""
    make, install, *rest = PATH
    extras = set(re.findall(r"^(\w+) = \[", PROJECT.split("optional-dep")[1], flags=re.MULTILINE))
    named = re.fullmatch(r"pip install '\.\[(.*)\]'", install)
    assert named and set(named[1].split(",")) <= extras
    assert make.startswith(FIRST_MAKE) and len(PATH) < 10
    assert all(line.startswith("backspring ") for line in rest)
    made = re.findall(r" -o (\w+\.toml)", " ".join(rest))
    assert {f"backspring check {name}" for name in made} <= {
        line.partition("#")[0].strip() for line in rest
    }
    assert README.index(make) < README.index("## Caution")


def test_the_first_screen_names_the_command_that_runs_all_tests() -> None:
    first_screen = README.split("## Caution")[0]
    assert "```sh\ntests/run\n```" in first_screen
    assert "backspring check data/designs/kestrel.toml" in first_screen


@pytest.mark.usefixtures("undrawn")
def test_every_line_for_the_shell_runs(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """One after the other, for a log that one line writes is read by the next."""
    (tmp_path / "data").symlink_to(ROOT / "data")
    monkeypatch.chdir(tmp_path)
    lines = [
        line for block in SHELL for line in block.splitlines() if line.startswith("backspring")
    ]
    ends = {line: main(shlex.split(line, comments=True)[1:]) for line in lines}
    assert len(ends) == len(lines) > 20
    assert {line: end for line, end in ends.items() if end not in (0, 1)} == {}
    assert {line: ends[line] for line in PATH if line in ends and ends[line]} == {}
    assert (tmp_path / "picture.png").is_file() and (tmp_path / "page.html").is_file()
    assert not capsys.readouterr().err.count("Traceback")


def test_the_first_command_meets_its_targets_and_the_bittern_says_what_to_change(
    capsys: pytest.CaptureFixture[str],
) -> None:
    first = SHELL[0].split(" && ")[-1].strip()
    assert first == ".venv/bin/backspring check data/designs/kestrel.toml"
    kestrel, bittern = (str(ROOT / f"data/designs/{name}.toml") for name in ("kestrel", "bittern"))
    assert main(["check", kestrel]) == 0
    told = capsys.readouterr().out
    assert told.startswith("Kestrel: opens with 4.41 lbf") and "opens with 4.4 lbf" in README
    assert not re.search(r"^  .* (?:fails|close) ", told, flags=re.MULTILINE)
    assert told.endswith("What to change\n  nothing: all targets are met\n")
    assert all(f"`{command}`" in README for command in MISSED)
    assert main(["check", bittern]) == 1
    last = capsys.readouterr().out.split("\n\n")[-1]
    assert last.startswith("What to change\n  less stress: less preload")


def test_the_pictures_exist() -> None:
    pictures = re.findall(r"!\[[^]]*\]\(([^)]+)\)", README)
    assert pictures
    assert all((ROOT / picture).is_file() for picture in pictures)
