"""One position drawn to scale: spring, tang, pins, contact and dial."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from matplotlib.axes import Axes
from matplotlib.colors import Normalize
from matplotlib.patches import Polygon, Rectangle

from backspring import _core
from backspring.picture import palette
from backspring.picture.mounting import angles_deg, other_tangs, reading_mm
from backspring.picture.spring_shape import SpringShape, spring_shape
from backspring.picture.subject import pins_mm, rests
from backspring.picture.tang_shape import TangShape, tang_shape
from backspring.question.check import Check

_LAYERS = 9
# Radius of the mark, as a share of the thickness.
_PIN_MARK = 0.25


@dataclass(frozen=True)
class PanelView:
    """What one panel shows. The name is a position's, or "between" at any other angle."""

    name: str
    design: _core.Design
    blade_angle_deg: float
    reading_mm: float
    touches: list[_core.Touch]
    spring: SpringShape
    tang: TangShape
    others: dict[str, TangShape]

    def corners(self) -> tuple[float, float, float, float]:
        """Least x, greatest x, least y, greatest y of all that is drawn [mm]."""
        tangs = [self.tang, *self.others.values()]
        outlines = [part for tang in tangs for part in (tang.body, tang.blade)]
        x = np.concatenate([self.spring.station_mm, *(each[:, 0] for each in outlines)])
        y = np.concatenate([self.spring.back_mm, *(each[:, 1] for each in outlines)])
        return float(x.min()), float(x.max()), float(y.min()), float(y.max())


def rest_views(check: Check) -> list[PanelView]:
    """Look at a check in each of its positions, from closed to open."""
    return [_view(check, name, check.positions[name].blade_angle_deg) for name in rests(check)]


def between_view(check: Check, blade_angle_deg: float) -> PanelView:
    """Look at a check with the blade held at an angle."""
    return _view(check, "between", blade_angle_deg)


def _view(check: Check, name: str, blade_angle_deg: float) -> PanelView:
    design = check.design.core
    contact = _core.contact_at(design, blade_angle_deg)
    standing = angles_deg(design, contact)
    return PanelView(
        name=name,
        design=design,
        blade_angle_deg=blade_angle_deg,
        reading_mm=reading_mm(design, [standing[blade.name] for blade in design.blades]),
        touches=list(contact.touches[: contact.count]),
        spring=spring_shape(design, blade_angle_deg),
        tang=tang_shape(design, blade_angle_deg),
        others=other_tangs(design, contact),
    )


def draw_parts(ax: Axes, view: PanelView, stress_unit_mpa: float, norm: Normalize) -> None:
    """Draw blade, tang, spring, pins and contacts."""
    draw_tang(ax, view.tang)
    for shape in view.others.values():
        draw_outline(ax, shape)
    draw_spring(ax, view.spring, stress_unit_mpa, norm)
    pins = pins_mm(view.design)
    for station_mm in pins:
        draw_pin(ax, view.design, view.spring, station_mm)
    if not pins:
        _draw_clamp(ax, view.spring)
    draw_cross(ax, view.design.tang.pivot_mm, 0.0, pivot_radius_mm(view.design))
    for touch in view.touches:
        ax.plot(
            touch.x_mm, touch.height_mm, "o", ms=5.5, mfc=palette.VERMILLION, mec="white", zorder=6
        )


def clamp_room_mm(spring: SpringShape) -> float:
    """How far the block that stands for a clamp reaches beyond the spring's faces."""
    return 0.25 * (spring.height_at(0.0, 1.0) - spring.height_at(0.0, 0.0))


