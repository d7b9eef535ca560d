"""What a drawing was taken for, each part with its name."""

from __future__ import annotations

from dataclasses import dataclass

from backspring.outline.chain import Chain
from backspring.outline.part_outlines import Hole
from backspring.outline.parts import Found
from backspring.outline.several import SeveralOutlines
from backspring.outline.several_joint import SeveralJoint


@dataclass(frozen=True, slots=True)
class ReadSeveral:
    """Of a drawing of several blades: their outlines as drawn, and each blade's joint."""

    outlines: SeveralOutlines
    joint: SeveralJoint


def chains_of(found: Found, several: ReadSeveral | None) -> list[tuple[str, Chain]]:
    """Name the spring's outline and every tang's."""
    if several is None:
        return [("spring", found.outlines.spring), ("tang", found.outlines.tang)]
    tangs = ((f"tang {each.name}", each.tang) for each in several.outlines.blades)
    return [("spring", several.outlines.spring), *tangs]


def holes_of(found: Found, several: ReadSeveral | None) -> list[tuple[str, Hole]]:
    """Name the holes of spring and tangs."""
    names = ("middle hole", "rear hole")
    if several is None:
        outlines = found.outlines
        spring = zip(names, outlines.spring_holes, strict=True)
        return [*spring, ("pivot hole", outlines.tang_hole)]
    tangs = ((f"tang {each.name}", each.hole) for each in several.outlines.blades)
    return [*zip(names, several.outlines.holes, strict=False), *tangs]


def liner_of(found: Found, several: ReadSeveral | None) -> list[tuple[str, complex]]:
    """Name the places in the liner: a pivot of several blades after the first of them."""
    outlines = found.outlines
    pins = [("middle pin", outlines.middle_mm), ("rear pin", outlines.rear_mm)]
    if several is None:
        return [("pivot", outlines.pivot_mm), *pins]
    blades = reversed(several.outlines.blades)
    pivots = {each.pivot_mm: f"pivot of {each.name}" for each in blades}
    named = [(name, at) for at, name in pivots.items()]
    return [*named, *pins[: len(several.outlines.pins_mm)]]
