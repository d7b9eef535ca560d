"""The Heron drawn entity by entity with the library for DXF files."""

from __future__ import annotations

import math
from pathlib import Path
from typing import Any

import ezdxf
import pytest

import backspring as bs
from backspring import _core
from backspring.outline.chain import Piece
from backspring.outline.drawn import draw
from backspring.outline.reading import OutlineReading, read_outline

REPO = Path(__file__).resolve().parents[1]
DEMOS = ("bittern", "heron", "kestrel", "osprey", "wren")
VALUES = {"spring.steel": '"O1"', "spring.hardness": '"45 HRC"', "spring.width": '"2.3 mm"'}


def demo(name: str) -> bs.Design:
    return bs.load(REPO / "data" / "designs" / f"{name}.toml")


def numbers(core: _core.Design) -> list[float]:
    """What the outlines say of a joint [mm]."""
    tang, fit, pad = core.tang, core.fit, core.pad
    kick = tang.kick
    return [
        *(value for row in core.spring.thickness for value in (row.x_mm, row.thickness_mm)),
        *(value for hole in core.spring.holes for value in (hole.diameter_mm, hole.offset_mm)),
        core.spring.support.rear_pin_mm, pad.start_mm, pad.end_mm, fit.preload_mm,
        tang.pivot_mm, tang.open_mm, tang.half_stop_mm or 0.0, tang.closed_mm,
        tang.corner_open_mm, tang.corner_closed_mm, tang.front_mm,
        *((kick.distance_mm, kick.height_mm, kick.radius_mm) if kick else ()),
    ]  # fmt: skip


class Pen:
    """A drawing made with the library for such files, entity by entity."""

    def __init__(self, units: int = 4, scale: float = 1.0) -> None:
        self.document = ezdxf.new("R2010")
        self.document.header["$INSUNITS"] = units
        self.space = self.document.modelspace()
        self.scale = scale
        self.outlines = draw(demo("heron").core)

    def chain(self, part: str, *, target: Any = None, layer: str | None = None) -> None:
        """Draw a part as loose lines and arcs."""
        space = self.space if target is None else target
        for piece in getattr(self.outlines, part).pieces:
            self.piece(piece, space, layer or part)

    def piece(self, piece: Piece, space: Any, layer: str) -> None:
        """Draw one line or arc, which this library draws counterclockwise."""
        a, b = (self.place(end) for end in (piece.start_mm, piece.end_mm))
        if not piece.bulge:
            space.add_line(a, b, {"layer": layer})
            return
        center = self.place(piece.center_mm)
        first, last = (math.degrees(math.atan2(p[1] - center[1], p[0] - center[0])) for p in (a, b))
        if piece.bulge < 0.0:
            first, last = last, first
        radius = self.scale * abs(piece.radius_mm)
        space.add_arc(center, radius, first, last, dxfattribs={"layer": layer})

    def place(self, at: complex) -> tuple[float, float]:
        """Scale a place to the drawing's units."""
        return self.scale * at.real, self.scale * at.imag

    def holes(self, *parts: str) -> None:
        """Draw the holes of parts."""
        o = self.outlines
        holes = {
            "spring": [(hole.center_mm, hole.diameter_mm) for hole in o.spring_holes],
            "tang": [(o.tang_hole.center_mm, o.tang_hole.diameter_mm)],
            "liner": [(place, 2.0) for place in (o.rear_mm, o.pivot_mm, o.middle_mm)],
        }
        for part in parts:
            for center, width in holes[part]:
                radius = 0.5 * self.scale * width
                self.space.add_circle(self.place(center), radius, {"layer": part})

    def read(self, tmp_path: Path, **options: Any) -> OutlineReading:
        """Save the drawing and read it."""
        path = tmp_path / "pen.dxf"
        self.document.saveas(path)
        return read_outline(path, values=VALUES, **options)


def whole(**options: Any) -> Pen:
    """Draw the Heron."""
    pen = Pen(**options)
    pen.chain("spring")
    pen.chain("tang")
    pen.holes("spring", "tang", "liner")
    return pen


def is_heron(reading: OutlineReading, within: float = 1e-6) -> bool:
    return numbers(reading.design.core) == pytest.approx(
        numbers(demo("heron").core), rel=0.0, abs=within
    )
