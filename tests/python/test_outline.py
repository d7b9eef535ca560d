"""A design read from a drawing of its parts, and drawings that are none."""

from __future__ import annotations

import math
import re
from collections.abc import Callable
from pathlib import Path

import pytest

import backspring as bs
from backspring.cli import main
from backspring.outline.reading import read_outline
from backspring.outline.written import write_template
from backspring.picture import outline_picture
from outline_pen import DEMOS, VALUES, Pen, demo, is_heron, numbers, whole


@pytest.mark.parametrize("suffix", [".dxf", ".svg"])
@pytest.mark.parametrize("name", DEMOS)
def test_a_demo_drawn_out_and_read_back_is_the_same(name: str, suffix: str, tmp_path: Path) -> None:
    design, path = demo(name), tmp_path / f"drawn{suffix}"
    write_template(design, path)
    again = read_outline(path, values=VALUES)
    assert numbers(again.design.core) == pytest.approx(numbers(design.core), rel=0.0, abs=1e-6)


def test_loose_lines_and_arcs_are_joined(tmp_path: Path) -> None:
    assert is_heron(whole().read(tmp_path))


def test_inches_are_taken_as_the_drawing_says(tmp_path: Path) -> None:
    assert is_heron(whole(units=1, scale=1.0 / 25.4).read(tmp_path))


def test_a_drawing_without_units_must_be_told_them(tmp_path: Path) -> None:
    pen = whole(units=0, scale=1.0 / 25.4)
    with pytest.raises(bs.InvalidInput, match="does not state its units: give --units mm or in"):
        pen.read(tmp_path)
    told = pen.read(tmp_path, units="in")
    assert 'units = "in"' in told.text
    assert is_heron(told)


def test_layers_of_other_names_are_named(tmp_path: Path) -> None:
    pen = Pen()
    pen.chain("spring", layer="A")
    pen.chain("tang", layer="B")
    pen.holes("spring", "tang", "liner")
    for circle in pen.space.query("CIRCLE"):
        circle.dxf.layer = {"spring": "A", "tang": "B", "liner": "C"}[circle.dxf.layer]
    assert is_heron(pen.read(tmp_path, spring="A", tang="B", liner="C"))
    # Without names the outline with two holes is the spring's and that with one the tang's.
    assert pen.read(tmp_path, liner="C").found.known_by["spring"] == "2 holes"


def test_a_block_is_read_as_it_stands_in_the_drawing(tmp_path: Path) -> None:
    pen = Pen()
    block = pen.document.blocks.new("PART")
    pen.chain("spring", target=block)
    pen.chain("tang")
    pen.holes("tang", "liner", "spring")
    pen.space.add_blockref("PART", (0.0, 0.0), {"layer": "spring"})
    assert is_heron(pen.read(tmp_path))


def test_a_pad_out_of_line_with_the_open_face_is_told(tmp_path: Path) -> None:
    pen = whole()
    for entity in pen.space.query("*[layer=='tang']"):
        entity.rotate_z(math.radians(0.2))
    reading = pen.read(tmp_path)
    # The pad's front end, 4.5 mm ahead of the pivot, is lifted and turns the spring on its pin.
    lifted = math.radians(0.2) * (1.0 - 4.5 / 36.5)
    assert reading.joint.tilt_rad == pytest.approx(lifted, rel=1e-3)
    tang, drawn = reading.design.core.tang, demo("heron").core.tang
    assert tang.half_stop_mm == pytest.approx(drawn.half_stop_mm, abs=1e-6)
    assert tang.closed_mm == pytest.approx(drawn.closed_mm, abs=1e-6)


def test_a_small_gap_is_closed_and_told(tmp_path: Path) -> None:
    pen = whole()
    line = next(e for e in pen.space.query("LINE") if e.dxf.layer == "spring")
    line.dxf.end = (line.dxf.end.x - 0.05, line.dxf.end.y)
    reading = pen.read(tmp_path)
    assert [round(width, 6) for _, width in reading.found.gaps] == [0.05]


def _gap(pen: Pen) -> None:
    line = next(e for e in pen.space.query("LINE") if e.dxf.layer == "spring")
    line.dxf.end = (line.dxf.end.x - 0.5, line.dxf.end.y)


def _twice(pen: Pen) -> None:
    pen.chain("tang")


def _no_tang(pen: Pen) -> None:
    for entity in pen.space.query("*[layer=='tang']"):
        pen.space.delete_entity(entity)


def _no_hole(pen: Pen) -> None:
    pen.space.delete_entity(pen.space.query("CIRCLE[layer=='spring']")[0])


