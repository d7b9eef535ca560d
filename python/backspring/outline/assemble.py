"""A joint put together from its outlines as at the bench, with the rear pin out."""

from __future__ import annotations

import cmath
import math
from dataclasses import dataclass

from backspring.outline.chain import Chain
from backspring.outline.lean import Lean, lean_of
from backspring.outline.meeting import turn_to_meet
from backspring.outline.part_outlines import Outlines, mirrored
from backspring.outline.roots import roots_of
from backspring.outline.tang_of import TangOutline, tang_outline
from backspring.outline.thickness import Row, shape_of

_SAME_MM = 1e-6
_NEAREST_PINS_MM = 0.5
MOST_TILT_RAD = math.radians(5.0)
# A radius of this share of its distance from the pivot is a side, and no corner.
_ROUND_SHARE = 0.5
_LEAST_PAD_MM = 0.2
_STEEPEST_PAD = 0.6
# A pad that begins behind this is a belly straight all along.
_FIRST_PAD_MM = 0.5
_BEHIND_TANG_MM = 1.0
# The end of the spring may lean: the belly is looked at up to here.
_BEFORE_END_MM = 0.01


@dataclass(frozen=True, slots=True)
class Laid:
    """The parts where they lie, from the middle pin, x along the pad's face: for a picture."""

    spring: Chain
    tang: Chain
    rear_hole_mm: complex
    rear_pin_mm: complex
    pivot_mm: complex
    face_mm: float


@dataclass(frozen=True, slots=True)
class Assembled:
    """What the outlines say of the joint, stations from the middle pin along the pad's face.

    The tang is seen along its open face, which a pad that is off it by `tilt_rad` meets at one end.
    """

    pivot_mm: float
    rear_pin_mm: float
    pad_mm: tuple[float, float]
    tilt_rad: float
    rear_pin_offset_mm: float
    thickness_mm: tuple[Row, ...]
    mid_line_mm: tuple[Row, ...]
    lean: Lean
    kink_radius_mm: float | None
    curve_radius_mm: float | None
    pin_hole_mm: tuple[float, float]
    pin_hole_offset_mm: tuple[float, float]
    tang: TangOutline
    laid: Laid

    @property
    def preload_mm(self) -> float:
        """Interference at the pivot's station."""
        return self.rear_pin_offset_mm * self.pivot_mm / self.rear_pin_mm


def assemble(outlines: Outlines, *, either_side: bool = True) -> Assembled:
    """Lay the spring's pad on the open face, middle holes together, and read the joint off.

    A drawing may show the joint from either side: of both ways to take it that one is meant in
    which the spring's rear hole comes nearer to its pin. Raises ValueError where spring and tang do
    not meet either way, or in the way that is known.
    """
    pins = outlines.pivot_mm, outlines.middle_mm, outlines.rear_mm
    holes = [hole.center_mm for hole in outlines.spring_holes]
    for a, b in (*zip(pins, pins[1:], strict=False), (pins[0], pins[2]), holes):
        if abs(a - b) < _NEAREST_PINS_MM:
            raise ValueError("two pins of the liner, or holes of the spring, at one place")
    found, faults = [], []
    for seen in (outlines, mirrored(outlines)) if either_side else (outlines,):
        try:
            found.append(_assemble(seen))
        except ValueError as error:
            faults.append(error)
    if not found:
        raise faults[0]
    return min(found, key=lambda joint: abs(joint.rear_pin_offset_mm))


