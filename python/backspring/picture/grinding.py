"""Grinding: pull, worst stress and margin against depth, and the steel that comes off."""

from __future__ import annotations

import re

import numpy as np
import numpy.typing as npt
from matplotlib.axes import Axes
from matplotlib.figure import Figure
from matplotlib.patches import Circle

from backspring import _core
from backspring.picture import palette
from backspring.picture.chart import label_axes, legend_above, named_figure
from backspring.question.grind_result import Rows
from backspring.report.display import STYLES, Style
from backspring.report.grind import headline
from backspring.units import System

Column = npt.NDArray[np.float64]
_HEIGHT_IN = 5.0
# A cut too thin to be seen to scale is still a line.
_SEEN_POINTS = 0.8
_SPACING_MM = 0.02
_ROOM = 0.2


def grinding(table: Rows, *, units: System | None = None) -> Figure:
    """Draw a table of grinding in a figure of its own, in the design's own units if none given."""
    system = units or table.design.units
    name = table.design.title
    answer = _in_lines(headline(table, system).removeprefix(f"{name}: "))
    figure = named_figure(name, _HEIGHT_IN, answer)
    axes = figure.subplot_mosaic("psm;ttt", height_ratios=(2.2, 1.0))
    _draw_effort(axes["p"], table, system)
    _draw_stress(axes["s"], table, system)
    _draw_margin(axes["m"], table, system)
    draw_removed(axes["t"], table, system)
    return figure


def draw_removed(ax: Axes, table: Rows, system: System) -> None:
    """Draw the spring straight and to scale, and on the ground face what comes off it."""
    length = STYLES[system]["length"]
    before, after = table.design.core.spring, table.ground.core.spring
    start, end = _ends_mm(table.design.core)
    station = np.linspace(start, end, int((end - start) / _SPACING_MM) + 1)
    was, left = (_thickness_mm(spring, station) for spring in (before, after))
    x = station / length.size
    low = np.zeros_like(was) if table.face == "back" else was - left
    high = left if table.face == "back" else was
    ax.fill_between(x, low / length.size, high / length.size, color=palette.TANG, lw=0)
    gone_low, gone_high = (left, was) if table.face == "back" else (np.zeros_like(was), low)
    ax.fill_between(
        x,
        gone_low / length.size,
        gone_high / length.size,
        color=palette.VERMILLION,
        lw=_SEEN_POINTS,
        label=f"taken off the {table.face}",
    )
    for edge in (np.zeros_like(was), was):
        ax.plot(x, edge / length.size, color=palette.INK, lw=1.0)
    _draw_holes(ax, before, length.size)
    label_axes(ax, f"station from the middle pin, all to scale [{length.unit}]", "")
    legend_above(ax)
    ax.set_aspect("equal", adjustable="box")
    ax.set_yticks([])
    ax.spines["left"].set_visible(False)
    ax.set_ylim(-_ROOM * was.max() / length.size, (1.0 + _ROOM) * was.max() / length.size)


def _in_lines(text: str) -> str:
    """Put what comes off on one line, what that does on the next."""
    return re.sub(", (?=pull|torque|does)", "\n", text, count=1)


def _draw_effort(ax: Axes, table: Rows, system: System) -> None:
    pulls = table.rows[0].peak_pull_n is not None
    style = STYLES[system]["force" if pulls else "torque"]
    values = table["peak_pull_n" if pulls else "peak_torque_nmm"]
    _curve(ax, table, values / style.size, palette.BLUE, system)
    _dress(ax, _depth_label(system), f"peak {'pull' if pulls else 'torque'} [{style.unit}]")


def _draw_stress(ax: Axes, table: Rows, system: System) -> None:
    style = STYLES[system]["stress"]
    _curve(ax, table, table["travel_peak_stress_mpa"] / style.size, palette.PURPLE, system)
    _dress(ax, _depth_label(system), f"worst stress of the travel [{style.unit}]")


def _draw_margin(ax: Axes, table: Rows, system: System) -> None:
    _curve(ax, table, table["yield_margin"], palette.VERMILLION, system)
    depth = table["removed_mm"] / _depth(system).size
    ax.fill_between(
        depth,
        table["yield_margin_low"],
        table["yield_margin"],
        color=palette.ORANGE,
        alpha=0.25,
        lw=0,
        label="to the low end of the steel's band",
    )
    ax.axhline(1.0, color=palette.INK, lw=0.9, ls="--")
    # The margin falls as steel goes, so there is room above the line at the right.
    ax.annotate(
        "below 1 it yields",
        (1.0, 1.0),
        xycoords=ax.get_yaxis_transform(),
        xytext=(-2.0, 3.0),
        textcoords="offset points",
        ha="right",
        va="bottom",
        fontsize=palette.SMALL,
        bbox=palette.UNDERLAY,
    )
    # Its words stand above the line, also where that is the highest of all.
    ax.margins(y=0.12)
    _dress(ax, _depth_label(system), "yield margin")
    legend_above(ax)


def _curve(ax: Axes, table: Rows, values: Column, color: str, system: System) -> None:
    depth = table["removed_mm"] / _depth(system).size
    ax.plot(depth, values, "-o", color=color, lw=1.8, ms=4)


def _depth(system: System) -> Style:
    return STYLES[system]["reading"]


def _depth_label(system: System) -> str:
    return f"taken off [{_depth(system).unit}]"


def _dress(ax: Axes, along: str, up: str) -> None:
    label_axes(ax, along, up)
    ax.grid(color=palette.FAINT, lw=0.5, alpha=0.6)
    ax.set_axisbelow(True)


def _ends_mm(design: _core.Design) -> tuple[float, float]:
    """Where the drawn steel starts and ends; one thickness is drawn from its hold to the pad."""
    spring = design.spring
    rear = -spring.support.rear_pin_mm
    if len(spring.thickness) == 1:
        return rear, design.pad.end_mm
    return spring.thickness[0].x_mm, spring.thickness[-1].x_mm


def _thickness_mm(spring: _core.Spring, station: Column) -> Column:
    return np.array([_core.thickness_mm(spring.thickness, x) for x in station])


def _draw_holes(ax: Axes, spring: _core.Spring, unit_mm: float) -> None:
    for hole in spring.holes:
        height = 0.5 * _core.thickness_mm(spring.thickness, hole.center_mm) + hole.offset_mm
        place = (hole.center_mm / unit_mm, height / unit_mm)
        radius = 0.5 * hole.diameter_mm / unit_mm
        ax.add_patch(Circle(place, radius, fc="white", ec=palette.INK, lw=1.0))
