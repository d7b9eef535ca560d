"""Outlines out of a DXF drawing. Needs ezdxf: `pip install backspring[dxf]`."""

from __future__ import annotations

import math
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING, Any

from backspring.outline.chain import Piece
from backspring.outline.curves import arcs_of
from backspring.outline.drawing import Drawing
from backspring.outline.loops import Edge

if TYPE_CHECKING:
    from ezdxf.entities.dxfgfx import DXFGraphic

# $INSUNITS to mm; a drawing in no units must be told which.
_MM_PER_UNIT = {1: 25.4, 2: 304.8, 4: 1.0, 5: 10.0, 6: 1000.0, 8: 2.54e-5, 9: 0.0254, 13: 0.001}
_MOST_BYTES = 50_000_000
_MOST_ENTITIES = 20_000
_FLAT_MM = 1e-6


def read_dxf(path: Path, mm_per_unit: float | None = None) -> Drawing:
    """Read lines, arcs, circles, polylines, ellipses and splines, out of blocks too.

    Raises ValueError with what keeps the file from being read.
    """
    from ezdxf import recover
    from ezdxf.lldxf.const import DXFError

    if path.stat().st_size > _MOST_BYTES:
        raise ValueError(f"larger than {_MOST_BYTES // 1_000_000} MB")
    try:
        document, _ = recover.readfile(path)
    except (OSError, DXFError) as error:
        raise ValueError(f"no DXF drawing: {error}") from error
    scale = mm_per_unit or _MM_PER_UNIT.get(document.header.get("$INSUNITS", 0))
    drawing = Drawing(mm_per_unit=scale)
    for count, entity in enumerate(_flat_entities(document.modelspace(), 0)):
        if count >= _MOST_ENTITIES:
            drawing.faults.append(f"more than {_MOST_ENTITIES} entities")
            break
        _take(drawing, entity, scale or 1.0)
    return drawing


def _flat_entities(entities: Any, depth: int) -> Iterator[DXFGraphic]:
    """Every entity, those of blocks as they stand in the drawing."""
    for entity in entities:
        kind = entity.dxftype()
        if kind == "INSERT" and depth < 8:
            copies = entity.multi_insert() if entity.mcount > 1 else [entity]
            for copy in copies:
                yield from _flat_entities(copy.virtual_entities(), depth + 1)
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
        tool = entity.construction_tool()  # type: ignore[attr-defined]
        curve = _of_spline(tool, scale) if kind == "SPLINE" else _of_ellipse(tool, scale)
        drawing.edges += [Edge(piece, layer) for piece in arcs_of(curve)]
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