def draw_tang(ax: Axes, shape: TangShape) -> None:
    """Draw the blade, then tang and kick on it."""
    ax.add_patch(Polygon(shape.blade, fc=palette.BLADE, ec=palette.MUTED, lw=0.8, zorder=1))
    pieces = [shape.body] if shape.kick is None else [shape.kick, shape.body]
    # Edges lie under both fillings, so that the kick and the tang read as one piece; the tang's
    # front goes on into the blade and has none.
    for points in pieces:
        ax.plot(*points.T, color=palette.INK, lw=2.2, zorder=2, solid_capstyle="butt")
    for points in pieces:
        ax.add_patch(Polygon(points, fc=palette.TANG, ec="none", zorder=2.1, gid="tang"))


def draw_outline(ax: Axes, shape: TangShape) -> None:
    """Draw a blade that something hides, or that the picture is not about, as a dashed line."""
    for points in (shape.blade, shape.body, *([] if shape.kick is None else [shape.kick])):
        ax.add_patch(Polygon(points, fc="none", ec=palette.MUTED, lw=0.9, ls="--", zorder=4.6))


def draw_spring(ax: Axes, spring: SpringShape, stress_unit_mpa: float, norm: Normalize) -> None:
    """Fill the spring with its stress from belly to back, and draw its outline."""
    share = np.linspace(0.0, 1.0, _LAYERS)[:, None]
    station = np.broadcast_to(spring.station_mm, (_LAYERS, spring.station_mm.size))
    height = spring.face_mm + share * spring.thickness_mm
    stress = (1.0 - share) * spring.belly_stress_mpa + share * spring.back_stress_mpa
    ax.pcolormesh(
        station,
        height,
        stress / stress_unit_mpa,
        cmap=palette.STRESS_MAP,
        norm=norm,
        shading="gouraud",
        rasterized=True,
        zorder=3,
    )
    x = np.concatenate((spring.station_mm, spring.station_mm[::-1]))
    y = np.concatenate((spring.face_mm, spring.back_mm[::-1]))
    ax.add_patch(Polygon(np.column_stack((x, y)), fc="none", ec=palette.INK, lw=1.0, zorder=4))


def draw_pin(ax: Axes, design: _core.Design, spring: SpringShape, station_mm: float) -> None:
    """Draw the pin's hole; without one the pin still holds the spring and gets a mark."""
    middle = spring.height_at(station_mm, 0.5)
    thickness = spring.height_at(station_mm, 1.0) - spring.height_at(station_mm, 0.0)
    radius, offset = _PIN_MARK * thickness, 0.0
    for hole in design.spring.holes:
        if hole.center_mm == station_mm:
            radius, offset = 0.5 * hole.diameter_mm, hole.offset_mm
    draw_cross(ax, station_mm, middle + offset, radius)


def draw_cross(ax: Axes, x_mm: float, y_mm: float, radius_mm: float) -> None:
    """Draw a round hole with its centre lines."""
    around = np.linspace(0.0, 2.0 * np.pi, 73)
    circle = np.column_stack((x_mm + radius_mm * np.cos(around), y_mm + radius_mm * np.sin(around)))
    ax.add_patch(Polygon(circle, fc="white", ec=palette.INK, lw=1.0, zorder=5))
    reach = 1.5 * radius_mm
    for x, y in (((-reach, reach), (0.0, 0.0)), ((0.0, 0.0), (-reach, reach))):
        ax.plot(np.add(x, x_mm), np.add(y, y_mm), color=palette.INK, lw=0.6, zorder=5.1)


def pivot_radius_mm(design: _core.Design) -> float:
    """Radius the pivot is drawn with."""
    given = 0.5 * design.friction.pivot_pin_mm
    return given if given > 0.0 else 0.3 * design.tang.open_mm


def _draw_clamp(ax: Axes, spring: SpringShape) -> None:
    low, high = spring.height_at(0.0, 0.0), spring.height_at(0.0, 1.0)
    room, rear = clamp_room_mm(spring), float(spring.station_mm[0])
    ax.add_patch(
        Rectangle(
            (rear, low - room),
            -rear,
            high - low + 2.0 * room,
            fc="none",
            ec=palette.MUTED,
            hatch="////",
            lw=0.8,
            zorder=4.5,
        )
    )
