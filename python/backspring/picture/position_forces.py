"""Where the tang bears on the spring and how hard, and what the dial reads."""

from __future__ import annotations

from typing import Any

from matplotlib.axes import Axes

from backspring.picture import palette
from backspring.picture.position_panel import PanelView
from backspring.report.display import STYLES, reading
from backspring.units import System

_POINTS_AN_INCH = 72.0
# Height of an arrow above the highest place, and of a second row of words above the first.
_RISE_POINTS = 20.0
ROW_POINTS = 15.0
# Arrows on one line are told apart when the lower one ends inside the spring.
_ONE_LINE_POINTS = 6.0
_INSIDE = 0.72


def dial_stands_between(view: PanelView) -> bool:
    """Whether the dial has a force on either side, so that its words find room only above them."""
    places = [touch.x_mm for touch in view.touches]
    return bool(places) and min(places) < view.design.fit.dial_mm < max(places)


def write_force_and_dial(ax: Axes, view: PanelView, units: System, mm_an_inch: float) -> None:
    """Draw an arrow for each force and one for the dial, each with its value beside it."""
    dial = view.design.fit.dial_mm
    places = [touch.x_mm for touch in view.touches]
    top = max(view.spring.height_at(x, 1.0) for x in [*places, dial])
    near_mm = _ONE_LINE_POINTS / _POINTS_AN_INCH * mm_an_inch
    for touch in view.touches:
        if abs(touch.x_mm - dial) < near_mm:
            _draw_arrow_inside(ax, view, touch.x_mm, touch.height_mm)
        else:
            _draw_arrow(ax, touch.x_mm, touch.height_mm, top, palette.VERMILLION, outward=True)
    between = dial_stands_between(view)
    rise = ROW_POINTS if between else 0.0
    foot = view.spring.height_at(dial, 1.0)
    _draw_arrow(ax, dial, foot, top, palette.BLUE, outward=False, rise_points=rise)
    said = _dial_text(view, units)
    forces = [STYLES[units]["force"].text(touch.force_n) for touch in view.touches]
    if between:
        _write_beside(ax, dial, top, said, left=False, rise_points=rise)
        _write_beside(ax, min(places), top, forces[places.index(min(places))], left=True)
        _write_beside(ax, max(places), top, forces[places.index(max(places))], left=False)
        return
    first, last = min([*places, dial]), max([*places, dial])
    held = " and ".join(forces) or "lifted off: no force"
    on_left, on_right = (said, held) if places and dial < min(places) else (held, said)
    _write_beside(ax, first, top, on_left, left=True)
    _write_beside(ax, last, top, on_right, left=False)


def _draw_arrow(
    ax: Axes,
    x_mm: float,
    foot_mm: float,
    top_mm: float,
    color: str,
    *,
    outward: bool,
    rise_points: float = 0.0,
) -> None:
    """Draw an arrow between a place and a little above the highest one, pointing either way."""
    ax.plot([x_mm, x_mm], [foot_mm, top_mm], color=color, lw=1.5, zorder=5.5)
    ax.annotate(
        "",
        (x_mm, top_mm),
        xytext=(0.0, _RISE_POINTS + rise_points),
        textcoords="offset points",
        arrowprops=_arrow("<|-" if outward else "-|>", color),
        zorder=5.5,
    )


def _draw_arrow_inside(ax: Axes, view: PanelView, x_mm: float, foot_mm: float) -> None:
    """Draw a force's arrow no higher than the spring, clear of the dial's above it."""
    ax.annotate(
        "",
        (x_mm, view.spring.height_at(x_mm, _INSIDE)),
        xytext=(x_mm, foot_mm),
        arrowprops=_arrow("-|>", palette.VERMILLION),
        zorder=5.5,
    )


def _arrow(style: str, color: str) -> dict[str, Any]:
    return {"arrowstyle": style, "lw": 1.5, "color": color, "shrinkA": 0, "shrinkB": 0}


def _write_beside(
    ax: Axes, x_mm: float, top_mm: float, text: str, *, left: bool, rise_points: float = 0.0
) -> None:
    ax.annotate(
        text,
        (x_mm, top_mm),
        xytext=(-7.0 if left else 7.0, 0.7 * _RISE_POINTS + rise_points),
        textcoords="offset points",
        ha="right" if left else "left",
        va="center",
        fontsize=palette.NORMAL,
        zorder=7,
    )


def _dial_text(view: PanelView, units: System) -> str:
    if view.name == "open" and not view.others:
        return "dial set to 0"
    unit = STYLES[units]["reading"].unit
    return "dial: " + reading(view.reading_mm, units).replace(" ", f" {unit} ")
