"""`backspring plot` writes whole pictures, the same every time, or says why it cannot."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path

import matplotlib
import pytest
from matplotlib.figure import Figure

import backspring as bs
from backspring import picture
from backspring.cli import main

HERON = Path(__file__).resolve().parents[2] / "data" / "designs" / "heron.toml"
TURNSTONE = HERON.with_name("turnstone.toml")


# A sheet has all that the others show, so its pixels stand for theirs.
@pytest.mark.parametrize(
    ("kind", "suffix"),
    [
        ("sheet", ".png"),
        *((kind, ".svg") for kind in ("sheet", "positions", "stress", "action", "back")),
    ],
)
def test_the_command_writes_the_same_bytes_every_time(
    kind: str, suffix: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    contents = []
    for name in ("first", "second"):
        output = tmp_path / (name + suffix)
        assert main(["plot", str(HERON), "--output", str(output), "--kind", kind]) == 0
        contents.append(output.read_bytes())
    assert contents[0] == contents[1]
    assert contents[0].startswith(b"\x89PNG" if suffix == ".png" else b"<?xml")
    assert sorted(path.name for path in tmp_path.iterdir()) == [f"first{suffix}", f"second{suffix}"]
    assert "drawn in" in capsys.readouterr().out


@pytest.mark.parametrize(
    ("words", "message"),
    [
        (["--output", "heron.pdf"], 'output: must end in .png or .svg, got "heron.pdf"'),
        (["--output", "nowhere/heron.png"], "output: cannot write nowhere/heron.png: no such file"),
        (["--output", "heron.png", "--angle", "52"], "--angle goes with --kind positions or"),
        (["--output", "heron.png", "--kind", "stress", "--angle", "300"], "300"),
        (["--output", "heron.png", "--kind", "stress", "--angle", "nan"], "nan"),
    ],
)
def test_what_cannot_be_drawn_is_refused(
    words: list[str],
    message: str,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    monkeypatch.chdir(tmp_path)
    assert main(["plot", str(HERON), *words]) == 2
    assert message in capsys.readouterr().err
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize(
    ("words", "blade"),
    [
        (["--kind", "positions"], None),
        (["--kind", "positions", "--blade", "pen", "--angle", "52"], "pen"),
        (["--kind", "stress", "--blade", "long", "--angle", "52"], "long"),
        (["--kind", "back"], None),
    ],
)
def test_several_blades_are_drawn_together_or_one_by_one(
    words: list[str], blade: str | None, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    output = tmp_path / "turnstone.png"
    assert main(["plot", str(TURNSTONE), *words, "--output", str(output), "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["data"].get("blade") == blade
    assert output.read_bytes().startswith(b"\x89PNG")


def test_an_angle_needs_a_blade_and_a_blade_its_name(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    start = ["plot", str(TURNSTONE), "--output", str(tmp_path / "turnstone.png")]
    assert main([*start, "--kind", "stress", "--angle", "52"]) == 2
    assert "--angle needs --blade, one of long, pen" in capsys.readouterr().err
    assert main([*start, "--blade", "kick"]) == 2
    assert 'no blade is called "kick": known are long, pen' in capsys.readouterr().err
    assert list(tmp_path.iterdir()) == []


def test_drawing_leaves_matplotlib_as_it_was(tmp_path: Path) -> None:
    before = dict(matplotlib.rcParams)
    picture.save(picture.sheet(bs.load(HERON)), tmp_path / "sheet.svg")
    assert dict(matplotlib.rcParams) == before
    assert "matplotlib.pyplot" not in sys.modules or not matplotlib.pyplot.get_fignums()


def test_a_failed_drawing_leaves_the_old_picture(tmp_path: Path) -> None:
    output = tmp_path / "heron.png"
    output.write_bytes(b"old")
    figure = Figure()
    figure.text(0.5, 0.5, "$\\no_such_formula$")
    with pytest.raises(ValueError, match="no_such_formula"):
        picture.save(figure, output)
    assert output.read_bytes() == b"old"


def test_without_matplotlib_one_line_says_what_to_install(tmp_path: Path) -> None:
    """A module set to None cannot be imported: Python's own import rules."""
    output = tmp_path / "heron.png"
    question = (
        "import sys; sys.modules['matplotlib'] = None; from backspring.cli import main;"
        f"sys.exit(main(['plot', {str(HERON)!r}, '--output', {str(output)!r}]))"
    )
    answer = subprocess.run([sys.executable, "-c", question], capture_output=True, text=True)
    assert answer.returncode == 2
    assert answer.stderr == 'pictures need matplotlib: pip install "backspring[plot]"\n'
    assert not output.exists()
