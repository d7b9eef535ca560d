"""Pull and margin over two dimensions, with the part that meets what is wanted."""

from __future__ import annotations

import numpy as np
from matplotlib.artist import Artist
from matplotlib.axes import Axes
from matplotlib.contour import ContourSet
from matplotlib.figure import Figure
from matplotlib.lines import Line2D
from matplotlib.patches import Patch

from backspring import _core
from backspring.picture import palette
from backspring.picture.chart import new_chart
from backspring.picture.line_labels import label_lines
from backspring.question.size import DesignMap
from backspring.question.size import design_map as work_out
from backspring.question.size_result import Sized
from backspring.report.display import STYLES
from backspring.report.size import spoken_key
from backspring.units import System

_PARTS = 41
_MARGIN = palette.Line(palette.VERMILLION, "--", 1.4)
_PULL = palette.Line(palette.BLUE, "-", 1.4)


def design_map(
    found: DesignMap,
    ax: Axes | None = None,
    *,
    pull_n: float | None = None,
    yield_margin: float | None = None,
    units: System | None = None,
) -> Axes:
    """Draw lines of one pull and of one margin, and shade where the margin is as wanted.

    A wanted pull is a thick line; its part on the shaded ground is what can be made. Left white is
    what breaks a rule or does not work. `units` are the design's own when left out.
    """
    styles = STYLES[units or found.design.units]
    length, force = styles["length"].size, styles["force"]
    ax = new_chart(found.design.title)[1] if ax is None else ax
    x, y = found.x_mm / length, found.y_mm / length
    pull, margin = found.pull_n / force.size, found.yield_margin
    works = np.where(np.isnan(margin), np.nan, 1.0)
    ax.set_xlim(float(x[0]), float(x[-1]))
    ax.set_ylim(float(y[0]), float(y[-1]))
    ax.contourf(x, y, works, levels=[0.5, 1.5], colors=[palette.BLADE])
    some = not np.isnan(margin).all()
    if some and yield_margin is not None and np.nanmax(margin) > yield_margin:
        levels = [yield_margin, float(np.nanmax(margin)) + 1.0]
        ax.contourf(x, y, margin, levels=levels, colors=[palette.SKY], alpha=0.45)
    drawn = [
        _lines(ax, x, y, pull, _PULL, wanted=_in(pull_n, force.size)),
        _lines(ax, x, y, margin, _MARGIN, wanted=yield_margin),
    ]
    label_lines(ax, zip(drawn, (f"%.{force.decimals}f", "%.2f"), strict=True))
    keys: list[Artist] = [
        Line2D([], [], color=_PULL.color, ls=_PULL.style, label=f"pull [{force.unit}]"),
        Line2D([], [], color=_MARGIN.color, ls=_MARGIN.style, label="yield margin"),
    ]
    if yield_margin is not None:
        keys.append(Patch(fc=palette.SKY, alpha=0.45, label=f"margin at least {yield_margin:g}"))
    ax.legend(
        handles=keys,
        fontsize=palette.SMALL,
        frameon=False,
        loc="lower left",
        bbox_to_anchor=(0.0, 1.0),
        ncols=3,
    )
    unit = styles["length"].unit
    ax.set_xlabel(f"{_name(found.x)} [{unit}]", fontsize=palette.NORMAL)
    ax.set_ylabel(f"{_name(found.y)} [{unit}]", fontsize=palette.NORMAL)
    ax.tick_params(labelsize=palette.SMALL)
    return ax


def map_of(sized: Sized, *, units: System | None = None) -> Figure:
    """Draw the map about what was sized, with a mark for every solution.

    With one dimension sized the other is preload, or the thickness where preload was sized.
    """
    keys = list(sized.vary[:2])
    if len(keys) == 1:
        keys.append("spring.thickness" if keys[0] == "fit.preload" else "fit.preload")
    shown = sized.solutions or ((sized.nearest,) if sized.nearest else ())
    places = [[size_mm(each.design.core, key) for key in keys] for each in shown]
    grid = {}
    for i, key in enumerate(keys):
        held = [size_mm(sized.original.core, key), *(place[i] for place in places)]
        grid[key] = np.linspace(0.7 * min(held), 1.3 * max(held), _PARTS)
    figure, ax = new_chart(sized.original.title)
    found = work_out(sized.original, grid)
    design_map(found, ax, pull_n=sized.pull_n, yield_margin=sized.yield_margin, units=units)
    length = STYLES[units or sized.original.units]["length"].size
    for place in places:
        mark = "o" if sized.found else "X"
        ax.plot(place[0] / length, place[1] / length, mark, color=palette.INK, ms=8)
    return figure


def size_mm(design: _core.Design, key: str) -> float:
    """Size of a dimension in a design."""
    plain, at, station = key.partition("@")
    place = float(station) if at else None
    return _core.size_of(design, _core.SizeDimension(key=plain, station_mm=place))


def _in(value: float | None, size: float) -> float | None:
    return None if value is None else value / size


def _name(key: str) -> str:
    plain, at, station = key.partition("@")
    return f"thickness at {station} mm" if at else spoken_key(plain)


def _lines(
    ax: Axes,
    x: np.ndarray,
    y: np.ndarray,
    values: np.ndarray,
    line: palette.Line,
    *,
    wanted: float | None,
) -> ContourSet | None:
    if np.isnan(values).all():
        return None
    drawn = ax.contour(
        x, y, values, levels=8, colors=line.color, linestyles=line.style, linewidths=0.9
    )
    if wanted is not None and np.nanmin(values) < wanted < np.nanmax(values):
        ax.contour(
            x, y, values, levels=[wanted], colors=line.color, linestyles=line.style, linewidths=2.8
        )
    return drawn
