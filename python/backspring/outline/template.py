"""A joint drawn at its true size: spring, tangs and the liner's holes, to cut and drill by."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from backspring import _core
from backspring.design.design import Design
from backspring.outline.chain import Chain
from backspring.outline.drawn import with_teeth
from backspring.outline.every_part import EveryPart, TangPart, every_part
from backspring.outline.loops import place_text
from backspring.outline.offset import offset
from backspring.outline.part_outlines import Hole
from backspring.outline.several import AND, PAD, PIVOT
from backspring.units import System, converted

BARS: dict[System, tuple[tuple[str, float], ...]] = {
    "mm": (("50 mm", 50.0),),
    "in": (("2 in", 50.8), ("50 mm", 50.0)),
}
_GAP_MM = 5.0
_BESIDE_MM = 1.2
# How far a centre mark stands out of its hole.
_CROSS_MM = 0.6
TEXT_MM = 2.5
_WIDE = 0.6  # of a letter, in its height
_TALL = 0.75  # of a capital, in the text's height


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

    @property
    def box_mm(self) -> tuple[complex, complex]:
        """Lower left corner, and about the upper right one."""
        size = complex(_WIDE * TEXT_MM * len(self.text), _TALL * TEXT_MM)
        return self.at_mm, self.at_mm + size


@dataclass(frozen=True, slots=True)
class Template:
    """Everything to draw, in mm from the lower left corner."""

    name: str
    width_mm: float
    height_mm: float
    shapes: tuple[Shape, ...]
    words: tuple[Words, ...]


@dataclass(frozen=True, slots=True)
class Cut:
    """Width of the cut, and what is left for grinding."""

    kerf_mm: float = 0.0
    stock_mm: float = 0.0

    @property
    def out_mm(self) -> float:
        """How far the outermost line lies outside the part."""
        return 0.5 * self.kerf_mm + self.stock_mm


_Item = Shape | Words


def template(design: Design, cut: Cut | None = None, units: System | None = None) -> Template:
    """Lay spring, tangs and liner holes out one above the other, at true size.

    The outlines are moved out, and holes in, by half the width of the cut; the stock is drawn
    dashed. Bar and widths are in the given units, the design's own when none are given. Raises
    ValueError with the place where the cut is wider than a hollow or a hole.
    """
    cut, units = cut or Cut(), units or design.units
    parts = every_part(design)
    rows = [
        [*_spring(parts, cut, len(design.blades) > 1)],
        *([*_tang(tang, cut, len(design.blades) > 1)] for tang in parts.tangs),
        [*_liner(parts, cut, units)],
    ]
    left = min(_bounds(row)[0].real for row in rows)
    rows.insert(0, [Words("notes", complex(left), f"{design.title}, scale 1:1")])
    rows.append([_shifted(item, complex(left)) for item in _bars(units)])
    top, placed = 0.0, list[_Item]()
    for row in reversed(rows):
        low, high = _bounds(row)
        top += _GAP_MM
        by = complex(_GAP_MM - left, top - low.imag)
        placed = [*(_shifted(item, by) for item in row), *placed]
        top += high.imag - low.imag
    return Template(
        design.title,
        _bounds(placed)[1].real + _GAP_MM,
        top + _GAP_MM,
        tuple(item for item in placed if isinstance(item, Shape)),
        tuple(item for item in placed if isinstance(item, Words)),
    )


def _spring(parts: EveryPart, cut: Cut, several: bool) -> Iterator[_Item]:
    yield from _outline("spring", parts.spring, cut)
    for hole in parts.spring_holes:
        yield from _hole("spring", hole, cut)
    below = -1j * (cut.out_mm + _BESIDE_MM)
    for pad in parts.pads:
        start, end = (place + below for place in pad.ends_mm)
        layer = f"{PAD}{AND.join(pad.blades)}" if several else "notes"
        yield Shape(layer, line=(start, end))
        yield from (Shape(layer, line=(at - 0.6j, at + 0.6j)) for at in (start, end))
        yield _centred(0.5 * (start + end) - 1j * (_TALL * TEXT_MM + 0.8), "pad")
    low, high = _bounds([Shape("spring", chain=parts.spring)])
    yield _ahead(complex(high.real, 0.5 * high.imag), cut, "spring")


def _tang(part: TangPart, cut: Cut, several: bool) -> Iterator[_Item]:
    """Draw a tang with its faces named, each name outside its face."""
    tang, away = part.core.tang, cut.out_mm + _BESIDE_MM
    name = f"tang {part.name}" if several else "tang"
    yield from _outline(name, part.chain, cut, with_break=True)
    yield from _hole(name, part.hole, cut)
    low, high = _bounds([Shape(name, chain=part.chain)])
    yield Words("notes", complex(-0.4 * tang.open_mm, tang.open_mm + away), "open")
    below = -away - _TALL * TEXT_MM
    closed = Words("notes", complex(-0.6 * tang.open_mm, below - tang.closed_mm), "closed")
    yield closed
    if tang.kick:
        after = closed.box_mm[1].real + TEXT_MM
        across = max(after, tang.kick.distance_mm - TEXT_MM)
        height = below - tang.closed_mm - tang.kick.height_mm
        yield Words("notes", complex(across, height), "kick")
    behind = Words("notes", 0j, "half-stop" if tang.half_stop_mm else "round end")
    yield replace(behind, at_mm=complex(low.real - away - behind.box_mm[1].real, -0.5 * TEXT_MM))
    yield _ahead(complex(high.real, -0.5 * TEXT_MM), cut, f"{name}: the blade goes on here")


def _liner(parts: EveryPart, cut: Cut, units: System) -> list[_Item]:
    items = list[_Item]()
    for each in parts.liner:
        hole, out = each.hole, 0.5 * each.hole.diameter_mm + _CROSS_MM + 0.5
        marks = f"{PIVOT}{AND.join(each.blades)}" if each.blades else "notes"
        items += _hole("liner", hole, cut, marks)
        items.append(_centred(hole.center_mm + 1j * out, each.name))
        width = "width not stated"
        if each.known:
            width = _width(hole.diameter_mm, units)
        items.append(_centred(hole.center_mm - 1j * (out + _TALL * TEXT_MM), width))
    low, high = _bounds(items)
    items.append(Words("notes", complex(high.real + 2.0, 0.5 * (low.imag + high.imag)), "liner"))
    return items


def _width(width_mm: float, units: System) -> str:
    """Write a width as finely as it is drilled."""
    number = f"{converted(width_mm, _core.Quantity.length, units):.4f}".rstrip("0").rstrip(".")
    return f"{number} {units}"


def _bars(units: System) -> Iterator[_Item]:
    for row, (name, length) in enumerate(reversed(BARS[units])):
        start = complex(0.0, 2.0 * TEXT_MM * row)
        yield Shape("notes", line=(start, start + length))
        yield from (Shape("notes", line=(end - 1j, end + 1j)) for end in (start, start + length))
        yield Words("notes", start + length + 2.0 - 1j, f"{name}: measure it before you cut")


def _outline(layer: str, chain: Chain, cut: Cut, with_break: bool = False) -> Iterator[Shape]:
    """Give what the cutter follows, and the stock about it; a break is a zigzag."""
    followed = offset(chain, 0.5 * cut.kerf_mm)
    yield Shape(layer, chain=with_teeth(followed) if with_break else followed)
    if cut.stock_mm:
        yield Shape("stock", chain=offset(chain, cut.out_mm), dashed=True)


def _hole(layer: str, hole: Hole, cut: Cut, marks: str = "notes") -> Iterator[Shape]:
    """Give what the cutter follows, with its centre marked on a layer of its own."""
    center, width = hole.center_mm, hole.diameter_mm
    if width:
        if width <= cut.kerf_mm:
            raise ValueError(f"{layer}: hole at {place_text(center)} is narrower than the cut")
        yield Shape(layer, hole=Hole(center, width - cut.kerf_mm))
    for way in (1.0, 1j):
        reach = way * (0.5 * width + _CROSS_MM)
        yield Shape(marks, line=(center - reach, center + reach))


def _ahead(at: complex, cut: Cut, text: str) -> Words:
    return Words("notes", at + cut.out_mm + 2.0, text)


def _centred(at: complex, text: str) -> Words:
    return Words("notes", at - 0.5 * _WIDE * TEXT_MM * len(text), text)


def _shifted(item: _Item, by: complex) -> _Item:
    if isinstance(item, Words):
        return replace(item, at_mm=item.at_mm + by)
    if item.chain:
        return replace(item, chain=item.chain.moved(1.0, by))
    if item.hole:
        return replace(item, hole=Hole(item.hole.center_mm + by, item.hole.diameter_mm))
    assert item.line
    return replace(item, line=(item.line[0] + by, item.line[1] + by))


def _bounds(items: Sequence[_Item]) -> tuple[complex, complex]:
    """Lower left and upper right corner."""
    places: list[complex] = []
    for item in items:
        if isinstance(item, Words):
            places += item.box_mm
        elif item.chain:
            places += [
                piece.point_mm(share) for piece in item.chain.pieces for share in (0.0, 0.5, 1.0)
            ]
        elif item.hole:
            reach = 0.5 * item.hole.diameter_mm * (1.0 + 1.0j)
            places += [item.hole.center_mm - reach, item.hole.center_mm + reach]
        elif item.line:
            places += item.line
    return (
        complex(min(p.real for p in places), min(p.imag for p in places)),
        complex(max(p.real for p in places), max(p.imag for p in places)),
    )
