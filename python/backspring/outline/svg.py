"""Outlines out of an SVG drawing. Needs svgelements: `pip install backspring[svg]`."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from backspring.outline.chain import Piece
from backspring.outline.curves import arcs_of
from backspring.outline.drawing import Drawing
from backspring.outline.loops import Edge

_MM_PER = {"mm": 1.0, "cm": 10.0, "in": 25.4, "pt": 25.4 / 72.0, "pc": 25.4 / 6.0}
_MOST_BYTES = 20_000_000
_MOST_SEGMENTS = 20_000
_ABSOLUTE = re.compile(r"^\s*[\d.eE+-]+\s*(mm|cm|in|pt|pc)\s*$", re.IGNORECASE)
_ROUND = 1e-9


def read_svg(path: Path, mm_per_unit: float | None = None) -> Drawing:
    """Read paths and shapes as they stand in the picture, its y axis turned outward.

    Raises ValueError with what keeps the file from being read.
    """
    import svgelements as se  # type: ignore[import-untyped]

    if path.stat().st_size > _MOST_BYTES:
        raise ValueError(f"larger than {_MOST_BYTES // 1_000_000} MB")
    try:
        picture = se.SVG.parse(str(path), ppi=96.0, reify=True)
    except Exception as error:
        raise ValueError(f"no SVG drawing: {error}") from error
    drawing = Drawing(mm_per_unit=mm_per_unit or _mm_per_pixel(str(picture.values.get("width"))))
    scale = drawing.mm_per_unit or 1.0
    for count, (layer, shape) in enumerate(_shapes(picture, "")):
        if count >= _MOST_SEGMENTS:
            drawing.faults.append(f"more than {_MOST_SEGMENTS} shapes")
            break
        _take(drawing, shape, layer, scale)
    return drawing


def _mm_per_pixel(width: str) -> float | None:
    """Tell the size of a pixel of a picture whose width has a unit, as the reader converts it."""
    import svgelements as se

    unit = _ABSOLUTE.match(width)
    if unit is None:
        return None
    name = unit.group(1).lower()
    return _MM_PER[name] / float(se.Length(f"1{name}").value(ppi=96.0))


def _shapes(group: Any, layer: str) -> Iterator[tuple[str, Any]]:
    import svgelements as se

    for element in group:
        if isinstance(element, se.Group):
            own = element.values.get("{http://www.inkscape.org/namespaces/inkscape}label")
            own = own or element.values.get("attributes", {}).get("id")
            yield from _shapes(element, own or layer)
        elif isinstance(element, se.Shape):
            yield layer or str(element.values.get("attributes", {}).get("id") or ""), element
        elif isinstance(element, (se.Text, se.Image)):
            yield layer, element


def _take(drawing: Drawing, shape: Any, layer: str, scale: float) -> None:
    import svgelements as se

    if not isinstance(shape, se.Shape):
        kind = type(shape).__name__
        drawing.left_out[kind] = drawing.left_out.get(kind, 0) + 1
        return
    if isinstance(shape, (se.Circle, se.Ellipse)):
        rx, ry = shape.implicit_rx, shape.implicit_ry
        if abs(rx - ry) <= _ROUND * max(rx, ry):
            drawing.circles.append((_place(shape.implicit_center, scale), 2.0 * scale * rx, layer))
            return
    for segment in se.Path(shape):
        if isinstance(segment, se.Move) or segment.start is None or segment.end is None:
            continue
        drawing.edges += [Edge(piece, layer) for piece in _pieces(segment, scale)]


def _pieces(segment: Any, scale: float) -> list[Piece]:
    import svgelements as se

    start, end = _place(segment.start, scale), _place(segment.end, scale)
    if isinstance(segment, (se.Line, se.Close)):
        return [Piece(start, end, 0.0)]
    if isinstance(segment, se.Arc) and abs(segment.rx - segment.ry) <= 1e-6 * segment.rx:
        # Above the picture's downward axis what turns to the right turns to the left.
        return list(_round(start, end, -segment.sweep))
    return arcs_of(lambda share: _place(segment.point(min(max(share, 0.0), 1.0)), scale))


def _round(start: complex, end: complex, sweep_rad: float) -> Iterator[Piece]:
    """Make an arc; a turn of more than half in two."""
    if abs(sweep_rad) <= math.pi + _ROUND:
        yield Piece(start, end, math.tan(0.25 * sweep_rad))
        return
    whole = Piece(start, end, math.tan(0.25 * sweep_rad))
    middle = whole.point_mm(0.5)
    yield Piece(start, middle, math.tan(0.125 * sweep_rad))
    yield Piece(middle, end, math.tan(0.125 * sweep_rad))


def _place(point: Any, scale: float) -> complex:
    return scale * complex(point.x, -point.y)