def _assemble(outlines: Outlines) -> Assembled:
    ahead = outlines.pivot_mm - outlines.middle_mm
    turn = abs(ahead) / ahead
    pivot = ahead * turn
    spring = outlines.spring.moved(turn, -outlines.spring_holes[0].center_mm * turn)
    rear_hole = (outlines.spring_holes[1].center_mm - outlines.spring_holes[0].center_mm) * turn
    rear_pin = (outlines.rear_mm - outlines.middle_mm) * turn
    tang = outlines.tang.moved(turn, -outlines.tang_hole.center_mm * turn)
    face = pad_of(spring, -rear_hole)
    lie = turn_to_meet(spring, face, tang.moved(1.0, pivot))
    spring, rear_hole = spring.moved(cmath.exp(1j * lie), 0j), rear_hole * cmath.exp(1j * lie)
    pad = spring.pieces[face]
    along = pad.end_mm - pad.start_mm
    level = abs(along) / along
    spring = spring.moved(level, 0j)
    pivot, rear_hole, rear_pin = pivot * level, rear_hole * level, rear_pin * level
    tilt = tilt_of(tang_outline(tang.moved(level, 0j)))
    if abs(tilt) > MOST_TILT_RAD:
        raise ValueError(
            f"the pad lies {abs(math.degrees(tilt)):.1f} deg off the nearest face of the tang: "
            "draw the tang as it stands open"
        )
    open_tang = tang_outline(tang.moved(level * cmath.exp(-1j * tilt), 0j))
    end, height = (pad.end_mm * level).real, (pad.end_mm * level).imag
    roots = roots_of(spring, (rear_hole.real, end - _BEFORE_END_MM))
    shape = shape_of(roots.chain, end, height)
    # An end that leans has less steel over the pad's last bit.
    ends = min(end, shape.thickness_mm[-1][0])
    offsets = tuple(offset_of(spring, hole) for hole in (0j, rear_hole))
    return Assembled(
        pivot_mm=pivot.real,
        rear_pin_mm=-rear_pin.real,
        pad_mm=(pad_start_mm((pad.start_mm * level).real, pivot, open_tang), ends),
        tilt_rad=tilt,
        rear_pin_offset_mm=(rear_pin - rear_hole).imag,
        thickness_mm=shape.thickness_mm,
        mid_line_mm=shape.mid_line_mm,
        lean=lean_of(shape, pivot.real, -rear_pin.real),
        kink_radius_mm=roots.kink_radius_mm,
        curve_radius_mm=roots.curve_radius_mm,
        pin_hole_mm=(outlines.spring_holes[0].diameter_mm, outlines.spring_holes[1].diameter_mm),
        pin_hole_offset_mm=(offsets[0], offsets[1]),
        tang=open_tang,
        laid=Laid(spring, tang.moved(level, pivot), rear_hole, rear_pin, pivot, height),
    )


def pad_of(spring: Chain, along: complex) -> int:
    """Find the face the tang can touch: the straight piece of the belly farthest ahead.

    `along` points from the rear pin's hole to the middle pin's. A bevel at the end is no pad.
    """
    straight = [
        (piece.end_mm / along, i)
        for i, piece in enumerate(spring.pieces)
        if not piece.bulge
        and (way := (piece.end_mm - piece.start_mm) / along * abs(along)).real > _LEAST_PAD_MM
        and abs(way.imag) < _STEEPEST_PAD * way.real
    ]
    if not straight:
        raise ValueError("the spring has no straight face for the tang")
    return max(straight, key=lambda each: each[0].real)[1]


def pad_start_mm(start_mm: float, pivot: complex, tang: TangOutline) -> float:
    """Begin a pad that goes on past the middle pin where the tang can first reach it."""
    if start_mm > _FIRST_PAD_MM:
        return start_mm
    reach = max(abs(arc.point_mm(arc.from_rad)) for arc in tang.body if arc.center_mm.real < 0.0)
    return max(start_mm, pivot.real - reach - _BEHIND_TANG_MM, _FIRST_PAD_MM)


def tilt_of(tang: TangOutline) -> float:
    """Measure how far the open face is out of line with the pad: of the flat that faces it most.

    A side that is round there is in line as it is drawn.
    """
    body = tang.body
    flats = [
        arc.to_rad - 0.5 * math.pi
        for arc, following in zip(body, [*body[1:], body[0]], strict=True)
        if abs(following.point_mm(arc.to_rad) - arc.point_mm(arc.to_rad)) > _SAME_MM
    ]
    tilt = min(flats, key=abs, default=0.0)
    return 0.0 if abs(tilt) > MOST_TILT_RAD and _bears_round(tang) else tilt


def _bears_round(tang: TangOutline) -> bool:
    """Say whether what the pad lies on is a round side rather than a corner of a turned tang."""
    up = 0.5 * math.pi
    top = next(arc for arc in tang.body if arc.from_rad <= up <= arc.to_rad)
    return top.radius_mm > _ROUND_SHARE * top.point_mm(up).imag


def offset_of(spring: Chain, hole: complex) -> float:
    """Measure how far a hole lies off the middle of the spring, + towards the back."""
    heights = spring.heights_mm(hole.real)
    return hole.imag - 0.5 * (heights[0] + heights[-1])
