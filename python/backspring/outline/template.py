"""A joint drawn at its true size: spring, tang and the liner's holes, to cut and drill by."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from backspring import _core
from backspring.outline.chain import Chain
from backspring.outline.drawn import draw
from backspring.outline.loops import place_text
from backspring.outline.offset import offset
from backspring.outline.part_outlines import Hole, Outlines

BAR_MM = 50.0
_GAP_MM = 8.0
_CROSS_MM = 1.5
_LINER_PIN_MM = 2.0
TEXT_MM = 2.5
_WIDE = 0.6  # of a letter, in its height


@dataclass(frozen=True, slots=True)
class Shape:
    """An outline, a circle or a line of a template; a line has no width of its own."""

    layer: str
    chain: Chain | None = None
    hole: Hole | None = None
    line: tuple[complex, complex] | None = None
    dashed: bool = False


@dataclass(frozen=True, slots=True)
class Words:
    """A text and where it begins."""

    layer: str
    at_mm: complex
    text: str


@dataclass(frozen=True, slots=True)
class Template:
    """Everything to draw, in mm from the lower left corner."""

    name: str
    width_mm: float
    height_mm: float
    shapes: tuple[Shape, ...]
    words: tuple[Words, ...]


def template(
    design: _core.Design, name: str, kerf_mm: float = 0.0, stock_mm: float = 0.0
) -> Template:
    """Lay spring, tang and liner holes out one above the other, at true size.

    The outlines are moved out, and holes in, by half the width of the cut; `stock_mm` more is drawn
    dashed. Raises ValueError with the place where the cut is wider than a hollow or a hole.
    """
    outlines = draw(design)
    rows = [
        _part("spring", outlines.spring, outlines.spring_holes),
        _part("tang", outlines.tang, (outlines.tang_hole,)),
        _liner(outlines),
    ]
    shapes: list[Shape] = []
    words: list[Words] = []
    top = _GAP_MM + BAR_MM * 0.1
    for row in reversed(rows):
        low, high = _bounds(row)
        by = complex(_GAP_MM - low.real, top - low.imag)
        for shape in row:
            shapes += _cut(_shifted(shape, by), kerf_mm, stock_mm)
        words += _names(row, by, design)
        top += high.imag - low.imag + _GAP_MM
    bar = complex(_GAP_MM, 0.5 * _GAP_MM)
    shapes.append(Shape("notes", line=(bar, bar + BAR_MM)))
    shapes += [Shape("notes", line=(end - 1j, end + 1j)) for end in (bar, bar + BAR_MM)]
    words.append(Words("notes", bar + BAR_MM + 2.0, f"{BAR_MM:g} mm: measure it before you cut"))
    words.append(Words("notes", complex(_GAP_MM, top - 3.0), name))
    low = min(0.0, *(_reach(word)[0] - _GAP_MM for word in words))
    high = max(_bounds(shapes)[1].real, *(_reach(word)[1] for word in words)) + _GAP_MM
    by = complex(-low)
    return Template(
        name,
        high - low,
        top + 2.0,
        tuple(_shifted(shape, by) for shape in shapes),
        tuple(Words(word.layer, word.at_mm + by, word.text) for word in words),
    )


def _reach(word: Words) -> tuple[float, float]:
    """Where a text begins and about ends."""
    return word.at_mm.real, word.at_mm.real + _WIDE * TEXT_MM * len(word.text)


def _part(layer: str, chain: Chain, holes: Sequence[Hole]) -> list[Shape]:
    return [Shape(layer, chain=chain), *(Shape(layer, hole=hole) for hole in holes)]


def _liner(outlines: Outlines) -> list[Shape]:
    widths = [outlines.tang_hole, *outlines.spring_holes]
    places = (outlines.pivot_mm, outlines.middle_mm, outlines.rear_mm)
    return [
        Shape("liner", hole=Hole(place, hole.diameter_mm or _LINER_PIN_MM))
        for place, hole in zip(places, widths, strict=True)
    ]


def _shifted(shape: Shape, by: complex) -> Shape:
    if shape.chain:
        return replace(shape, chain=shape.chain.moved(1.0, by))
    if shape.hole:
        return replace(shape, hole=Hole(shape.hole.center_mm + by, shape.hole.diameter_mm))
    assert shape.line
    return replace(shape, line=(shape.line[0] + by, shape.line[1] + by))


def _cut(shape: Shape, kerf_mm: float, stock_mm: float) -> Iterator[Shape]:
    """Give what the cutter follows, with the stock about it, and a cross in every hole."""
    if shape.chain:
        yield Shape(shape.layer, chain=offset(shape.chain, 0.5 * kerf_mm))
        if stock_mm:
            around = offset(shape.chain, 0.5 * kerf_mm + stock_mm)
            yield Shape("stock", chain=around, dashed=True)
    elif shape.hole:
        center, width = shape.hole.center_mm, shape.hole.diameter_mm
        if width:
            if width <= kerf_mm:
                raise ValueError(f"hole at {place_text(center)} is narrower than the cut")
            yield Shape(shape.layer, hole=Hole(center, width - kerf_mm))
        for way in (_CROSS_MM + 0j, _CROSS_MM * 1j):
            yield Shape("notes", line=(center - way, center + way))


def _bounds(shapes: Sequence[Shape]) -> tuple[complex, complex]:
    """Lower left and upper right corner."""
    places: list[complex] = []
    for shape in shapes:
        if shape.chain:
            places += [
                piece.point_mm(share) for piece in shape.chain.pieces for share in (0.0, 0.5, 1.0)
            ]
        elif shape.hole:
            reach = 0.5 * shape.hole.diameter_mm * (1.0 + 1.0j)
            places += [shape.hole.center_mm - reach, shape.hole.center_mm + reach]
        elif shape.line:
            places += shape.line
    return (
        complex(min(p.real for p in places), min(p.imag for p in places)),
        complex(max(p.real for p in places), max(p.imag for p in places)),
    )


def _names(row: Sequence[Shape], by: complex, design: _core.Design) -> Iterator[Words]:
    """Name the part, and the faces of a tang."""
    layer = row[0].layer
    low, high = _bounds(row)
    yield Words("notes", complex(high.real + 2.0, 0.5 * (low.imag + high.imag)) + by, layer)
    if layer != "tang":
        return
    tang = design.tang
    yield Words("notes", complex(-0.4 * tang.open_mm, tang.open_mm + 1.0) + by, "open")
    yield Words("notes", complex(-0.4 * tang.open_mm, -tang.closed_mm - 3.2) + by, "closed")
    if tang.half_stop_mm:
        yield Words("notes", complex(-tang.half_stop_mm - 15.0, -1.0) + by, "half-stop")
