"""Where the tang bears on the spring and how hard, and what the dial reads."""

from __future__ import annotations

from matplotlib.axes import Axes

from backspring.picture import palette
from backspring.picture.position_panel import PanelView
from backspring.report.display import STYLES, reading
from backspring.units import System

_RISE_POINTS = 20.0


def write_force_and_dial(ax: Axes, view: PanelView, units: System) -> None:
    """Draw an arrow for each force and one for the dial, with their values beside them."""
    dial = view.design.fit.dial_mm
    places = [touch.x_mm for touch in view.touches]
    top = max(view.spring.height_at(x, 1.0) for x in [*places, dial])
    for touch in view.touches:
        _draw_arrow(ax, touch.x_mm, touch.height_mm, top, palette.VERMILLION, outward=True)
    _draw_arrow(ax, dial, view.spring.height_at(dial, 1.0), top, palette.BLUE, outward=False)
    dial_is_first = bool(places) and dial < min(places)
    first, last = min([*places, dial]), max([*places, dial])
    said = (_dial_text(view, units), _force_text(view, units))
    on_left, on_right = said if dial_is_first else said[::-1]
    _write_beside(ax, first, top, on_left, left=True)
    _write_beside(ax, last, top, on_right, left=False)


def _draw_arrow(
    ax: Axes, x_mm: float, foot_mm: float, top_mm: float, color: str, *, outward: bool
) -> None:
    """Draw an arrow between a place and a little above the highest one, pointing either way."""
    ax.plot([x_mm, x_mm], [foot_mm, top_mm], color=color, lw=1.5, zorder=5.5)
    ax.annotate(
        "",
        (x_mm, top_mm),
        xytext=(0.0, _RISE_POINTS),
        textcoords="offset points",
        arrowprops={
            "arrowstyle": "<|-" if outward else "-|>",
            "lw": 1.5,
            "color": color,
            "shrinkA": 0,
            "shrinkB": 0,
        },
        zorder=5.5,
    )


def _write_beside(ax: Axes, x_mm: float, top_mm: float, text: str, *, left: bool) -> None:
    ax.annotate(
        text,
        (x_mm, top_mm),
        xytext=(-7.0 if left else 7.0, 0.7 * _RISE_POINTS),
        textcoords="offset points",
        ha="right" if left else "left",
        va="center",
        fontsize=palette.NORMAL,
        zorder=7,
    )


def _force_text(view: PanelView, units: System) -> str:
    if not view.touches:
        return "lifted off: no force"
    return " and ".join(STYLES[units]["force"].text(touch.force_n) for touch in view.touches)


def _dial_text(view: PanelView, units: System) -> str:
    if view.name == "open" and not view.others:
        return "dial set to 0"
    unit = STYLES[units]["reading"].unit
    return "dial: " + reading(view.reading_mm, units).replace(" ", f" {unit} ")
