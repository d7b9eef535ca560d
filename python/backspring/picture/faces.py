"""What taking steel off one face or another does, a row of bars a face."""

from __future__ import annotations

import numpy as np
from matplotlib.axes import Axes
from matplotlib.figure import Figure

from backspring import _core
from backspring.fit.levers import Levers
from backspring.picture import palette
from backspring.picture.chart import label_axes, legend_above, named_figure, new_chart
from backspring.question.grind_ways import GrindWays
from backspring.report.display import STYLES, number, text
from backspring.report.levers import DEPTH_OF, FACE_NAMES
from backspring.units import System

_ROW_IN = 0.45
_HEAD_IN = 1.2
_READINGS = (("half_stop_mm", "half-stop", palette.PURPLE), ("closed_mm", "closed", palette.BLUE))


def ways_to_pull(ways: GrindWays, *, units: System | None = None) -> Figure:
    """Draw how much comes off each face for the same pull, and the margin that is left.

    A face that cannot give the pull says so. `units` are the design's own when left out.
    """
    system = units or ways.design.units
    style = STYLES[system]["reading"]
    answer = f"{text(ways.pull_n, 'force', system)} by grinding one face"
    height = _HEAD_IN + _ROW_IN * len(ways.ways)
    figure = named_figure(ways.design.title, height, answer)
    off, margin = figure.subplots(1, 2, sharey=True)
    for row, way in enumerate(ways.ways):
        if way.after is None:
            off.text(0.0, row, " cannot give it", va="center", fontsize=palette.SMALL)
            continue
        depth = way.after.removed_mm / style.size
        _bar(off, row, depth, style.number(way.after.removed_mm), palette.ORANGE)
        held = way.after.yield_margin
        if held is not None:
            _bar(margin, row, held, number(held, "margin", system), palette.VERMILLION)
    off.set_yticks(range(len(ways.ways)), [_place(way, system) for way in ways.ways])
    off.set_ylim(len(ways.ways) - 0.5, -0.5)
    margin.axvline(1.0, color=palette.INK, lw=0.9, ls="--", label="below 1 it yields")
    label_axes(off, f"to take off [{style.unit}]", "")
    label_axes(margin, "yield margin then", "")
    for ax in (off, margin):
        ax.margins(x=0.15)
    legend_above(margin)
    return figure


def lever_bars(levers: Levers, ax: Axes | None = None, *, units: System | None = None) -> Axes:
    """Draw what a little off each face moves of both loaded readings.

    `units` are the design's own when left out.
    """
    system = units or levers.design.units
    style, (depth, share) = STYLES[system]["reading"], DEPTH_OF[system]
    ax = new_chart(levers.design.title)[1] if ax is None else ax
    for side, (name, label, color) in zip((-0.2, 0.2), _READINGS, strict=True):
        moved = [getattr(row, name) for row in levers.rows]
        if all(each is None for each in moved):
            continue
        values = [0.0 if each is None else share * each / style.size for each in moved]
        ax.barh(np.arange(len(moved)) + side, values, 0.36, color=color, label=label)
    ax.axvline(0.0, color=palette.INK, lw=0.8)
    ax.set_yticks(range(len(levers.rows)), [FACE_NAMES[row.face.name] for row in levers.rows])
    ax.set_ylim(len(levers.rows) - 0.5, -0.5)
    label_axes(ax, f"reading moved by {depth} off the face [{style.unit}], + prouder", "")
    legend_above(ax)
    return ax


def _bar(ax: Axes, row: int, value: float, said: str, color: str) -> None:
    ax.barh(row, value, 0.6, color=color, alpha=0.8)
    ax.annotate(
        said,
        (value, row),
        xytext=(4.0, 0.0),
        textcoords="offset points",
        va="center",
        fontsize=palette.SMALL,
    )


def _place(way: _core.GrindWay, system: System) -> str:
    ends = (way.region.from_mm, way.region.to_mm)
    start, end = (number(each, "length", system) for each in ends)
    return f"{way.face.name}, {start} to {end} {STYLES[system]['length'].unit}"
