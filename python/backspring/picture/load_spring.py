"""Force that pulls the spring out over the tang, against the station where it pulls."""

from __future__ import annotations

import numpy as np
from matplotlib.axes import Axes

from backspring import _core
from backspring.picture import palette
from backspring.picture.chart import dress_chart, new_chart
from backspring.picture.places import Place, name_places
from backspring.question.load_spring import SpringLoading
from backspring.report.display import STYLES, text
from backspring.units import System

_POINTS = 81
_FARTHEST_BACK = 0.25
_HEADROOM = 1.12


def spring_loading(
    loading: SpringLoading, ax: Axes | None = None, *, units: System | None = None
) -> Axes:
    """Draw force against station, and where the spring would not bear it.

    From a quarter of the way along the spring to the nearest place behind the tang, or to the place
    asked for where that lies beyond. `units` are the design's own when left out.
    """
    system = units or loading.design.units
    force, length = STYLES[system]["force"], STYLES[system]["length"]
    ax = new_chart(loading.design.name)[1] if ax is None else ax
    asked, nearest = loading.result, _core.nearest_pull_mm(loading.design.core)
    start = max(min(_FARTHEST_BACK * nearest, asked.at_mm), _core.LEAST_PULL_STATION_MM)
    stations = np.linspace(start, max(nearest, asked.at_mm), _POINTS)
    curve = loading.at(stations)
    x = stations / length.size
    y = np.array([each.force_n for each in curve]) / force.size
    good = np.array([each.met for each in curve])
    wanted = f"yield margin {asked.wanted_margin:g}"
    borne = np.where(good, y, np.nan)
    ax.plot(x, borne, color=palette.BLUE, lw=2.0, label="force to pull the spring out")
    if not good.all():
        ax.plot(
            x,
            np.where(good, np.nan, y),
            "--",
            color=palette.VERMILLION,
            lw=2.0,
            label=f"below {wanted}",
        )
    ax.plot(asked.at_mm / length.size, asked.force_n / force.size, "o", color=palette.INK, ms=6)
    moved = text(asked.movement_mm, "length", system)
    said = [text(asked.force_n, "force", system), f"moves {moved}"]
    if asked.yield_margin is not None:
        said.append(f"margin {asked.yield_margin:.2f}")
    ax.annotate(
        "\n".join(said),
        (asked.at_mm / length.size, asked.force_n / force.size),
        xytext=(-8.0, 12.0),
        textcoords="offset points",
        ha="right" if asked.at_mm > 0.5 * (start + stations[-1]) else "left",
        va="bottom",
        fontsize=palette.SMALL,
        bbox=palette.UNDERLAY,
    )
    if asked.at_mm > nearest:
        name_places(ax, [Place("open tang ahead", nearest / length.size, "right")])
    ax.set_ylim(0.0, _HEADROOM * float(y.max()))
    dress_chart(
        ax,
        f"pulled at, from the middle pin [{length.unit}]",
        f"force [{force.unit}]",
    )
    return ax
