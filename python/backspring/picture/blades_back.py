"""The back beside each of several blades against open, much exaggerated."""

from __future__ import annotations

from matplotlib.figure import Figure

from backspring.picture import palette
from backspring.picture.chart import named_figure
from backspring.picture.whole_back import whole_back
from backspring.question.check import BladesCheck
from backspring.units import System

_CHART_IN = 3.9


def blades_back(check: BladesCheck, *, units: System | None = None) -> Figure:
    """Draw a chart for each blade, one under the other; its stations are the blade's own.

    `units` are the design's own when left out.
    """
    blades = check.blades
    figure = named_figure(check.design.name, _CHART_IN * len(blades))
    for place, (name, each) in enumerate(blades.items(), start=1):
        ax = figure.add_subplot(len(blades), 1, place)
        whole_back(each, ax, units=units)
        ax.set_title(name, loc="right", fontsize=palette.LARGE, fontweight="bold")
    return figure
