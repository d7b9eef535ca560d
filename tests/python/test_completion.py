"""Shell completion offers what the parsers take, and nothing else."""

from __future__ import annotations

import re
import shutil
import subprocess
from pathlib import Path

import pytest

from backspring.cli import COMMANDS, main, parser_of

SHELLS = ("bash", "zsh", "fish")


@pytest.fixture(params=SHELLS)
def shell(request: pytest.FixtureRequest) -> str:
    return str(request.param)


def script(shell: str, capsys: pytest.CaptureFixture[str]) -> str:
    assert main(["completion", shell]) == 0
    return capsys.readouterr().out


def options(command: str) -> set[str]:
    return {name for action in parser_of(command)._actions for name in action.option_strings}


def test_a_script_names_every_command_and_every_option(
    shell: str, capsys: pytest.CaptureFixture[str]
) -> None:
    text = script(shell, capsys)
    words = set(re.findall(r"[\w-]+", text))
    assert {*COMMANDS} <= words
    for command in COMMANDS:
        named = options(command)
        if shell == "fish":
            named = {name.lstrip("-") for name in named}
        assert named <= words, command


def test_a_shell_that_is_here_reads_its_script(
    shell: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "completion"
    path.write_text(script(shell, capsys))
    if shutil.which(shell):
        check = subprocess.run([shell, "-n", path], capture_output=True, text=True, check=False)
        assert (check.returncode, check.stderr) == (0, "")
    # Quotes close on every line, whichever shell will read it.
    for line in path.read_text().splitlines():
        assert line.count("'") % 2 == 0 or line.startswith("#"), line


TYPED = [
    ("backspring che", ["check"]),
    ("backspring s", ["schema", "size", "steels"]),
    ("backspring check --un", ["--units"]),
    ("backspring check --units ", ["mm", "in"]),
    ("backspring grind heron.toml --face b", ["back", "belly"]),
    ("backspring fit --state u", ["unloaded"]),
    ("backspring completion ", ["bash", "zsh", "fish"]),
    ("backspring completion f", ["fish"]),
    ("backspring check ", []),
    ("backspring check --log kn", ["knife.csv"]),
    ("backspring fit --pull kn", []),
]


def test_bash_completes_what_is_typed(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    bash = shutil.which("bash")
    assert bash, "the suite's own shell"
    (tmp_path / "knife.csv").touch()
    lines = [script("bash", capsys)]
    for typed, _ in TYPED:
        words = " ".join(f"'{word}'" for word in typed.split(" "))
        lines += [
            f"COMP_WORDS=({words}); COMP_CWORD={len(typed.split(' ')) - 1}; COMPREPLY=()",
            '_backspring; echo "${COMPREPLY[*]}"',
        ]
    done = subprocess.run(
        [bash], input="\n".join(lines), cwd=tmp_path, capture_output=True, text=True, check=True
    )
    offered = [line.split() for line in done.stdout.split("\n")[:-1]]
    expected = [words for _, words in TYPED]
    assert offered == expected
