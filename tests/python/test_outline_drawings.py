"""The Heron drawn in ways of other hands, each read as the same joint or refused with a word."""

from __future__ import annotations

import cmath
import math
import random
from collections.abc import Callable
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest
from ezdxf.math import Matrix44

import backspring as bs
from backspring import _core
from backspring.outline.chain import Piece
from backspring.outline.crossing import crossing_of
from backspring.outline.drawn import draw
from outline_pen import Pen, demo, is_heron, whole

TURNED = Matrix44.z_rotate(math.pi)
ASKEW = Matrix44.z_rotate(math.radians(37.0)) @ Matrix44.translate(120.0, -80.0, 0.0)
OVER = Matrix44.scale(-1.0, 1.0, 1.0)
UNDER = Matrix44.scale(1.0, -1.0, 1.0)


@pytest.mark.parametrize("way", [TURNED, ASKEW, OVER, UNDER, OVER @ ASKEW, UNDER @ TURNED])
def test_a_drawing_turned_or_seen_from_the_other_side(way: Matrix44, tmp_path: Path) -> None:
    pen = whole()
    for entity in pen.space:
        entity.transform(way)
    assert is_heron(pen.read(tmp_path))


def _blocks(pen: Pen, insert: Callable[[Any], None]) -> None:
    block = pen.document.blocks.new("PARTS")
    pen.chain("spring", target=block)
    pen.chain("tang", target=block)
    space, pen.space = pen.space, block
    pen.holes("spring", "tang", "liner")
    pen.space = space
    insert(pen)


def _mirrored(pen: Pen) -> None:
    pen.space.add_blockref("PARTS", (50, 9), {"xscale": -1.0, "rotation": 25.0})


def _nested(pen: Pen) -> None:
    pen.document.blocks.new("WHOLE").add_blockref("PARTS", (7, 3), {"yscale": -1.0})
    pen.space.add_blockref("WHOLE", (1, 1), {"xscale": -1.0, "yscale": -1.0, "rotation": 200.0})


def _halved(pen: Pen) -> None:
    pen.document.blocks.new("WHOLE").add_blockref("PARTS", (0, 0), {"xscale": 2.0, "yscale": 2.0})
    pen.space.add_blockref("WHOLE", (0, 0), {"xscale": 0.5, "yscale": 0.5})


@pytest.mark.parametrize("insert", [_mirrored, _nested, _halved])
def test_blocks_mirrored_nested_and_scaled(insert: Callable[[Any], None], tmp_path: Path) -> None:
    pen = Pen()
    _blocks(pen, insert)
    assert is_heron(pen.read(tmp_path))


def test_a_block_in_inches_drawn_mirrored(tmp_path: Path) -> None:
    pen = Pen(units=1, scale=1.0 / 25.4)
    _blocks(pen, _mirrored)
    assert is_heron(pen.read(tmp_path))


def test_lines_in_any_order_and_direction(tmp_path: Path) -> None:
    pen, dice = Pen(), random.Random(3)
    pieces = [("spring", each) for each in pen.outlines.spring.pieces]
    for each in pen.outlines.tang.pieces:
        steps = 1 if each.bulge else 5
        ends = [each.point_mm(i / steps) for i in range(steps + 1)]
        pieces += [("tang", Piece(*pair, each.bulge)) for pair in pairwise(ends)]
    dice.shuffle(pieces)
    for part, piece in pieces:
        backwards = Piece(piece.end_mm, piece.start_mm, -piece.bulge)
        pen.piece(dice.choice([piece, backwards]), pen.space, part)
    pen.holes("spring", "tang", "liner")
    assert is_heron(pen.read(tmp_path))


def test_polylines_with_bulges_and_holes_in_halves(tmp_path: Path) -> None:
    pen = Pen()
    for part in ("spring", "tang"):
        points = [(*pen.place(v.at_mm), v.bulge) for v in getattr(pen.outlines, part).vertices]
        pen.space.add_lwpolyline(points, format="xyb", close=True, dxfattribs={"layer": part})
    pen.holes("tang", "liner")
    for hole in pen.outlines.spring_holes:
        center, radius = pen.place(hole.center_mm), 0.5 * hole.diameter_mm
        for start in (20.0, 200.0):
            on = {"layer": "spring"}
            pen.space.add_arc(center, radius, start, start + 180.0, dxfattribs=on)
    assert is_heron(pen.read(tmp_path))


def test_a_gap_at_every_corner(tmp_path: Path) -> None:
    pen = Pen()
    for part in ("spring", "tang"):
        for piece in getattr(pen.outlines, part).pieces:
            if piece.bulge:
                pen.piece(piece, pen.space, part)
                continue
            cut = 0.02 * (piece.end_mm - piece.start_mm) / abs(piece.end_mm - piece.start_mm)
            pen.piece(Piece(piece.start_mm + cut, piece.end_mm - cut, 0.0), pen.space, part)
    pen.holes("spring", "tang", "liner")
    reading = pen.read(tmp_path)
    assert len(reading.found.gaps) >= 10
    read, drawn = reading.design.core, demo("heron").core
    for x in range(-38, 37):
        depths = [_core.thickness_mm(each.spring.thickness, x) for each in (read, drawn)]
        # Where lines are nearly in line the gap of 0.04 mm is a chord across the corner.
        assert depths[0] == pytest.approx(depths[1], abs=0.04 * 0.1 / 4.0)
    assert read.pad.start_mm == pytest.approx(drawn.pad.start_mm, abs=0.021)
    assert read.fit.preload_mm == pytest.approx(drawn.fit.preload_mm, abs=1e-6)
    assert read.tang.half_stop_mm == pytest.approx(drawn.tang.half_stop_mm, abs=1e-6)


