"""A joint with several blades put together from its outlines, the unbent spring on its pins."""

from __future__ import annotations

import cmath
import math
from dataclasses import dataclass
from typing import Literal

from backspring.outline.assemble import (
    MOST_TILT_RAD,
    Assembled,
    Laid,
    offset_of,
    pad_of,
    pad_start_mm,
    tilt_of,
)
from backspring.outline.chain import Chain, closed_chain
from backspring.outline.lean import lean_of
from backspring.outline.part_outlines import Hole
from backspring.outline.roots import roots_of
from backspring.outline.several import BladeOutline, SeveralOutlines, mirrored
from backspring.outline.tang_of import TangOutline, tang_outline
from backspring.outline.thickness import shape_of

_BEFORE_END_MM = 0.01
End = Literal["front", "rear"]


@dataclass(frozen=True, slots=True)
class BladeJoint:
    """A blade, which end of the spring it is at, and the joint as it is seen from there.

    `tang` and `pivot_mm` lie where they do as the first blade counts.
    """

    name: str
    end: End
    joint: Assembled
    tang: Chain
    pivot_mm: complex


@dataclass(frozen=True, slots=True)
class SeveralJoint:
    """Every blade's joint, the first one's first, and how many pins the spring is on."""

    blades: tuple[BladeJoint, ...]
    pins: int


@dataclass(frozen=True, slots=True)
class _Level:
    """The parts with the middle pin at 0 and the first blade's pad along x, and the rear pin."""

    spring: Chain
    holes: tuple[Hole, ...]
    rear_pin: complex | None
    pivots: tuple[complex, ...]
    pads: tuple[tuple[complex, ...], ...]
    # What turns a tang on the page into the way the first blade's stands.
    turn: complex


def assemble_several(outlines: SeveralOutlines) -> SeveralJoint:
    """Lay the unbent spring on its pins in the liner, and read how far each tang stands into it.

    Both holes lie on both pins; a spring on its middle pin alone lies to the liner as it is drawn.
    Raises ValueError where a blade stands in neither end's way.
    """
    way = _way(outlines)
    if ((outlines.blades[0].pivot_mm - outlines.pins_mm[0]) / way).imag > 0.0:
        outlines = mirrored(outlines)
        way = way.conjugate()
    level = _level(outlines, way)
    blades = tuple(
        _blade(level, blade, pivot, pad)
        for blade, pivot, pad in zip(outlines.blades, level.pivots, level.pads, strict=True)
    )
    return SeveralJoint(blades, len(outlines.holes))


def _way(outlines: SeveralOutlines) -> complex:
    """Find the way from the other end to the first blade's, in the liner."""
    first, pins = outlines.blades[0].pivot_mm, outlines.pins_mm
    if len(pins) == 2:
        return pins[0] - pins[1]
    other = max((blade.pivot_mm for blade in outlines.blades), key=lambda at: abs(at - first))
    if abs(other - first) < _BEFORE_END_MM:
        raise ValueError("spring: one hole needs a blade at each end of the spring")
    return first - other


def _level(outlines: SeveralOutlines, way: complex) -> _Level:
    holes, pins = outlines.holes, outlines.pins_mm
    along = holes[0].center_mm - holes[1].center_mm if len(holes) == 2 else way
    face = outlines.spring.pieces[pad_of(outlines.spring, along)]
    ahead = face.end_mm - face.start_mm
    level = abs(ahead) / ahead
    # The liner is turned with the spring, so that both holes lie on both pins.
    liner = level * (along / abs(along)) / (way / abs(way))
    middle = holes[0].center_mm
    spring = outlines.spring.moved(level, -middle * level)
    return _Level(
        spring,
        tuple(Hole((hole.center_mm - middle) * level, hole.diameter_mm) for hole in holes),
        (pins[1] - pins[0]) * liner if len(pins) == 2 else None,
        tuple((blade.pivot_mm - pins[0]) * liner for blade in outlines.blades),
        tuple(tuple((at - middle) * level for at in blade.pad_mm) for blade in outlines.blades),
        level,
    )


