"""One state of a whole joint drawn to scale: spring, every tang, forces and readings."""

from __future__ import annotations

from matplotlib.axes import Axes
from matplotlib.colors import Normalize

from backspring.picture import palette
from backspring.picture.joint_state import JointState, PlacedBlade
from backspring.picture.position_panel import (
    draw_cross,
    draw_outline,
    draw_pin,
    draw_spring,
    draw_tang,
    pivot_radius_mm,
)
from backspring.picture.subject import pins_mm, spoken
from backspring.report.display import STYLES, reading
from backspring.units import System

_POINTS_AN_INCH = 72.0
_TITLE_POINTS = 17.0
_LABEL_POINTS = 25.0
_ARROW_POINTS = 15.0


def headroom_in(state: JointState) -> float:
    """Height that title, labels and arrows take above the drawing."""
    tallest = max(map(len, _sides(state)))
    points = _TITLE_POINTS + _LABEL_POINTS * tallest + _ARROW_POINTS + 6.0
    return points / _POINTS_AN_INCH


def draw_state(ax: Axes, state: JointState, units: System, norm: Normalize) -> None:
    """Draw all parts, then the words above them."""
    for blade in state.blades:
        draw = draw_outline if state.behind(blade) else draw_tang
        draw(ax, blade.tang)
    draw_spring(ax, state.spring, STYLES[units]["stress"].size, norm)
    for blade in state.blades:
        draw_cross(ax, *blade.pivot, pivot_radius_mm(blade.mounting.design))
        _draw_arrows(ax, state, blade)
    for station_mm in pins_mm(state.design):
        draw_pin(ax, state.design, state.spring, station_mm)
    _write(ax, state, units)
    for artist in ax.get_children():
        artist.set_clip_on(False)


def title(state: JointState) -> str:
    """Say where every blade stands, the one the state is about first."""
    ordered = sorted(state.blades, key=lambda blade: blade.name != state.own)
    return ", ".join(f"{blade.name} {_stands(blade)}" for blade in ordered)


def _stands(blade: PlacedBlade) -> str:
    if blade.position is None:
        return f"at {blade.contact.blade_angle_deg:.0f} deg"
    return spoken(blade.position)


def _sides(state: JointState) -> tuple[list[PlacedBlade], list[PlacedBlade]]:
    """Blades whose words stand on the left and on the right.

    Each over its own end; where all are at one end, those drawn as outlines go to the free side.
    """
    rear = [blade for blade in state.blades if blade.at_rear]
    left = rear or [blade for blade in state.blades if state.behind(blade)]
    return left, [blade for blade in state.blades if blade not in left]


def _draw_arrows(ax: Axes, state: JointState, blade: PlacedBlade) -> None:
    """Draw where the tang bears and which way it presses, and the dial's foot on the back."""
    for x, y in blade.touches:
        ax.plot(x, y, "o", ms=5.0, mfc=palette.VERMILLION, mec="white", zorder=6)
        _draw_arrow(ax, x, state.spring.height_at(x, 1.0), palette.VERMILLION, "<|-")
    if not state.behind(blade):
        x = blade.dial_mm
        _draw_arrow(ax, x, state.spring.height_at(x, 1.0), palette.BLUE, "-|>")


def _draw_arrow(ax: Axes, x_mm: float, foot_mm: float, color: str, style: str) -> None:
    ax.annotate(
        "",
        (x_mm, foot_mm),
        xytext=(0.0, _ARROW_POINTS),
        textcoords="offset points",
        arrowprops={"arrowstyle": style, "color": color, "lw": 1.4, "shrinkA": 0, "shrinkB": 0},
        zorder=5.5,
    )


def _write(ax: Axes, state: JointState, units: System) -> None:
    _write_at(ax, 0.5, 0.0, title(state), size=palette.LARGE, bold=True)
    for x, blades in zip((0.0, 1.0), _sides(state), strict=True):
        for place, blade in enumerate(blades):
            down = _TITLE_POINTS + _LABEL_POINTS * place
            _write_at(ax, x, down, _label(state, blade, units), size=palette.SMALL)


def _write_at(
    ax: Axes, x: float, down_points: float, text: str, *, size: float, bold: bool = False
) -> None:
    ax.annotate(
        text,
        (x, 1.0),
        xycoords="axes fraction",
        xytext=(0.0, -down_points),
        textcoords="offset points",
        ha={0.0: "left", 1.0: "right"}.get(x, "center"),
        va="top",
        fontsize=size,
        fontweight="bold" if bold else "normal",
        linespacing=1.1,
        zorder=7,
        parse_math=False,
    )


def _label(state: JointState, blade: PlacedBlade, units: System) -> str:
    style = STYLES[units]
    hidden = " (dashed)" if state.behind(blade) else ""
    angle = style["angle"].text(blade.contact.blade_angle_deg)
    loose = blade.contact.force_n == 0.0
    force = "loose" if loose else style["force"].text(blade.contact.force_n)
    return f"{blade.name}{hidden} at {angle}\n{force}, {_dial(state, blade, units)}"


def _dial(state: JointState, blade: PlacedBlade, units: System) -> str:
    if state.all_open:
        return "dial set to 0"
    unit = STYLES[units]["reading"].unit
    return "dial: " + reading(blade.reading_mm, units).replace(" ", f" {unit} ")
