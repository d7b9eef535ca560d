"""A closer look at a design: over all blade angles, or at one of them."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from backspring import _core
from backspring.design.design import Design
from backspring.report.result import Columns

Column = npt.NDArray[np.float64]


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
    table = _core.sweep(design.core, step_deg, from_deg, to_deg)
    return Sweep(*(getattr(table, name) for name in Sweep.__dataclass_fields__))


def permanent_set(design: Design, yield_mpa: float | None = None) -> _core.PlasticSet:
    """Follow the set that opening the knife leaves, at the steel's likely yield stress or another.

    Preload before, after the first opening and after shakedown, the drop of the face, the zones
    that yielded. `folded` tells that a section yields right through.
    """
    return _core.permanent_set(design.core, yield_mpa)


def bearing_pressures(design: Design) -> list[_core.BearingPressure]:
    """Tell how hard each part of the tang bears on the pad at its worst over the travel."""
    return _core.bearing_pressures(design.core)


def contact_at(design: Design, blade_angle_deg: float) -> _core.Contact:
    """Where the tang bears on the spring at one blade angle, and how hard."""
    return _core.contact_at(design.core, blade_angle_deg)


def spring_along(design: Design, blade_angle_deg: float, spacing_mm: float = 0.1) -> SpringAlong:
    """Shape and bending stress along the spring at one blade angle, as NumPy arrays."""
    table = _core.spring_along(design.core, blade_angle_deg, spacing_mm)
    return SpringAlong(*(getattr(table, name) for name in SpringAlong.__dataclass_fields__))