def _blade(
    level: _Level, blade: BladeOutline, pivot: complex, pad: tuple[complex, ...]
) -> BladeJoint:
    """Read the joint of one blade, seen from its own end."""
    behind = 0.0 if level.rear_pin is None else -level.rear_pin.real
    end: End = "front" if pivot.real > 0.0 else "rear"
    tang = blade.tang.moved(level.turn, -blade.hole.center_mm * level.turn)
    # A tang may lie as in the knife or the way the first one does; its blade is the longer side.
    reach = [vertex.at_mm.real for vertex in tang.vertices]
    if -min(reach) > max(reach):
        tang = _turned_round(tang, 0.0)
    if end == "front":
        joint = _joint(level, blade.name, level.spring, tang, pivot, pad, behind)
        return BladeJoint(blade.name, end, joint, joint.laid.tang, pivot)
    spring, at = _turned_round(level.spring, behind), _round(pivot, behind)
    if at.real <= 0.0:
        raise ValueError(f"pivot of {blade.name}: lies between the pins")
    own_pad = tuple(_round(place, behind) for place in pad)
    joint = _joint(level, blade.name, spring, tang, at, own_pad, behind)
    return BladeJoint(blade.name, end, joint, _turned_round(joint.laid.tang, behind), pivot)


def _round(place: complex, behind_mm: float) -> complex:
    """Tell a place as the other end counts, from the pin next to it."""
    return complex(-behind_mm - place.real, place.imag)


def _turned_round(chain: Chain, behind_mm: float) -> Chain:
    return closed_chain(chain.mirrored().moved(-1.0, complex(-behind_mm)).vertices)


def _joint(
    level: _Level,
    name: str,
    spring: Chain,
    tang: Chain,
    pivot: complex,
    pad: tuple[complex, ...],
    behind_mm: float,
) -> Assembled:
    tilt = tilt_of(tang_outline(tang))
    if abs(tilt) > MOST_TILT_RAD:
        raise ValueError(
            f"tang {name}: no face within 5 deg of the pad's line, but "
            f"{abs(math.degrees(tilt)):.1f} deg: draw it as it stands open"
        )
    tang = tang.moved(cmath.exp(-1j * tilt), 0j)
    outline = tang_outline(tang)
    belly, top = spring.heights_mm(pivot.real), tang.heights_mm(0.0)
    if not belly or not top:
        raise ValueError(f"tang {name}: the spring does not reach over its pivot")
    preload = pivot.imag + top[-1] - belly[0]
    if preload < 0.0:
        raise ValueError(
            f"tang {name}: the spring would not press: its open face lies {-preload:.3f} mm "
            "under the unbent spring"
        )
    start, end = _pad(spring, pad, pivot, outline)
    # Where only one pin holds it the other end's blade is what stands for a rear pin.
    held = behind_mm or max(abs(at.real) for at in level.pivots)
    roots = roots_of(spring, (-held, end - _BEFORE_END_MM))
    shape = shape_of(roots.chain, end, belly[0])
    offsets = [offset_of(level.spring, hole.center_mm) for hole in level.holes]
    widths = [hole.diameter_mm for hole in level.holes]
    rear = complex(-behind_mm)
    return Assembled(
        pivot_mm=pivot.real,
        rear_pin_mm=held,
        pad_mm=(start, end),
        tilt_rad=tilt,
        rear_pin_offset_mm=preload * held / pivot.real,
        thickness_mm=shape.thickness_mm,
        mid_line_mm=shape.mid_line_mm,
        lean=lean_of(shape, pivot.real, held),
        kink_radius_mm=roots.kink_radius_mm,
        curve_radius_mm=roots.curve_radius_mm,
        pin_hole_mm=(widths[0], widths[-1]),
        pin_hole_offset_mm=(offsets[0], offsets[-1]),
        tang=outline,
        laid=Laid(spring, tang.moved(1.0, pivot), rear, rear, pivot, belly[0]),
    )


def _pad(
    spring: Chain, marked: tuple[complex, ...], pivot: complex, tang: TangOutline
) -> tuple[float, float]:
    """Find where the pad begins and ends: as it is marked, else the belly's last straight."""
    if marked:
        stations = [place.real for place in marked]
        return min(stations), max(stations)
    face = spring.pieces[pad_of(spring, 1.0 + 0j)]
    return pad_start_mm(face.start_mm.real, pivot, tang), face.end_mm.real
