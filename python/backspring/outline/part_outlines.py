"""The outlines of a joint's parts, as a pattern draws them."""

from __future__ import annotations

from dataclasses import dataclass

from backspring.outline.chain import Chain


@dataclass(frozen=True, slots=True)
class Hole:
    """A round hole."""

    center_mm: complex
    diameter_mm: float


@dataclass(frozen=True, slots=True)
class Outlines:
    """What a pattern draws: every part in coordinates of its own, the tang as it stands open.

    The spring's holes are those for the middle and the rear pin; the liner's three centres are of
    pivot, middle and rear pin.
    """

    spring: Chain
    spring_holes: tuple[Hole, Hole]
    tang: Chain
    tang_hole: Hole
    pivot_mm: complex
    middle_mm: complex
    rear_mm: complex


def mirrored(outlines: Outlines) -> Outlines:
    """Return the parts as seen from the other side."""

    def hole(each: Hole) -> Hole:
        return Hole(each.center_mm.conjugate(), each.diameter_mm)

    return Outlines(
        spring=outlines.spring.mirrored(),
        spring_holes=(hole(outlines.spring_holes[0]), hole(outlines.spring_holes[1])),
        tang=outlines.tang.mirrored(),
        tang_hole=hole(outlines.tang_hole),
        pivot_mm=outlines.pivot_mm.conjugate(),
        middle_mm=outlines.middle_mm.conjugate(),
        rear_mm=outlines.rear_mm.conjugate(),
    )
