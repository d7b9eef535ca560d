"""Drawings of joints with several blades, read back and spoiled."""

from __future__ import annotations

import math
from collections.abc import Callable
from pathlib import Path
from typing import Any

import ezdxf
import pytest
from ezdxf.math import Matrix44

import backspring as bs
from backspring.cli import main
from backspring.outline.reading import OutlineReading, read_outline
from backspring.outline.written import write_template
from backspring.picture import outline_picture
from outline_pen import VALUES, demo, numbers
from several_blades import SPAN_MM, side_by_side, three, twins, unlike

DESIGNS: dict[str, Callable[[], bs.Design]] = {
    "turnstone": lambda: demo("turnstone"),
    "sanderling": lambda: demo("sanderling"),
    "three": three,
    "side by side": side_by_side,
    "twins on two pins": lambda: twins(SPAN_MM),
    "unlike on one pin": unlike,
    "with a kick": lambda: unlike(SPAN_MM, kick=True),
    "with roots": lambda: demo("turnstone").replace(**{"spring.kink_radius": 1.5}),
}


def _same(reading: OutlineReading, design: bs.Design, within: float = 1e-6) -> None:
    """Hold every blade as it is seen from its own end."""
    again = reading.design
    assert again.blades == design.blades
    for name in design.blades:
        read, drawn = (each.seen_from(name).core for each in (again, design))
        assert [b.end for b in read.blades] == [b.end for b in drawn.blades]
        assert numbers(read) == pytest.approx(numbers(drawn), rel=0.0, abs=within)


def _drawing(design: bs.Design, path: Path) -> Any:
    write_template(design, path)
    return ezdxf.readfile(path)


def _read(document: Any, path: Path) -> OutlineReading:
    document.saveas(path)
    return read_outline(path, values=VALUES)


@pytest.mark.parametrize("suffix", [".dxf", ".svg"])
@pytest.mark.parametrize("name", DESIGNS)
def test_every_blade_drawn_out_and_read_back_is_the_same(
    name: str, suffix: str, tmp_path: Path
) -> None:
    design, path = DESIGNS[name](), tmp_path / f"drawn{suffix}"
    write_template(design, path)
    _same(read_outline(path, values=VALUES), design)


@pytest.mark.parametrize("name", ["turnstone", "three"])
def test_a_drawing_may_be_turned_or_from_the_other_side(name: str, tmp_path: Path) -> None:
    design, path = DESIGNS[name](), tmp_path / "drawn.dxf"
    for way in (
        Matrix44.z_rotate(math.radians(130.0)),
        Matrix44.scale(-1.0, 1.0, 1.0),
        Matrix44.scale(1.0, -1.0, 1.0),
    ):
        document = _drawing(design, path)
        for entity in document.modelspace():
            entity.transform(way)
        _same(_read(document, path), design)


def test_a_tang_may_lie_as_it_does_in_the_knife(tmp_path: Path) -> None:
    design, path = demo("turnstone"), tmp_path / "drawn.dxf"
    document = _drawing(design, path)
    for entity in document.modelspace().query("*[layer=='tang pen']"):
        entity.transform(Matrix44.scale(-1.0, 1.0, 1.0))
    _same(_read(document, path), design)


def test_one_pivot_for_all_blades_needs_no_mark(tmp_path: Path) -> None:
    design, path = demo("sanderling"), tmp_path / "drawn.dxf"
    document = _drawing(design, path)
    for entity in document.modelspace().query("*[layer ? 'pivot.*|pad.*']"):
        document.modelspace().delete_entity(entity)
    _same(_read(document, path), design)


def test_a_pad_that_is_not_marked_is_the_belly_s_last_straight(tmp_path: Path) -> None:
    path = tmp_path / "drawn.dxf"
    document = _drawing(demo("turnstone"), path)
    for entity in document.modelspace().query("*[layer ? 'pad.*']"):
        document.modelspace().delete_entity(entity)
    pads = [each.joint.pad_mm for each in _several(_read(document, path)).joint.blades]
    # The long blade's begins at a corner of the belly, the pen's where its tang can first reach:
    # the corner of its round end lies 5.24 mm off its pivot.
    assert pads[0] == pytest.approx((32.0, 41.5), abs=1e-6)
    assert pads[1] == pytest.approx((32.0 - 1.0 - math.hypot(4.6, 4.2), 36.5), abs=1.0)


