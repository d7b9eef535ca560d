"""Outlines out of a DXF drawing. Needs ezdxf: `pip install backspring[dxf]`."""

from __future__ import annotations

import io
import itertools
import math
import re
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING, Any

from backspring.outline.chain import Piece
from backspring.outline.drawing import Drawing
from backspring.outline.file_bounds import MOST_EDGES, content_of, no_drawing
from backspring.outline.loops import Edge
from backspring.unit_table import FOOT_MM, INCH_MM, THOU_MM

if TYPE_CHECKING:
    from ezdxf.entities.dxfgfx import DXFGraphic

# $INSUNITS to mm; a drawing in no units must be told which.
_MM_PER_UNIT = {
    1: INCH_MM, 2: FOOT_MM, 4: 1.0, 5: 10.0, 6: 1000.0, 8: 1e-3 * THOU_MM, 9: THOU_MM, 13: 0.001,
}  # fmt: skip
_MOST_ENTITIES = 10_000
_MOST_IN_FILE = 60_000
_MOST_LINES = 1_500_000
_NEW_ENTITY = re.compile(rb"\n *0\r?\n")
_FLAT_MM = 1e-6


def read_dxf(path: Path, mm_per_unit: float | None = None) -> Drawing:
    """Read lines, arcs, circles, polylines, ellipses and splines, out of blocks too.

    `mm_per_unit` is that of a drawing which does not say its units.

    Raises ValueError with what keeps the file from being read.
    """
    from ezdxf import recover

    content = content_of(path)
    _require_bounded(content)
    with no_drawing("DXF"):
        document, _ = recover.read(io.BytesIO(content))
        scale = _MM_PER_UNIT.get(document.header.get("$INSUNITS", 0)) or mm_per_unit
        drawing = Drawing(mm_per_unit=scale)
        for entity in _flat_entities(document.modelspace(), (), itertools.count(1)):
            _take(drawing, entity, scale or 1.0)
            if len(drawing.edges) > MOST_EDGES:
                raise ValueError(f"more than {MOST_EDGES} lines and arcs")
    return drawing


def _require_bounded(content: bytes) -> None:
    if content[:2] == b"PK":
        raise ValueError("no DXF drawing, but a zip file: unpack it first")
    if content.lstrip()[:1] == b"<":
        raise ValueError("no DXF drawing, but one of another kind: name it .svg if it is one")
    entities = sum(1 for _ in _NEW_ENTITY.finditer(content))
    if entities > _MOST_IN_FILE:
        raise ValueError(f"{entities} entities: more than {_MOST_IN_FILE}, keep the outlines alone")
    if content.count(b"\n") > _MOST_LINES:
        raise ValueError("too many numbers to be the outlines of a knife")


def _flat_entities(
    entities: Any, within: tuple[str, ...], count: Iterator[int]
) -> Iterator[DXFGraphic]:
    """Every entity, those of blocks as they stand in the drawing, in whatever blocks they are."""
    for entity in entities:
        if next(count) > _MOST_ENTITIES:
            raise ValueError(f"more than {_MOST_ENTITIES} entities, those of blocks counted")
        kind = entity.dxftype()
        if kind == "INSERT":
            name = entity.dxf.name
            if name in within:
                raise ValueError(f"block {name[:40]} holds itself")
            if entity.block() is None:
                raise ValueError(f"block {name[:40]} is not in the drawing")
            copies = entity.multi_insert() if entity.mcount > 1 else [entity]
            for copy in copies:
                yield from _flat_entities(copy.virtual_entities(), (*within, name), count)
        elif kind in ("LWPOLYLINE", "POLYLINE") and _plane(entity):
            yield from entity.virtual_entities()
        else:
            yield entity


def _plane(entity: DXFGraphic) -> bool:
    return entity.dxftype() == "LWPOLYLINE" or bool(entity.is_2d_polyline)  # type: ignore[attr-defined]


def _take(drawing: Drawing, entity: DXFGraphic, scale: float) -> None:
    kind, layer = entity.dxftype(), entity.dxf.get("layer", "0")
    if kind == "LINE":
        ends = entity.dxf.start, entity.dxf.end
        _require_flat(drawing, kind, [end.z * scale for end in ends])
        start, end = (_place(place, scale) for place in ends)
        drawing.edges.append(Edge(Piece(start, end, 0.0), layer))
    elif kind == "CIRCLE":
        center = entity.ocs().to_wcs(entity.dxf.center)
        drawing.circles.append((_place(center, scale), 2.0 * scale * entity.dxf.radius, layer))
    elif kind == "ARC":
        drawing.edges.append(Edge(_arc(entity, scale), layer))
    elif kind in ("SPLINE", "ELLIPSE"):
        try:
            tool = entity.construction_tool()  # type: ignore[attr-defined]
        except (ValueError, ArithmeticError) as error:
            drawing.faults.append(f"a {kind} on layer {layer} is none: {error}")
            return
        curve = _of_spline(tool, scale) if kind == "SPLINE" else _of_ellipse(tool, scale)
        drawing.add_curve(curve, layer)
    elif kind in ("POINT", "DIMENSION", "TEXT", "MTEXT", "HATCH", "LEADER", "VIEWPORT", "ATTDEF"):
        drawing.left_out[kind] = drawing.left_out.get(kind, 0) + 1
    else:
        drawing.faults.append(f"a {kind} on layer {layer} is no outline")


def _place(point: Any, scale: float) -> complex:
    return scale * complex(point.x, point.y)


def _require_flat(drawing: Drawing, kind: str, heights: list[float]) -> None:
    if max(heights) - min(heights) > _FLAT_MM:
        drawing.faults.append(f"a {kind} runs out of the drawing's plane by {max(heights):.3f} mm")


def _arc(entity: Any, scale: float) -> Piece:
    """Make an arc, counterclockwise, or the other way where its plane is seen from behind."""
    start, end = (_place(p, scale) for p in (entity.start_point, entity.end_point))
    sweep = math.radians((entity.dxf.end_angle - entity.dxf.start_angle) % 360.0 or 360.0)
    bulge = math.tan(0.25 * sweep)
    return Piece(start, end, -bulge if entity.dxf.extrusion.z < 0.0 else bulge)


def _of_spline(spline: Any, scale: float) -> Any:
    last = spline.max_t
    return lambda share: _place(spline.point(min(max(share, 0.0), 1.0) * last), scale)


def _of_ellipse(ellipse: Any, scale: float) -> Any:
    first, span = ellipse.start_param, ellipse.param_span
    return lambda share: _place(next(iter(ellipse.vertices([first + share * span]))), scale)
