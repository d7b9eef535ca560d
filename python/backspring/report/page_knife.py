"""The section of a page on one knife: what its log tells, and where it differs from its drawing."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from backspring.fit.doubts import doubts
from backspring.report.knife import knife_blocks
from backspring.report.page_keys import field, stated, written
from backspring.report.page_parts import Part, Words
from backspring.report.tables import Lines
from backspring.units import System

if TYPE_CHECKING:
    from backspring.design.design import Design
    from backspring.fit.knife import Knife

_ALIKE = (
    "Tilt, play and the like have no place in a drawing: faces and Young's modulus stand in for "
    "them, so that the likely knife reads and pulls as this one does.",
)


def knife_parts(knife: Knife, units: System) -> Iterator[Part]:
    """Tell what came off, what was learned, what to measure next, and the drawing made to fit."""
    yield from knife_blocks(knife, units)
    if notices := (*knife.notices, *doubts(knife.estimate(), knife.spread_mm)):
        yield Lines("Of this log", tuple(each.text(units) for each in notices))
    if rows := tuple(_differences(knife.drawn, knife.design, units)):
        heads = ("key", "drawing", "this knife, likely")
        yield Words("How the drawing would change to be this knife", heads, rows)
        yield Lines("", _ALIKE)


def _differences(drawn: Design, likely: Design, units: System) -> Iterator[tuple[str, ...]]:
    """Compare key by key what stands in a drawing of each."""
    before, after = (_by_key(design, units) for design in (drawn, likely))
    for key in dict.fromkeys((*before, *after)):
        old, new = before.get(key, "-"), after.get(key, "-")
        if old != new:
            yield key, old, new


def _by_key(design: Design, units: System) -> dict[str, str]:
    return {
        f"{table}.{key}": written(field(f"{table}.{key}"), value, units)
        for table, given in stated(design).items()
        for key, value in given.items()
    }