def _several(reading: OutlineReading) -> Any:
    assert reading.several is not None
    return reading.several


def _erase(space: Any, query: str) -> None:
    for entity in space.query(query):
        space.delete_entity(entity)


def _no_mark(space: Any) -> None:
    _erase(space, "*[layer=='pivot pen']")


def _no_marks(space: Any) -> None:
    _erase(space, "*[layer ? 'pivot.*']")


def _no_pin(space: Any) -> None:
    holes = space.query("CIRCLE[layer=='liner']")
    space.delete_entity(min(holes, key=lambda hole: abs(hole.dxf.radius - 1.0)))


def _two_tangs(space: Any) -> None:
    space.add_lwpolyline([(90, 0), (99, 0), (99, 9)], close=True, dxfattribs={"layer": "tang pen"})


def _no_hole(space: Any) -> None:
    _erase(space, "CIRCLE[layer=='tang pen']")


def _turned(space: Any) -> None:
    hole = space.query("CIRCLE[layer=='tang pen']")[0].dxf.center
    for entity in space.query("*[layer=='tang pen']"):
        entity.translate(-hole.x, -hole.y, 0.0).rotate_z(math.radians(20.0))


def _too_low(space: Any) -> None:
    for entity in space.query("*[layer=='pivot pen']"):
        entity.translate(0.0, -3.0, 0.0)
    hole = min(space.query("CIRCLE[layer=='liner']"), key=lambda each: each.dxf.center.x)
    hole.translate(0.0, -3.0, 0.0)


def _far_ahead(space: Any) -> None:
    for entity in space.query("*[layer=='pivot pen']"):
        entity.translate(-50.0, 0.0, 0.0)
    hole = min(space.query("CIRCLE[layer=='liner']"), key=lambda each: each.dxf.center.x)
    hole.translate(-50.0, 0.0, 0.0)


@pytest.mark.parametrize(
    ("spoil", "words"),
    [
        (_no_mark, "pivot of pen: mark it on a layer pivot pen"),
        (
            _no_marks,
            "liner: needs a circle for each pivot and 1 for pins, has 3: mark the piv",
        ),
        (_no_pin, "liner: needs a circle for each pivot and 1 for pins, has 2"),
        (_two_tangs, r"tang pen: 2 outlines, at \(.*\) on layer tang pen"),
        (_no_hole, r"tang pen at \(.*\): needs 1 hole, has 0"),
        (_turned, "tang pen: no face within 5 deg of the pad's line, but 20.0 deg"),
        (_too_low, "tang pen: the spring would not press: its open face lies 2.300 mm under"),
        (_far_ahead, "tang pen: the spring does not reach over its pivot"),
    ],
)
def test_a_bad_drawing_says_what_and_where(
    spoil: Callable[[Any], None], words: str, tmp_path: Path
) -> None:
    path = tmp_path / "drawn.dxf"
    document = _drawing(demo("turnstone"), path)
    spoil(document.modelspace())
    with pytest.raises(bs.InvalidInput, match=words):
        _read(document, path)


def test_the_command_tells_every_blade_and_draws_it(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    drawing, made = tmp_path / "turnstone.svg", tmp_path / "again.toml"
    write_template(demo("turnstone"), drawing)
    assert main(["outline", str(drawing), "-o", str(made), "--hardness", "48 HRC"]) == 0
    told = " ".join(capsys.readouterr().out.split())
    assert "long: pivot at 37.00 mm, preload 0.80 mm; pen: pivot at 32.00 mm" in told
    assert "tang pen layer tang pen 79." in told
    assert bs.load(made).blades == ("long", "pen")
    figure = outline_picture(read_outline(drawing))
    words = {text.get_text() for axes in figure.axes for text in axes.texts}
    assert {
        "liner: pivot of pen",
        "pivot of long",
        "tang pen (layer tang pen), hole 2.60 mm",
    } <= words
