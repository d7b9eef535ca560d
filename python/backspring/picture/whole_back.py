"""The back along the spring at half-stop and closed against open, much exaggerated."""

from __future__ import annotations

import numpy as np
import numpy.typing as npt
from matplotlib.axes import Axes

from backspring import _core
from backspring.design.design import Design
from backspring.picture import palette
from backspring.picture.chart import dress_chart, new_chart
from backspring.picture.places import Place, name_places
from backspring.picture.subject import as_check, rests, spoken, style_of
from backspring.question.check import Check
from backspring.report.display import reading
from backspring.report.whole_back import FINGERTIP, FINGERTIP_MM
from backspring.units import System

Column = npt.NDArray[np.float64]
_SPACING_MM = 0.1
_ROOM = 0.15
_LINES = {
    "half_stop": palette.Line(palette.PURPLE, "--", 2.0),
    "closed": palette.Line(palette.BLUE, "-", 2.0),
}


def whole_back(
    check_or_design: Check | Design, ax: Axes | None = None, *, units: System | None = None
) -> Axes:
    """Draw how far the loaded back stands above open, from the middle pin to the spring's end.

    Heights have a scale of their own, much larger than that along the spring. Other blades stand
    closed, also where this one is open.

    The scale beside zero is what a fingertip feels. `units` are the design's own when left out.
    """
    check = as_check(check_or_design)
    system = units or check.design.units
    height, length = style_of("reading", check, units), style_of("length", check, units)
    ax = new_chart(check.design.title)[1] if ax is None else ax
    shown = [name for name in rests(check) if name != "open"]
    for name in shown:
        station, above = above_open_mm(check, name)
        line = _LINES[name]
        ax.plot(
            station / length.size,
            above / height.size,
            line.style,
            color=line.color,
            lw=line.width,
            label=spoken(name),
        )
        dial = check.design.core.fit.dial_mm
        at_dial = float(np.interp(dial, station, above))
        ax.plot(dial / length.size, at_dial / height.size, "o", color=line.color, ms=5)
    ax.axhline(0.0, color=palette.INK, lw=1.0, label="open")
    ax.axhspan(
        -FINGERTIP_MM / height.size,
        FINGERTIP_MM / height.size,
        color=palette.ORANGE,
        alpha=0.7,
        lw=0,
        zorder=0.4,
        label=FINGERTIP[system],
    )
    _mark_ends(ax, check, shown, system)
    ax.margins(x=0.02, y=_ROOM)
    name_places(ax, [Place("dial", check.design.core.fit.dial_mm / length.size, "left")])
    dress_chart(
        ax,
        f"station from the middle pin [{length.unit}]",
        f"back above open, exaggerated [{height.unit}], + proud",
    )
    return ax


def above_open_mm(check: Check, position: str) -> tuple[Column, Column]:
    """Stations ahead of the middle pin, and how far the back stands above open there [mm]."""
    design = check.design.core
    here, open_ = (
        _core.spring_along(design, check.positions[name].blade_angle_deg, _SPACING_MM)
        for name in (position, "open")
    )
    ahead = here.station_mm >= 0.0
    return here.station_mm[ahead], (here.deflection_mm - open_.deflection_mm)[ahead]


def _mark_ends(ax: Axes, check: Check, shown: list[str], system: System) -> None:
    """Name the lowest and the highest place of the back, once for both positions."""
    height, length = style_of("reading", check, system), style_of("length", check, system)
    along = [check.along.positions[name] for name in shown if name in check.along.positions]
    if not along:
        return
    low = min(along, key=lambda each: each.least_mm)
    high = max(along, key=lambda each: each.greatest_mm)
    for x, y, below in (
        (low.least_at_mm, low.least_mm, True),
        (high.greatest_at_mm, high.greatest_mm, False),
    ):
        said = reading(y, system)
        if said == "flush":
            continue
        ax.annotate(
            f"{said} at {length.text(x)}",
            (x / length.size, y / height.size),
            xytext=(0.0, -8.0) if below else (-10.0, 2.0),
            textcoords="offset points",
            ha="center" if below else "right",
            va="top" if below else "center",
            fontsize=palette.SMALL,
            bbox=palette.UNDERLAY,
        )
