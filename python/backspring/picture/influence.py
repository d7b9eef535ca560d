"""Influence along the spring: where a pass of the grinder matters, and where it does nothing."""

from __future__ import annotations

import numpy as np
from matplotlib.axes import Axes
from matplotlib.figure import Figure
from matplotlib.patches import Circle

from backspring import _core
from backspring.picture import palette
from backspring.picture.canvas import Picture
from backspring.picture.chart import name_place
from backspring.picture.palette import Line
from backspring.question.sensitivity import Influence
from backspring.report.display import STYLES
from backspring.report.influence import SHOWN, shown_names, style
from backspring.units import System

_HEIGHT_IN = 2.0
_SHAPE_IN = 1.9
_COLORS = "YlOrRd"
_LINES = {
    "peak_pull_n": Line(palette.BLUE, "-", 2.0),
    "peak_torque_nmm": Line(palette.BLUE, "-", 2.0),
    "stiffness_n_per_mm": Line(palette.INK, "-", 2.0),
    "travel_peak_stress_mpa": Line(palette.VERMILLION, "-", 2.0),
    "reading_loaded_half_stop_mm": Line(palette.PURPLE, "--", 2.0),
    "reading_loaded_closed_mm": Line(palette.BLUE, "-", 2.0),
}
_PANELS = (
    ("pull", ("peak_pull_n",)),
    ("worst stress", ("travel_peak_stress_mpa",)),
    ("loaded readings", ("reading_loaded_half_stop_mm", "reading_loaded_closed_mm")),
)


def influence(found: Influence, *, units: System | None = None) -> Figure:
    """Draw the spring, darker where a pass takes more pull, over the changes along it.

    All changes are for 0.1 mm taken off one mm of length. `units` are the design's own when left
    out.
    """
    system = units or found.design.units
    panels = _panels(found)
    heights = [_SHAPE_IN, *(_HEIGHT_IN for _ in panels)]
    figure = Picture(
        figsize=(palette.WIDTH_IN, sum(heights)), dpi=palette.DPI, layout="constrained"
    )
    axes = figure.subplots(len(heights), 1, sharex=True, height_ratios=heights, squeeze=False)
    rows: list[Axes] = list(axes[:, 0])
    _draw_spring(rows[0], found, system, shown_names(found)[0])
    for ax, (title, names) in zip(rows[1:], panels, strict=True):
        _draw_panel(ax, found, system, title, names)
    unit = STYLES[system]["length"].unit
    rows[-1].set_xlabel(f"station from the middle pin [{unit}]", fontsize=palette.NORMAL)
    return figure


def _panels(found: Influence) -> list[tuple[str, tuple[str, ...]]]:
    first = shown_names(found)[0]
    panels = [(SHOWN[first][0], (first,)), *_PANELS[1:]]
    shown = shown_names(found)
    held = [(title, tuple(name for name in names if name in shown)) for title, names in panels]
    return [(title, names) for title, names in held if names]


def _draw_spring(ax: Axes, found: Influence, system: System, name: str) -> None:
    spring, unit = found.design.core.spring, STYLES[system]["length"].size
    x = np.linspace(found.station_mm[0], found.station_mm[-1], 600)
    thick = np.array([_core.thickness_mm(spring.thickness, each) for each in x])
    change = np.abs(np.interp(x, found.station_mm, found[name]))
    share = np.linspace(0.0, 1.0, 2)[:, None]
    mesh = ax.pcolormesh(
        np.tile(x / unit, (2, 1)),
        share * thick / unit,
        np.tile(change / (change.max() or 1.0), (2, 1)),
        cmap=_COLORS,
        shading="gouraud",
        vmin=0.0,
        vmax=1.0,
        rasterized=True,
    )
    for edge in (np.zeros_like(thick), thick):
        ax.plot(x / unit, edge / unit, color=palette.INK, lw=1.0)
    for hole in spring.holes:
        middle = 0.5 * _core.thickness_mm(spring.thickness, hole.center_mm) + hole.offset_mm
        ax.add_patch(
            Circle(
                (hole.center_mm / unit, middle / unit),
                0.5 * hole.diameter_mm / unit,
                fc="white",
                ec=palette.INK,
                lw=1.0,
            )
        )
    ax.set_aspect("equal", adjustable="datalim")
    ax.spines[["top", "right", "left", "bottom"]].set_visible(False)
    ax.tick_params(left=False, labelleft=False, bottom=False, labelbottom=False)
    label = f"share of the greatest change of {SHOWN[name][0]}"
    bar = ax.figure.colorbar(mesh, ax=ax, orientation="horizontal", location="top", shrink=0.4)
    bar.set_label(label, fontsize=palette.SMALL)
    bar.ax.tick_params(labelsize=palette.SMALL)


def _draw_panel(
    ax: Axes, found: Influence, system: System, title: str, names: tuple[str, ...]
) -> None:
    length = STYLES[system]["length"].size
    for name in names:
        line, scale = _LINES[name], style(name, system)
        ax.plot(
            found.station_mm / length,
            found[name] / scale.size,
            line.style,
            color=line.color,
            lw=line.width,
            label=SHOWN[name][0],
        )
    ax.axhline(0.0, color=palette.INK, lw=0.8)
    unit = style(names[0], system).unit
    ax.set_ylabel(f"{title}\n[{unit}]", fontsize=palette.NORMAL)
    ax.tick_params(labelsize=palette.SMALL)
    ax.spines[["top", "right"]].set_visible(False)
    if len(names) > 1:
        ax.legend(fontsize=palette.SMALL, frameon=False, ncols=2)
    name_place(ax, "pivot", found.design.core.tang.pivot_mm / length, side="left")
    name_place(ax, "middle pin", 0.0, side="right")
    if (worst := _worst_mm(found)) is not None and "travel_peak_stress_mpa" in names:
        # On the other side, so that a worst place at the pin is read beside the pin's own name.
        name_place(ax, "worst stress", worst / length, side="left", style="--")


def _worst_mm(found: Influence) -> float | None:
    change = found.change.get("travel_peak_stress_mpa")
    return None if change is None else float(found.station_mm[int(np.argmax(change))])
