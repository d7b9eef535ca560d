"""`backspring report` writes a page whole or not at all, and answers as the check does."""

from __future__ import annotations

import json
import re
import subprocess
import sys
from pathlib import Path

import pytest

import backspring as bs
import page_reader
from backspring.cli import main
from backspring.report import page_drawing
from backspring.report.page_parts import Drawing

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"
README = DESIGNS.parents[1] / "README.md"
HERON, WREN = str(DESIGNS / "heron.toml"), str(DESIGNS / "wren.toml")


@pytest.mark.usefixtures("undrawn")
def test_the_command_writes_the_page_and_names_its_sections(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    output = tmp_path / "wren.html"
    code = main(["report", WREN, "-o", str(output), "--json", "--units", "in"])
    document = json.loads(capsys.readouterr().out)
    page = bs.page(bs.load(WREN), units="in")
    assert document["data"]["output"] == str(output)
    assert document["data"]["sections"] == list(page.sections)
    assert code == {"pass": 0, "fail": 1}[page.status]
    assert document["status"] == page.status
    assert output.read_bytes() == page.html.encode()
    assert [path.name for path in tmp_path.iterdir()] == ["wren.html"]


@pytest.mark.parametrize(
    ("words", "message"),
    [
        ([], "-o/--output"),
        (["-o", "nowhere/x.html"], "output: cannot write nowhere/x.html: no such file"),
        (["-o", "."], "output: cannot write .: "),
        (["-o", "x.html", "--blade", "pen"], 'no blade is called "pen"'),
        (["-o", "x.html", "--log", "none.csv"], "log: no such file: none.csv"),
    ],
)
@pytest.mark.usefixtures("undrawn")
def test_what_cannot_be_written_is_refused(
    words: list[str],
    message: str,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    monkeypatch.chdir(tmp_path)
    assert main(["report", WREN, *words]) == 2
    assert message in capsys.readouterr().err
    assert list(tmp_path.iterdir()) == []


@pytest.mark.usefixtures("undrawn")
def test_an_empty_section_leaves_the_old_page(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    output = tmp_path / "wren.html"
    output.write_text("old")
    monkeypatch.setattr(
        "backspring.report.page_blade.drawing", lambda *_, **__: Drawing("Stress", "")
    )
    assert main(["report", WREN, "-o", str(output)]) == 2
    assert 'section strength: "Stress" is empty: no page is written' in capsys.readouterr().err
    assert output.read_text() == "old"


@pytest.mark.usefixtures("undrawn")
def test_one_blade_can_be_asked_for(tmp_path: Path) -> None:
    output = tmp_path / "pen.html"
    assert (
        main(["report", str(DESIGNS / "turnstone.toml"), "-o", str(output), "--blade", "pen"]) == 0
    )
    read = page_reader.PageReader(output.read_text("utf-8"))
    assert len(read.headings) == 12
    assert not any("long" in heading for heading in read.headings)


@pytest.mark.usefixtures("undrawn")
def test_a_log_puts_the_knife_on_the_page(tmp_path: Path) -> None:
    log, output = tmp_path / "knife.csv", tmp_path / "knife.html"
    knife = bs.Knife(bs.load(HERON), log)
    knife.measure(half_stop="0.12 mm", closed="0.1 mm", state="loaded", pull="3 lbf")
    before = log.read_bytes()
    assert main(["report", HERON, "-o", str(output), "--log", str(log)]) == 1
    assert log.read_bytes() == before
    text = page_reader.PageReader(output.read_text("utf-8")).text
    assert f"This knife now, from {len(knife.entries)} entries" in text
    assert "How the drawing would change to be this knife" in text
    assert "\ntang.closed\n4.6 mm\n" in text
    assert output.read_text("utf-8") == bs.page(knife, units="mm").html


@pytest.mark.usefixtures("undrawn")
def test_the_line_of_the_readme_writes_the_page(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    line = re.search(r"`backspring (report data/\S+ -o (\S+\.html))`", README.read_text("utf-8"))
    assert line is not None
    (tmp_path / "data").symlink_to(DESIGNS.parent)
    monkeypatch.chdir(tmp_path)
    assert main(line[1].split()) == 1
    assert (tmp_path / line[2]).stat().st_size > 10_000


def test_a_thing_without_a_page_is_refused() -> None:
    with pytest.raises(bs.InvalidInput, match="design: must be a design or a knife, got str"):
        bs.page("heron.toml")  # type: ignore[arg-type]


def test_without_matplotlib_one_line_says_what_to_install(tmp_path: Path) -> None:
    """A module set to None cannot be imported: Python's own import rules."""
    output = tmp_path / "wren.html"
    question = (
        "import sys; sys.modules['matplotlib'] = None; from backspring.cli import main;"
        f"sys.exit(main(['report', {WREN!r}, '-o', {str(output)!r}]))"
    )
    answer = subprocess.run([sys.executable, "-c", question], capture_output=True, text=True)
    assert answer.returncode == 2
    assert answer.stderr == 'pictures need matplotlib: pip install "backspring[plot]"\n'
    assert not output.exists()


def test_the_room_of_pictures_is_found_where_it_is() -> None:
    assert page_drawing.picture_room().__name__ == "backspring.picture"