def _as_ellipse(pen: Pen, piece: Piece) -> None:
    center = piece.center_mm
    first = cmath.phase(piece.start_mm - center)
    pen.space.add_ellipse(
        pen.place(center), (piece.radius_mm, 0.0), 1.0, first, first + piece.sweep_rad,
        dxfattribs={"layer": "tang"},
    )  # fmt: skip


def _as_spline(pen: Pen, piece: Piece) -> None:
    points = [pen.place(piece.point_mm(i / 12)) for i in range(13)]
    pen.space.add_spline(points, degree=3, dxfattribs={"layer": "tang"})


def _as_rational(pen: Pen, piece: Piece) -> None:
    corner = piece.center_mm + piece.radius_mm * cmath.exp(
        1j * (cmath.phase(piece.start_mm - piece.center_mm) + 0.5 * piece.sweep_rad)
    ) / math.cos(0.5 * piece.sweep_rad)
    points = [pen.place(at) for at in (piece.start_mm, corner, piece.end_mm)]
    weights = [1.0, math.cos(0.5 * piece.sweep_rad), 1.0]
    pen.space.add_rational_spline(points, weights, degree=2, dxfattribs={"layer": "tang"})


@pytest.mark.parametrize("as_curve", [_as_ellipse, _as_spline, _as_rational])
def test_corners_drawn_as_other_curves(
    as_curve: Callable[[Pen, Piece], None], tmp_path: Path
) -> None:
    pen = Pen()
    pen.chain("spring")
    for piece in pen.outlines.tang.pieces:
        if piece.bulge:
            as_curve(pen, piece)
        else:
            pen.piece(piece, pen.space, "tang")
    pen.holes("spring", "tang", "liner")
    assert is_heron(pen.read(tmp_path), within=0.006)


def test_parts_on_one_layer_are_known_by_their_holes(tmp_path: Path) -> None:
    pen = whole()
    for entity in pen.space:
        apart = {"spring": 40.0, "tang": 0.0, "liner": -60.0}[entity.dxf.layer]
        entity.translate(0.0, apart, 0.0)
        entity.dxf.layer = "0"
    frame = [(-72, -70), (20, -70), (20, -45), (-72, -45)]
    pen.space.add_lwpolyline(frame, close=True, dxfattribs={"layer": "0"})
    reading = pen.read(tmp_path)
    assert reading.found.known_by == {"spring": "2 holes", "tang": "1 hole", "liner": "3 holes"}
    assert is_heron(reading)


def test_a_hole_drawn_as_a_polygon(tmp_path: Path) -> None:
    pen = whole()
    circle = pen.space.query("CIRCLE[layer=='tang']")[0]
    center, radius = complex(circle.dxf.center.x, circle.dxf.center.y), circle.dxf.radius
    pen.space.delete_entity(circle)
    points = [pen.place(center + radius * cmath.exp(1j * math.tau * i / 24)) for i in range(24)]
    pen.space.add_lwpolyline(points, close=True, dxfattribs={"layer": "tang"})
    assert is_heron(pen.read(tmp_path))


def _crossed(pen: Pen) -> None:
    spring = pen.outlines.spring
    for entity in pen.space.query("LINE[layer=='spring']"):
        pen.space.delete_entity(entity)
    points = [pen.place(v.at_mm) for v in spring.vertices]
    front = sorted(range(len(points)), key=lambda i: points[i])[-2:]
    points[front[0]], points[front[1]] = points[front[1]], points[front[0]]
    pen.space.add_lwpolyline(points, close=True, dxfattribs={"layer": "spring"})


def _hole_twice(pen: Pen) -> None:
    pen.holes("liner")


def _three_d(pen: Pen) -> None:
    pen.space.add_polyline3d([(0, 0, 0), (1, 1, 1), (2, 0, 3)])


def _squashed(pen: Pen) -> None:
    for entity in pen.space.query("*[layer=='tang']"):
        entity.transform(Matrix44.z_rotate(math.radians(40.0)))


@pytest.mark.parametrize(
    ("spoil", "words"),
    [
        (_crossed, r"the outline crosses itself at \("),
        (_hole_twice, r"hole drawn twice at \(.*\) on layer liner"),
        (_three_d, "a POLYLINE on layer 0 is no outline"),
        (_squashed, r"deg off the nearest face of the tang: draw the tang as it stands open"),
    ],
)
def test_what_is_wrong_is_told(spoil: Callable[[Pen], None], words: str, tmp_path: Path) -> None:
    pen = whole()
    spoil(pen)
    with pytest.raises(bs.InvalidInput, match=words):
        pen.read(tmp_path)


def test_an_outline_that_does_not_cross_itself_is_let_be() -> None:
    outlines = draw(demo("osprey").core)
    assert crossing_of(outlines.spring) is None
    assert crossing_of(outlines.tang) is None
