"""Outlines out of an SVG drawing. Needs svgelements: `pip install backspring[svg]`."""

from __future__ import annotations

import io
import math
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any
from xml.etree.ElementTree import Element

from backspring.outline.chain import Piece
from backspring.outline.curves import Curve
from backspring.outline.drawing import Drawing
from backspring.outline.file_bounds import MOST_EDGES, content_of, no_drawing
from backspring.outline.loops import Edge
from backspring.outline.svg_bounds import bounded_root
from backspring.unit_table import INCH_MM, MM_PER_POINT

_MM_PER = {"mm": 1.0, "cm": 10.0, "in": INCH_MM, "pt": MM_PER_POINT, "pc": INCH_MM / 6.0}
_ABSOLUTE = re.compile(r"^\s*[\d.eE+-]+\s*(mm|cm|in|pt|pc)\s*$", re.IGNORECASE)
_ROUND = 1e-9


def read_svg(path: Path, mm_per_unit: float | None = None) -> Drawing:
    """Read paths and shapes as they stand in the picture, its y axis turned outward.

    `mm_per_unit` is that of a picture which does not say its units.

    Raises ValueError with what keeps the file from being read.
    """
    import svgelements as se  # type: ignore[import-untyped]

    content = content_of(path)
    root = bounded_root(content)
    with no_drawing("SVG"):
        picture = se.SVG.parse(io.BytesIO(content), ppi=96.0, height=_height(root), reify=True)
        own = _mm_per_pixel(str(picture.values.get("width")))
        drawing = Drawing(mm_per_unit=own or mm_per_unit)
        scale = drawing.mm_per_unit or 1.0
        for layer, shape in _shapes(picture, ""):
            _take(drawing, shape, layer, scale)
            if len(drawing.edges) > MOST_EDGES:
                raise ValueError(f"more than {MOST_EDGES} lines and arcs")
    return drawing


def _height(root: Element) -> float:
    """Say how high a picture is that does not: as its view asks for at its width [px]."""
    import svgelements as se

    box = [float(each) for each in re.split(r"[\s,]+", root.get("viewBox", "").strip()) if each]
    if root.get("height") or len(box) != 4 or not box[2] > 0.0:
        return 1000.0
    return float(se.Length(root.get("width", "100%")).value(ppi=96.0, relative_length=1000.0)) * (
        box[3] / box[2]
    )


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
        pieces = _pieces(segment, scale)
        if pieces is None:
            drawing.add_curve(_curve(segment, scale), layer)
        else:
            drawing.edges += [Edge(piece, layer) for piece in pieces]


def _curve(segment: Any, scale: float) -> Curve:
    return lambda share: _place(segment.point(min(max(share, 0.0), 1.0)), scale)


def _pieces(segment: Any, scale: float) -> list[Piece] | None:
    """Give a line or an arc of a circle; None of another curve."""
    import svgelements as se

    start, end = _place(segment.start, scale), _place(segment.end, scale)
    if isinstance(segment, (se.Line, se.Close)):
        return [Piece(start, end, 0.0)]
    if isinstance(segment, se.Arc) and abs(segment.rx - segment.ry) <= 1e-6 * segment.rx:
        # Above the picture's downward axis what turns to the right turns to the left.
        return list(_round(start, end, -segment.sweep))
    return None


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
