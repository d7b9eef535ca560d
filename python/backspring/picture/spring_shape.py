"""The loaded spring as a shape to fill: its faces and the stress on both."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from backspring import _core
from backspring.picture.subject import rear_pad_mm

Column = npt.NDArray[np.float64]
_SPACING_MM = 0.2
# Steel drawn beyond the rear pin when the thickness is given no farther, in hole diameters.
_BEHIND_PIN = 1.2
# Length drawn inside a clamp, in thicknesses.
_IN_CLAMP = 2.0


@dataclass(frozen=True, slots=True)
class SpringShape:
    """Columns from the spring's rear end to its front: mm from the pivot's height, MPa."""

    station_mm: Column
    face_mm: Column
    thickness_mm: Column
    back_stress_mpa: Column
    belly_stress_mpa: Column

    @property
    def back_mm(self) -> Column:
        """Height of the back."""
        return self.face_mm + self.thickness_mm

    def height_at(self, station_mm: float, share: float) -> float:
        """Height at a station, share 0 on the working face to 1 on the back."""
        height = self.face_mm + share * self.thickness_mm
        return float(np.interp(station_mm, self.station_mm, height))


def spring_shape(design: _core.Design, blade_angle_deg: float) -> SpringShape:
    """Shape the whole spring at a blade angle, also where it carries nothing."""
    along = _core.spring_along(design, blade_angle_deg, _SPACING_MM)
    station, face = along.station_mm, along.face_mm + along.deflection_mm
    start, end = _ends_mm(design, float(station[0]))
    behind = _beyond(float(station[0]), start)[::-1]
    ahead = _beyond(float(station[-1]), end)
    rear = along.face_mm if rear_pad_mm(design) is None else face
    slope_behind = (rear[1] - rear[0]) / (station[1] - station[0])
    slope_ahead = (face[-1] - face[-2]) / (station[-1] - station[-2])
    whole = np.concatenate((behind, station, ahead))
    belly = np.array([_core.belly_mm(design.spring, design.pad, x) for x in whole])

    def unloaded_outside(stress: Column) -> Column:
        return np.concatenate((np.zeros_like(behind), stress, np.zeros_like(ahead)))

    return SpringShape(
        station_mm=whole,
        face_mm=np.concatenate(
            (
                face[0] + slope_behind * (behind - station[0]),
                face,
                face[-1] + slope_ahead * (ahead - station[-1]),
            )
        )
        + belly,
        thickness_mm=np.array([_core.thickness_mm(design.spring.thickness, x) for x in whole]),
        back_stress_mpa=unloaded_outside(along.back_stress_mpa),
        belly_stress_mpa=unloaded_outside(along.belly_stress_mpa),
    )


def _ends_mm(design: _core.Design, rear_mm: float) -> tuple[float, float]:
    """Where the drawn steel starts and ends; a clamp holds a short stretch."""
    spring = design.spring
    profile, last = spring.thickness, spring.thickness[-1].x_mm
    end = max(design.pad.end_mm, last if len(profile) > 1 else 0.0)
    if rear_pad_mm(design) is not None:
        return min(profile[0].x_mm if len(profile) > 1 else rear_mm, rear_mm), end
    thickness = _core.thickness_mm(profile, rear_mm)
    if spring.support.kind != _core.SupportKind.two_pins:
        return -_IN_CLAMP * thickness, end
    holes = [hole.diameter_mm for hole in spring.holes if hole.center_mm == rear_mm]
    room = _BEHIND_PIN * max(holes, default=0.5 * thickness)
    return min(profile[0].x_mm, rear_mm - room), end


def _beyond(edge_mm: float, end_mm: float) -> Column:
    """Stations from the edge, itself left out, to the end."""
    parts = int(np.ceil(abs(end_mm - edge_mm) / _SPACING_MM))
    return np.linspace(edge_mm, end_mm, parts + 1)[1:]
