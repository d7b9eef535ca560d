"""No command writes over what it reads; Ctrl-C at any moment is told as what it is."""

from __future__ import annotations

import sys
from pathlib import Path
from types import ModuleType

import pytest

from backspring.cli import entry, main

HERON = Path(__file__).resolve().parents[2] / "data" / "designs" / "heron.toml"
OVER_ITSELF = [
    "report DESIGN -o DESIGN",
    "report DESIGN -o ./FOLDER/../design.toml",
    "report DESIGN -o LINK",
    "report LINK -o DESIGN",
    "report DESIGN --log LOG -o LOG",
    "outline DESIGN -o DESIGN",
    "outline DESIGN --picture DESIGN",
]


@pytest.mark.parametrize("words", OVER_ITSELF)
def test_what_is_read_is_not_written_over(
    words: str,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    monkeypatch.chdir(tmp_path)
    design = tmp_path / "design.toml"
    design.write_bytes(HERON.read_bytes())
    (tmp_path / "link.toml").symlink_to(design)
    (tmp_path / "folder").mkdir()
    names = {"DESIGN": "design.toml", "LINK": "link.toml", "LOG": "log.csv", "FOLDER": "folder"}
    for name, path in names.items():
        words = words.replace(name, path)
    assert main(words.split()) == 2
    assert "is read too: choose another name" in capsys.readouterr().err
    assert design.read_bytes() == HERON.read_bytes()
    assert not (tmp_path / "log.csv").exists()


def test_a_knife_may_be_called_as_its_file(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    words = "new --name linnet --steel O1 --hardness 46 -o linnet"
    assert main(words.split()) == 0
    assert (tmp_path / "linnet").is_file()


def test_two_outputs_are_two_files(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    both = str(tmp_path / "both.svg")
    assert main(["outline", str(HERON), "-o", both, "--picture", both]) == 2
    assert "is written too: choose another name" in capsys.readouterr().err


def test_ctrl_c_while_something_is_loaded_is_no_fault_of_the_program(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """A module that is interrupted while it is made says that its making failed."""

    class Interrupted(ModuleType):
        def __getattr__(self, name: str) -> None:
            raise ImportError("initialization failed") from KeyboardInterrupt()

    monkeypatch.setitem(sys.modules, "backspring.cli.running", Interrupted("running"))
    monkeypatch.setattr(sys, "argv", ["backspring", "check", str(HERON)])
    assert entry() == 130
    assert capsys.readouterr().err == "stopped\n"
