"""The tang and a stub of blade as outlines, turned to a blade angle."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from backspring import _core

Points = npt.NDArray[np.float64]
_STEP_RAD = math.radians(1.0)
_EDGE_GAP_MM = 0.8
_STUB_SHARE = 0.28


@dataclass(frozen=True, slots=True)
class TangShape:
    """Outlines as x and y from the middle pin and the pivot's height [mm]."""

    body: Points
    kick: Points | None
    blade: Points


def tang_shape(design: _core.Design, blade_angle_deg: float) -> TangShape:
    """Tang, kick and blade stub at a blade angle."""
    tang = design.tang
    reach = _reach_mm(design)
    outline = _core.make_outline(tang, reach)
    body = np.array([point for arc in outline.body for point in _arc_points(arc)])
    kick = None if outline.kick is None else np.array(list(_arc_points(outline.kick)))

    def place(points: Points) -> Points:
        return turned(points, tang.pivot_mm, blade_angle_deg)

    return TangShape(
        body=place(body),
        kick=None if kick is None else place(kick),
        blade=place(_blade_stub(design, reach)),
    )


def turned(points: Points, pivot_mm: float, blade_angle_deg: float) -> Points:
    """Places fixed to the blade, from the pivot with the blade open, as they stand at an angle."""
    turn = math.radians(blade_angle_deg - 180.0)
    cos, sin = math.cos(turn), math.sin(turn)
    u, w = np.atleast_2d(points).T
    return np.column_stack((pivot_mm + cos * u - sin * w, sin * u + cos * w))


def _reach_mm(design: _core.Design) -> float:
    """How far the closed face is drawn ahead of the pivot: past the pad's edge and the kick."""
    past_pad = design.tang.pivot_mm - design.pad.start_mm + 1.0
    kick = design.tang.kick
    return max(past_pad, kick.distance_mm + kick.radius_mm if kick else 0.0)


def _arc_points(arc: _core.Arc) -> Iterator[tuple[float, float]]:
    count = max(2, math.ceil((arc.to_rad - arc.from_rad) / _STEP_RAD) + 1) if arc.radius_mm else 1
    for normal in np.linspace(arc.from_rad, arc.to_rad, count):
        along, outward = math.cos(normal), math.sin(normal)
        yield arc.u_mm + arc.radius_mm * along, arc.w_mm + arc.radius_mm * outward


def _blade_stub(design: _core.Design, reach_mm: float) -> Points:
    """Invent a blade, cut short: only its direction means something.

    Its back is flush with the spring's when open, and the spring's end meets its shoulder.
    """
    tang, spring = design.tang, design.spring
    shoulder = max(_core.front_reach_mm(tang), design.pad.end_mm - tang.pivot_mm)
    back = tang.open_mm + _core.thickness_mm(spring.thickness, design.pad.end_mm)
    edge = -(tang.closed_mm - (design.blade.edge_clearance_mm or _EDGE_GAP_MM))
    start = max(reach_mm, shoulder)
    length = _STUB_SHARE * tang.pivot_mm
    tip, tip_height = start + length, 0.4 * back
    around = np.linspace(0.0, 0.5 * np.pi, 24)
    belly = np.column_stack(
        (
            tip - 0.7 * length * (1.0 - np.cos(around)),
            tip_height - (tip_height - edge) * np.sin(around),
        )
    )
    spine = [(shoulder, tang.open_mm), (shoulder, back), (start + 0.4 * length, back)]
    choil = [(reach_mm + 0.5, edge), (reach_mm, -tang.closed_mm)]
    return np.concatenate((spine, belly, choil))