def _two_springs(pen: Pen) -> None:
    pen.space.add_lwpolyline(
        [(90, 0), (99, 0), (99, 9)], close=True, dxfattribs={"layer": "spring"}
    )


def _no_liner(pen: Pen) -> None:
    for entity in pen.space.query("*[layer=='liner']"):
        pen.space.delete_entity(entity)


def _solid(pen: Pen) -> None:
    pen.space.add_3dface([(0, 0, 0), (1, 0, 0), (1, 1, 1), (0, 1, 1)])


def _steep(pen: Pen) -> None:
    pen.space.add_line((0, 0, 0), (1, 0, 5), {"layer": "tang"})


def _no_press(pen: Pen) -> None:
    holes = pen.space.query("CIRCLE[layer=='liner']")
    rear = min(holes, key=lambda hole: hole.dxf.center.x)
    rear.dxf.center = (rear.dxf.center.x, rear.dxf.center.y - 3.0)


@pytest.mark.parametrize(
    ("spoil", "words"),
    [
        (_gap, r"open outline from \("),
        (_twice, r"drawn twice from \("),
        (_no_tang, "tang: no closed outline with 1 hole"),
        (_no_hole, r"spring at \(.*\): needs 2 holes, has 1"),
        (_two_springs, r"spring: 2 outlines, at \("),
        (_no_liner, "liner: needs a layer with the centres of pivot, middle and rear pin"),
        (_solid, "a 3DFACE on layer 0 is no outline"),
        (_steep, "a LINE runs out of the drawing's plane"),
        (_no_press, "the spring would not press: its rear hole lies"),
    ],
)
def test_a_bad_drawing_says_what_and_where(
    spoil: Callable[[Pen], None], words: str, tmp_path: Path
) -> None:
    pen = whole()
    spoil(pen)
    with pytest.raises(bs.InvalidInput, match=words):
        pen.read(tmp_path)


def test_the_command_writes_a_file_that_checks(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    drawing, made = tmp_path / "wren.dxf", tmp_path / "wren.toml"
    write_template(demo("wren"), drawing)
    assert main(["outline", str(drawing), "-o", str(made), "--hardness", "44 HRC"]) == 0
    assert main(["check", str(made), "--json"]) in (0, 1)
    assert "Taken for" in capsys.readouterr().out


def test_a_design_that_is_there_is_kept_and_what_was_assumed_is_told(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    drawing, made = tmp_path / "wren.dxf", tmp_path / "wren.toml"
    write_template(demo("wren"), drawing)
    command = ["outline", str(drawing), "-o", str(made), "--steel", "1095"]
    assert main(command) == 0
    told = capsys.readouterr().out.partition("\nAssumed\n")[2].partition("\n\n")[0]
    assert [line.split(" = ")[0].strip() for line in told.splitlines()] == ["hardness", "width"]
    made.write_text("# numbers of one's own\n")
    assert main(command) == 2
    assert "is there already: choose another name, or --force" in capsys.readouterr().err
    assert made.read_text() == "# numbers of one's own\n"
    assert main([*command, "--hardness", "46", "--width", "2.5", "--force"]) == 0
    assert "Assumed" not in capsys.readouterr().out
    assert bs.load(made).core.spring.width_mm == 2.5


def test_the_picture_names_what_was_taken_for_what(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    drawing, picture = tmp_path / "kestrel.dxf", tmp_path / "taken.svg"
    write_template(demo("kestrel"), drawing)
    command = ["outline", str(drawing), "--units", "in"]
    assert main([*command, "--picture", str(picture), "--hardness", "44 HRC"]) == 0
    told = capsys.readouterr().out
    assert "pivot at 1.3125 in, preload 0.0300 in" in told
    assert " mm" not in told.partition("Design file")[0]
    figure = outline_picture(read_outline(drawing, units="in"))
    words = [text.get_text() for axes in figure.axes for text in axes.texts]
    assert {"spring (layer spring)", "liner: pivot", "rear hole 0.0781 in"} <= {*words}
    assert any(re.fullmatch(r"pad 1\.093[78] in to 1\.5000 in", word) for word in words)
    assert picture.read_text(encoding="utf-8").count("<path") > 10


def test_a_picture_of_no_known_kind_is_refused(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    drawing = tmp_path / "wren.dxf"
    write_template(demo("wren"), drawing)
    assert main(["outline", str(drawing), "--picture", str(tmp_path / "a.bmp")]) == 2
    assert 'must end in .png or .svg, got "a.bmp"' in capsys.readouterr().err


def test_units_that_a_drawing_states_count(tmp_path: Path) -> None:
    reading = whole().read(tmp_path, units="in")
    assert is_heron(reading)
    assert 'units = "in"' in reading.text
