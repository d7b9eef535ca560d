"""Blades of one spring brought into one frame: the spring's, straight and level."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TypeVar

import numpy as np

from backspring import _core
from backspring.picture.spring_shape import Column, SpringShape, spring_shape
from backspring.picture.tang_shape import Points, TangShape, tang_shape

_OPEN_DEG = 180.0
_COARSE_MM = 100.0
_Place = TypeVar("_Place", Column, float)


@dataclass(frozen=True)
class Mounting:
    """How one blade's own stations and heights lie on the straight, level spring.

    `design` is seen from that blade. `turned_at_mm` is where station 0 of a blade at the other end
    lies, None at this end. Slopes are small, so that a height stays one as the frame tilts.
    """

    design: _core.Design
    face_mm: float
    slope: float
    turned_at_mm: float | None

    def station(self, x_mm: _Place) -> _Place:
        """Place a station of the blade's own on the spring; the other way it is the same."""
        return x_mm if self.turned_at_mm is None else self.turned_at_mm - x_mm

    def place(self, points: Points) -> Points:
        """Put places of the blade's own frame on the spring."""
        x, y = np.atleast_2d(points).T
        return np.column_stack((self.station(x), y - self.face_mm - self.slope * x))

    def place_back(self, points: Points) -> Points:
        """Put places on the spring into the blade's own frame."""
        x = self.station(points[:, 0])
        return np.column_stack((x, points[:, 1] + self.face_mm + self.slope * x))

    def tang(self, blade_angle_deg: float) -> TangShape:
        """Shape the blade's tang on the spring."""
        return moved(tang_shape(self.design, blade_angle_deg), self)

    def spring(self, case: _core.Design, blade_angle_deg: float) -> SpringShape:
        """Shape the spring as this blade's own case bends it."""
        shape = spring_shape(case, blade_angle_deg)
        x = shape.station_mm
        face = shape.face_mm - self.face_mm - self.slope * x
        way = slice(None) if self.turned_at_mm is None else slice(None, None, -1)
        return SpringShape(
            self.station(x)[way],
            face[way],
            shape.thickness_mm[way],
            shape.back_stress_mpa[way],
            shape.belly_stress_mpa[way],
        )


def mounting(design: _core.Design, blade: int) -> Mounting:
    """Find how one of a design's blades is mounted, as its own blade sees the spring."""
    seen = _core.seen_from(design, blade)
    along = _core.spring_along(seen, _OPEN_DEG, _COARSE_MM)
    x, face = along.station_mm, along.face_mm
    slope = float((face[-1] - face[0]) / (x[-1] - x[0]))
    turned = design.blades[blade].end == _core.End.rear
    return Mounting(
        seen, float(face[0] - slope * x[0]), slope, -span_mm(design) if turned else None
    )


def moved(shape: TangShape, to: Mounting, *, back: bool = False) -> TangShape:
    """Move a tang onto the spring, or back into a blade's own frame."""
    place = to.place_back if back else to.place
    kick = None if shape.kick is None else place(shape.kick)
    return TangShape(place(shape.body), kick, place(shape.blade))


def span_mm(design: _core.Design) -> float:
    """Distance between the pins; 0 without a second one."""
    support = design.spring.support
    return support.rear_pin_mm if support.kind == _core.SupportKind.two_pins else 0.0


def angles_deg(case: _core.Design, contact: _core.Contact) -> dict[str, float]:
    """How every blade stands in a contact, by name: the own one first."""
    others = case.blades[1:]
    ordered = [b for b in others if b.end == _core.End.front]
    ordered += [b for b in others if b.end == _core.End.rear]
    standing = zip((b.name for b in ordered), contact.others.angles_deg, strict=True)
    return {case.blades[0].name: contact.blade_angle_deg, **dict(standing)}


def reading_mm(design: _core.Design, blade_angles_deg: Sequence[float]) -> float:
    """Read the own blade's dial, all blades held, against all of them open."""
    here = _core.contacts_at(design, blade_angles_deg)[0]
    datum = _core.contacts_at(design, [_OPEN_DEG] * len(design.blades))[0]
    return here.moved_mm - datum.moved_mm


def other_tangs(case: _core.Design, contact: _core.Contact) -> dict[str, TangShape]:
    """Shape the other blades' tangs as the own blade sees them."""
    if len(case.blades) == 1:
        return {}
    own, standing = mounting(case, 0), angles_deg(case, contact)
    return {
        blade.name: moved(mounting(case, at).tang(standing[blade.name]), own, back=True)
        for at, blade in enumerate(case.blades)
        if at > 0
    }
