"""Influence along the spring: where a pass of the grinder matters, and where it does nothing."""

from __future__ import annotations

import numpy as np
from matplotlib.axes import Axes
from matplotlib.figure import Figure
from matplotlib.patches import Circle
from matplotlib.ticker import MaxNLocator

from backspring import _core
from backspring.picture import palette
from backspring.picture.chart import legend_above, named_figure
from backspring.picture.palette import Line
from backspring.picture.places import Place, name_places
from backspring.question.sensitivity import Influence
from backspring.report.display import STYLES
from backspring.report.influence import PASS_OF, SHOWN, headline, shown_names, style
from backspring.units import System

_HEIGHT_IN = 2.0
_SHAPE_IN = 1.3
_ROOM_A_ROW = 0.13
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

    All changes are for the little that its first line says. `units` are the design's own when left
    out.
    """
    system = units or found.design.units
    answer = headline(found, system).removeprefix(f"{found.design.title}: ")
    panels = _panels(found)
    heights = [_SHAPE_IN, *(_HEIGHT_IN for _ in panels)]
    figure = named_figure(found.design.title, sum(heights), answer)
    axes = figure.subplots(len(heights), 1, sharex=True, height_ratios=heights, squeeze=False)
    rows: list[Axes] = list(axes[:, 0])
    ends = np.array(_ends_mm(found)) / STYLES[system]["length"].size
    rows[0].set_xlim(*ends)
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
    x = np.linspace(*_ends_mm(found), 600)
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
    outline = np.concatenate((np.zeros_like(thick), thick[::-1], [0.0]))
    around = np.concatenate((x, x[::-1], x[:1]))
    ax.plot(around / unit, outline / unit, color=palette.INK, lw=1.0, clip_on=False)
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
    ax.set_aspect("equal", adjustable="box", anchor="S")
    ax.spines[["top", "right", "left", "bottom"]].set_visible(False)
    ax.tick_params(left=False, labelleft=False, bottom=False, labelbottom=False)
    label = f"share of the greatest change of {SHOWN[name][0]}"
    bar = ax.figure.colorbar(
        mesh, ax=ax, orientation="horizontal", location="top", shrink=0.4, pad=0.2
    )
    bar.set_label(label, fontsize=palette.SMALL)
    bar.ax.tick_params(labelsize=palette.SMALL)


def _draw_panel(
    ax: Axes, found: Influence, system: System, title: str, names: tuple[str, ...]
) -> None:
    length, share = STYLES[system]["length"].size, PASS_OF[system][1]
    for name in names:
        line, scale = _LINES[name], style(name, system)
        ax.plot(
            found.station_mm / length,
            share * found[name] / scale.size,
            line.style,
            color=line.color,
            lw=line.width,
            label=SHOWN[name][0],
        )
    ax.axhline(0.0, color=palette.INK, lw=0.8)
    # Numbers that do not change with the room that a layout finds for them.
    ax.yaxis.set_major_locator(MaxNLocator(4))
    unit = style(names[0], system).unit
    ax.set_ylabel(f"{title}\n[{unit}]", fontsize=palette.NORMAL)
    ax.tick_params(labelsize=palette.SMALL)
    ax.spines[["top", "right"]].set_visible(False)
    if len(names) > 1:
        legend_above(ax)
    low, high = ax.get_ylim()
    places = [
        Place("pivot", found.design.core.tang.pivot_mm / length, "left"),
        Place("middle pin", 0.0, "right"),
    ]
    if (worst := _worst_mm(found)) is not None and "travel_peak_stress_mpa" in names:
        # On the other side, so that a worst place at the pin is read beside the pin's own name.
        places.append(Place("worst stress", worst / length, "left", "--"))
    rows = name_places(ax, places)
    ax.set_ylim(low, high + _ROOM_A_ROW * rows * (high - low))


def _ends_mm(found: Influence) -> tuple[float, float]:
    """Where the drawn steel starts and ends: a thickness that is given beyond the pin goes on."""
    start, end = float(found.station_mm[0]), float(found.station_mm[-1])
    profile = found.design.core.spring.thickness
    return (min(start, profile[0].x_mm) if len(profile) > 1 else start), end


def _worst_mm(found: Influence) -> float | None:
    change = found.change.get("travel_peak_stress_mpa")
    return None if change is None else float(found.station_mm[int(np.argmax(change))])
