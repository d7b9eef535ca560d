"""Flush grinding: how far the loaded back stands above the liners, and what comes off it."""

from __future__ import annotations

from matplotlib.axes import Axes

from backspring.picture import palette
from backspring.picture.chart import dress_chart, new_chart
from backspring.picture.places import Place, name_places
from backspring.question.grind_result import Flush
from backspring.report.display import STYLES
from backspring.units import System


def flush_back(flush: Flush, ax: Axes | None = None, *, units: System | None = None) -> Axes:
    """Draw the back above the liners as it stood, blade open, and the depth taken off in all.

    `units` are the design's own when left out.
    """
    system = units or flush.design.units
    length, height = STYLES[system]["length"], STYLES[system]["reading"]
    ax = new_chart(flush.design.title)[1] if ax is None else ax
    station, proud = flush.before
    label = "back above the liners, as it stood"
    ax.plot(station / length.size, proud / height.size, color=palette.BLUE, lw=2.0, label=label)
    station, off = flush.removed
    if off.size:
        ax.fill_between(
            station / length.size,
            off / height.size,
            color=palette.ORANGE,
            alpha=0.5,
            lw=0,
            label=f"taken off in all, passes: {flush.passes}",
        )
    ax.axhline(0.0, color=palette.INK, lw=0.8)
    ax.margins(x=0.02, y=0.15)
    tang = flush.design.core.tang
    name_places(ax, [Place("pivot", tang.pivot_mm / length.size, "left")])
    dress_chart(
        ax,
        f"station from the middle pin [{length.unit}]",
        f"height, exaggerated [{height.unit}]",
    )
    return ax
