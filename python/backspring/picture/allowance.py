"""How the allowance moves with preload and with thickness."""

from __future__ import annotations

from typing import Any

import numpy as np
from matplotlib.axes import Axes
from matplotlib.figure import Figure

from backspring.design.design import Design
from backspring.fit.plan import TARGET, AllowanceRow, allowance_table
from backspring.picture import palette
from backspring.picture.chart import dress_chart, placed_figure
from backspring.report.display import STYLES
from backspring.units import System

# A thinner spring than this could open its pin holes.
_PRELOADS = tuple(float(share) for share in np.linspace(0.6, 1.4, 9))
_THICKNESSES = tuple(float(share) for share in np.linspace(0.8, 1.2, 9))
_HEIGHT_IN = 4.0
_LINES = {
    "closed_mm": palette.Line(palette.BLUE, "-", 2.0),
    "half_stop_mm": palette.Line(palette.PURPLE, "--", 2.0),
}


def allowance_curves(
    design: Design, target: Any = TARGET, *, units: System | None = None
) -> Figure:
    """Draw the unloaded readings to leave against preload and against thickness.

    The whole spring is made thicker or thinner by one share, its holes as they are. `units` are
    the design's own when left out.
    """
    system = units or design.units
    figure, below = placed_figure(design.title, _HEIGHT_IN)
    left, right = (below.add_axes((x, 0.15, 0.40, 0.70)) for x in (0.075, 0.57))
    length = STYLES[system]["length"]
    by_preload = allowance_table(design, "preload", _PRELOADS, target)
    preloads = [row.share * design.core.fit.preload_mm / length.size for row in by_preload]
    _draw(left, preloads, by_preload, system, f"preload [{length.unit}]")
    by_thickness = allowance_table(design, "thickness", _THICKNESSES, target)
    shares = [100.0 * row.share for row in by_thickness]
    _draw(right, shares, by_thickness, system, "thickness, all along [% of the design's]")
    top = max(ax.get_ylim()[1] for ax in (left, right))
    for ax in (left, right):
        ax.set_ylim(0.0, top)
    return figure


def _draw(
    ax: Axes, along: list[float], rows: list[AllowanceRow], system: System, label: str
) -> None:
    style = STYLES[system]["reading"]
    for name, line in _LINES.items():
        values = [getattr(row, name) for row in rows]
        if values[0] is not None:
            shown = [value / style.size for value in values]
            said = name.removesuffix("_mm").replace("_", "-")
            ax.plot(along, shown, line.style, color=line.color, lw=line.width, label=said)
    ax.axhline(
        rows[0].target_mm / style.size, color=palette.VERMILLION, lw=1.4, ls="-.", label="target"
    )
    dress_chart(ax, label, f"leave with the rear pin out [{style.unit}]")
