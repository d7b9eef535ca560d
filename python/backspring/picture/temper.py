"""Hardness by temper: the curve, the published points, its band, tempers to avoid."""

from __future__ import annotations

import numpy as np
from matplotlib.axes import Axes

from backspring import steel as steels
from backspring.errors import OutOfRange
from backspring.picture import palette
from backspring.picture.chart import dress_chart, new_chart
from backspring.picture.places import Place, name_places
from backspring.report.steel_words import degrees, temperature_unit, time
from backspring.steel import tempering
from backspring.steel.records import Steel, Temper, TemperRow
from backspring.units import System

_STEPS = 400
_MARKERS = ("s", "^", "D", "v")
_COLORS = (palette.VERMILLION, palette.PURPLE, palette.ORANGE, palette.MUTED)


def temper_curve(
    name: str,
    ax: Axes | None = None,
    *,
    time_h: float | None = None,
    mark: tuple[float, float] | None = None,
    units: System = "mm",
) -> Axes:
    """Draw the hardness of a steel against its temper.

    Points are those of the steel's own source and of others beside it. Without a time the curve
    is for the hold of the points. `mark` is a temper [C] and a hardness [HRC] to point out;
    `units` "in" writes degrees F. Raises OutOfRange for a steel without temper data.
    """
    steel = steels.steel(name)
    temper = tempering.data_of(steel)
    ax = new_chart(steel.name)[1] if ax is None else ax
    _draw_curve(ax, steel, temper.hold_h if time_h is None else time_h, units)
    _draw_points(ax, temper, units)
    for band in steel.embrittlement:
        low, high = degrees(band.low_c, units), degrees(band.high_c, units)
        ax.axvspan(low, high, color=palette.FAINT, alpha=0.35, lw=0, zorder=0)
    brittle = [
        Place("brittle", degrees(each.low_c, units), "right") for each in steel.embrittlement
    ]
    name_places(ax, brittle)
    if mark is not None:
        ax.plot(degrees(mark[0], units), mark[1], "o", ms=11, mfc="none", mec=palette.INK, mew=1.6)
        ax.annotate(
            f"{mark[1]:.1f} HRC",
            (degrees(mark[0], units), mark[1]),
            xytext=(9.0, 9.0),
            textcoords="offset points",
            fontsize=palette.NORMAL,
            bbox=palette.UNDERLAY,
        )
    dress_chart(ax, f"temper [{temperature_unit(units)}]", "hardness [HRC]")
    return ax


def _draw_curve(ax: Axes, steel: Steel, time_h: float | None, units: System) -> None:
    temper = tempering.data_of(steel)
    rows = []
    for temper_c in np.linspace(*tempering.limits_c(temper), _STEPS):
        try:
            figure = tempering.hardness_after(steel, float(temper_c), time_h)
        except OutOfRange:
            # The fit ends where the steel is softer than any point of it.
            break
        rows.append((degrees(float(temper_c), units), figure.value, figure.low, figure.high))
    along, value, low, high = np.array(rows).T
    held = f", {time(time_h)}" if temper.fit is not None and time_h is not None else ""
    ax.fill_between(along, low, high, color=palette.SKY, alpha=0.3, lw=0, label="its band")
    label = f"{steel.name}{held}" if temper.fit else f"{steel.name}, between its points"
    ax.plot(along, value, color=palette.BLUE, lw=1.8, label=label)


def _draw_points(ax: Axes, temper: Temper, units: System) -> None:
    ax.plot(
        [degrees(row.temper_c, units) for row in temper.points],
        [row.hardness_hrc for row in temper.points],
        "o",
        color=palette.INK,
        ms=5,
        label=f"{temper.points[0].sources[0]}, {_hold(temper)}",
    )
    others: dict[str, list[TemperRow]] = {}
    for row in temper.beside:
        others.setdefault(row.sources[0], []).append(row)
    for (source, rows), marker, color in zip(others.items(), _MARKERS, _COLORS, strict=False):
        ends = [(row.low_hrc or row.hardness_hrc, row.high_hrc or row.hardness_hrc) for row in rows]
        middle = np.array([row.hardness_hrc for row in rows])
        ax.errorbar(
            [degrees(row.temper_c, units) for row in rows],
            middle,
            np.abs(np.array(ends).T - middle),
            fmt=marker,
            color=color,
            ms=5,
            mfc="white",
            lw=1.0,
            label=source,
        )


def _hold(temper: Temper) -> str:
    return "hold not stated" if temper.hold_h is None else temper.hold
