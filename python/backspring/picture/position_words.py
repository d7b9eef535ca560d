"""The words on a position's drawing; places are in mm, distances from them in points."""

from __future__ import annotations

import numpy as np
from matplotlib.axes import Axes

from backspring import _core
from backspring.picture import palette
from backspring.picture.position_panel import PanelView, clamp_room_mm
from backspring.picture.subject import TRAVEL_ORDER, pins_mm, root_name, spoken
from backspring.picture.tang_shape import turned
from backspring.report.display import text
from backspring.units import System

_POINTS_AN_INCH = 72.0
# In points: from a face to its name, and the tang that takes the names inside.
_FROM_FACE = 8.0
_ROOM_FOR_WORDS = 62.0
# In mm: from the start of the scale to words beside it.
_SCALE_ROOM_MM = 15.0
# Beyond this the blade stands ahead of the pivot, and words about it behind.
_BLADE_LEADS_DEG = 120.0


def write_heading(ax: Axes, view: PanelView) -> None:
    """Say which position it is and where the blade stands."""
    name = ax.annotate(
        spoken(view.name),
        (0.0, 1.0),
        xycoords="axes fraction",
        xytext=(2.0, -2.0),
        textcoords="offset points",
        va="top",
        fontsize=palette.LARGE,
        fontweight="bold",
    )
    others = ", ".join(f"{blade} closed" for blade in view.others)
    ax.annotate(
        f"blade at {view.blade_angle_deg:.1f} deg" + (f"; dashed: {others}" if others else ""),
        (1.0, 0.0),
        xycoords=name,
        xytext=(8.0, 0.0),
        textcoords="offset points",
        va="bottom",
        fontsize=palette.NORMAL,
    )


def write_faces(ax: Axes, view: PanelView, mm_an_inch: float) -> None:
    """Name each working face along it: inside the tang, or outside one too small for words.

    Outside there is no room between tang and spring, so the face that bears stays without.
    """
    tang = view.design.tang
    word_mm = mm_an_inch / _POINTS_AN_INCH
    small = faces_named_outside(view, mm_an_inch)
    shift = (1.0 if small else -1.0) * _FROM_FACE * word_mm
    faces = {"open": (0.0, tang.open_mm + shift), "closed": (0.0, -tang.closed_mm - shift)}
    if tang.half_stop_mm is not None:
        middle = 0.5 * (tang.open_mm - tang.closed_mm)
        faces["half-stop"] = (-tang.half_stop_mm - shift, middle)
    for name, place in faces.items():
        ((x, y),) = turned(np.array(place), tang.pivot_mm, view.blade_angle_deg)
        if small and y > 0.5 * tang.open_mm:
            continue
        along = 90.0 if name == "half-stop" else 0.0
        ax.text(
            x,
            y,
            name,
            rotation=_upright(along + view.blade_angle_deg - 180.0),
            rotation_mode="anchor",
            ha="center",
            va="center_baseline",
            fontsize=palette.SMALL,
            zorder=6,
        )


def faces_named_outside(view: PanelView, mm_an_inch: float) -> bool:
    """Whether the tang is too small on the picture for the names of its faces."""
    tang = view.design.tang
    return tang.open_mm + tang.closed_mm < _ROOM_FOR_WORDS * mm_an_inch / _POINTS_AN_INCH


def write_parts(ax: Axes, view: PanelView) -> None:
    """Name the pins, or the clamp, and the pivot."""
    _name_below(ax, view, root_name(view.design), 0.0)
    for station_mm in pins_mm(view.design)[1:]:
        _name_below(ax, view, "rear pin", station_mm)
    if view.name in TRAVEL_ORDER:
        _name_pivot(ax, view)


def write_scale(ax: Axes, left_mm: float, mm_an_inch: float, units: System) -> None:
    """Draw a length to measure by, in the lower left corner."""
    length_mm, label = (12.7, "0.5 in") if units == "in" else (10.0, "10 mm")
    height = ax.get_ylim()[0] + 10.0 * mm_an_inch / _POINTS_AN_INCH
    ax.plot([left_mm, left_mm + length_mm], [height, height], "|-", color=palette.INK, lw=1.0)
    ax.annotate(
        label,
        (left_mm + 0.5 * length_mm, height),
        xytext=(0.0, 4.0),
        textcoords="offset points",
        ha="center",
        va="bottom",
        fontsize=palette.SMALL,
    )


def write_width(
    ax: Axes, spring: _core.Spring, left_mm: float, mm_an_inch: float, units: System
) -> None:
    """Say beside the scale what a picture from the side does not show: a width that varies."""
    if not spring.widths:
        return
    widths = [each.width_mm for each in spring.widths]
    low, high, at_pin = (
        text(each, "length", units) for each in (min(widths), max(widths), spring.width_mm)
    )
    ax.annotate(
        f"from liner to liner {low} to {high}, {at_pin} at the middle pin",
        (left_mm + _SCALE_ROOM_MM, ax.get_ylim()[0] + 10.0 * mm_an_inch / _POINTS_AN_INCH),
        ha="left",
        va="center",
        fontsize=palette.SMALL,
    )


def _name_pivot(ax: Axes, view: PanelView) -> None:
    """Past a lower corner of the tang, between the names of two faces, clear of the blade."""
    tang = view.design.tang
    ahead = view.blade_angle_deg < _BLADE_LEADS_DEG
    corner = _core.rear_reach_mm(tang), max(tang.open_mm, tang.closed_mm)
    ax.annotate(
        "pivot",
        (tang.pivot_mm, 0.0),
        xytext=(tang.pivot_mm + (1.0 if ahead else -1.0) * 1.15 * corner[0], -1.35 * corner[1]),
        ha="left" if ahead else "right",
        va="center",
        fontsize=palette.SMALL,
        arrowprops={
            "arrowstyle": "-",
            "lw": 0.7,
            "color": palette.INK,
            "relpos": (0.0 if ahead else 1.0, 0.5),
        },
        zorder=7,
    )


def _name_below(ax: Axes, view: PanelView, name: str, station_mm: float) -> None:
    pinned = bool(pins_mm(view.design))
    low = view.spring.height_at(station_mm, 0.0) - (0.0 if pinned else clamp_room_mm(view.spring))
    ax.annotate(
        name,
        (station_mm, low),
        xytext=(0.0, -5.0),
        textcoords="offset points",
        ha="center" if pinned else "right",
        va="top",
        fontsize=palette.SMALL,
    )


def _upright(rotation_deg: float) -> float:
    """Turn a text by half a turn where it would stand on its head."""
    return (rotation_deg + 89.0) % 180.0 - 89.0
