"""A closer look at a design: over all blade angles, or at one of them."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from backspring import _core
from backspring.design.arguments import plain_number
from backspring.design.design import Design
from backspring.errors import OutOfRange
from backspring.faults import Fault, invalid
from backspring.report.result import Columns

Column = npt.NDArray[np.float64]
# Angles that the model covers, as of contact_at().
_LEAST_DEG, _GREATEST_DEG = -45.0, 225.0


@dataclass(frozen=True, repr=False, eq=False)
class Sweep(Columns):
    """A travel as columns, one entry an angle. Both torques resist opening where positive."""

    blade_angle_deg: Column
    force_n: Column
    opening_torque_nmm: Column
    closing_torque_nmm: Column
    energy_mj: Column
    peak_stress_mpa: Column
    peak_stress_station_mm: Column


@dataclass(frozen=True, repr=False, eq=False)
class SpringAlong(Columns):
    """The loaded spring as columns, one entry a station; tension is positive."""

    station_mm: Column
    thickness_mm: Column
    face_mm: Column
    deflection_mm: Column
    back_stress_mpa: Column
    belly_stress_mpa: Column


def sweep(
    design: Design, step_deg: float = 1.0, from_deg: float = 0.0, to_deg: float = 180.0
) -> Sweep:
    """Force, torque, energy and worst stress against blade angle, as NumPy arrays.

    0 closed, 90 half-stop, 180 open. Both torques resist opening where positive; they differ by
    twice the friction.
    """
    given = {"step_deg": step_deg, "from_deg": from_deg, "to_deg": to_deg}
    numbers = (plain_number(value, key) for key, value in given.items())
    table = _core.sweep(design.core, *numbers)
    return Sweep(*(getattr(table, name) for name in Sweep.__dataclass_fields__))


def permanent_set(design: Design, yield_mpa: float | None = None) -> _core.PlasticSet:
    """Follow the set that opening the knife leaves, at the steel's likely yield stress or another.

    Preload before, after the first opening and after shakedown, the drop of the face, the zones
    that yielded. `folded` tells that a section yields right through.
    """
    if yield_mpa is not None:
        yield_mpa = plain_number(yield_mpa, "yield_mpa")
    return _core.permanent_set(design.core, yield_mpa)


def bearing_pressures(design: Design) -> list[_core.BearingPressure]:
    """Tell how hard each part of the tang bears on the pad at its worst over the travel."""
    return _core.bearing_pressures(design.core)


def contact_at(design: Design, blade_angle_deg: float) -> _core.Contact:
    """Where the tang bears on the spring at one blade angle, and how hard."""
    return _core.contact_at(design.core, plain_number(blade_angle_deg, "blade_angle_deg"))


@dataclass(frozen=True)
class Contacts:
    """Every blade of a spring held at an angle of its own. N, mm, N mm."""

    blades: dict[str, BladeContact]
    energy_nmm: float


@dataclass(frozen=True)
class BladeContact:
    """Where one of several blades bears; its stations are its own."""

    blade_angle_deg: float
    force_n: float
    torque_nmm: float
    touches: tuple[_core.Touch, ...]
    moved_mm: float


def contacts(design: Design, blade_angles_deg: dict[str, float]) -> Contacts:
    """Where every blade bears, and how hard, each held at an angle: `{"main": 180, "pen": 0}`.

    `moved_mm` is how far the spring has moved outward at that blade's dial from its free shape.
    Raises InvalidInput unless there is one angle for each blade, OutOfRange outside -45 to 225.
    """
    given, known = set(blade_angles_deg), set(design.blades)
    if given != known:
        message = f"must be one for each blade, {', '.join(design.blades)}"
        raise invalid([Fault("bad-value", "blade_angles_deg", message)])
    angles = {
        name: plain_number(angle, f"blade_angles_deg.{name}")
        for name, angle in blade_angles_deg.items()
    }
    for angle in angles.values():
        if not _LEAST_DEG <= angle <= _GREATEST_DEG:
            ends = f"from {_LEAST_DEG:g} deg to {_GREATEST_DEG:g} deg"
            raise OutOfRange(f"blade_angles_deg: must be {ends}, got {angle:g} deg")
    core = design.core
    found = _core.contacts_at(core, [angles[blade.name] for blade in core.blades])
    by_name = {
        each.name: BladeContact(
            each.contact.blade_angle_deg,
            each.contact.force_n,
            each.contact.torque_nmm,
            tuple(each.contact.touches[: each.contact.count]),
            each.moved_mm,
        )
        for each in found
    }
    return Contacts({name: by_name[name] for name in design.blades}, found[0].contact.energy_nmm)


def spring_along(design: Design, blade_angle_deg: float, spacing_mm: float = 0.1) -> SpringAlong:
    """Shape and bending stress along the spring at one blade angle, as NumPy arrays."""
    angle = plain_number(blade_angle_deg, "blade_angle_deg")
    table = _core.spring_along(design.core, angle, plain_number(spacing_mm, "spacing_mm"))
    return SpringAlong(*(getattr(table, name) for name in SpringAlong.__dataclass_fields__))
