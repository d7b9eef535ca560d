"""Bending stress along the spring at the rests and at the worst of the travel."""

from __future__ import annotations

import numpy as np
import numpy.typing as npt
from matplotlib.axes import Axes

from backspring import _core
from backspring.design.design import Design
from backspring.picture import palette
from backspring.picture.chart import dress_chart, new_chart
from backspring.picture.places import Place, name_places
from backspring.picture.subject import (
    as_check,
    pins_mm,
    rear_pad_mm,
    rests,
    root_name,
    spoken,
    style_of,
)
from backspring.question.check import Check
from backspring.report.display import Style
from backspring.units import System

Column = npt.NDArray[np.float64]
_SPACING_MM = 0.05
_HEADROOM = 1.25
_STRAIGHT = 1e-9


def stress_along(
    check_or_design: Check | Design,
    ax: Axes | None = None,
    *,
    units: System | None = None,
    blade_angle_deg: float | None = None,
) -> Axes:
    """Draw bending stress against station, at the rests and at the worst angle of the travel.

    Shown is the size of the stress in the outer fibre of back or belly, whichever is worse: with
    holes on the mid-line both are alike, the back in compression and the belly in tension. The
    yield stress is a line with its band. A blade angle adds the curve there. `units` are the
    design's own when left out.
    """
    check = as_check(check_or_design)
    design = check.design.core
    stress, length = style_of("stress", check, units), style_of("length", check, units)
    ax = new_chart(check.design.title)[1] if ax is None else ax
    curves = [(check.positions[name].blade_angle_deg, name) for name in rests(check)]
    curves.append((check.travel.peak_stress_angle_deg, "worst"))
    if blade_angle_deg is not None:
        curves.append((blade_angle_deg, "blade"))
    for angle, name in curves:
        line = palette.STRESS_LINES[name]
        label = spoken(name) + ("" if name in check.positions else f" at {angle:.0f} deg")
        station, outer = outer_stress_mpa(design, angle)
        ax.plot(
            station / length.size,
            outer / stress.size,
            line.style,
            color=line.color,
            lw=line.width,
            label=label,
        )
    draw_limits(ax, design, check.travel.peak_stress_mpa, stress, length)
    return ax


def draw_limits(
    ax: Axes,
    design: _core.Design,
    peak_mpa: float,
    stress: Style,
    length: Style,
    *,
    columns: int = 3,
) -> None:
    """Draw all that is not a curve: yield, places on the spring, words at the axes."""
    highest = max(design.strength.yield_mpa.high, peak_mpa) / stress.size
    ax.set_ylim(0.0, _HEADROOM * highest)
    _draw_yield(ax, design.strength.yield_mpa, stress)
    _mark_places(ax, design, length.size)
    dress_chart(
        ax,
        f"station from the middle pin [{length.unit}]",
        f"bending stress, outer fibre [{stress.unit}]",
        columns=columns,
    )


def outer_stress_mpa(design: _core.Design, blade_angle_deg: float) -> tuple[Column, Column]:
    """Stations [mm], and the size of the stress on the worse of back and belly [MPa]."""
    along = _core.spring_along(design, blade_angle_deg, _SPACING_MM)
    worse = np.maximum(np.abs(along.back_stress_mpa), np.abs(along.belly_stress_mpa))
    return along.station_mm, worse


def kinks_mm(profile: list[_core.Station]) -> list[float]:
    """Stations where the thickness changes its slope or steps."""
    kinks = []
    for before, here, after in zip(profile, profile[1:], profile[2:], strict=False):
        coming = (here.thickness_mm - before.thickness_mm) * (after.x_mm - here.x_mm)
        going = (after.thickness_mm - here.thickness_mm) * (here.x_mm - before.x_mm)
        if abs(coming - going) > _STRAIGHT and here.x_mm not in kinks:
            kinks.append(here.x_mm)
    return kinks


def _draw_yield(ax: Axes, yields: _core.Band, stress: Style) -> None:
    ax.axhspan(
        yields.low / stress.size, yields.high / stress.size, color=palette.ORANGE, alpha=0.25, lw=0
    )
    ax.axhline(yields.value / stress.size, color=palette.ORANGE, lw=1.6)
    ax.annotate(
        f"yield {stress.text(yields.value)}",
        (1.0, yields.high / stress.size),
        xycoords=ax.get_yaxis_transform(),
        xytext=(-4.0, 2.0),
        textcoords="offset points",
        ha="right",
        va="bottom",
        fontsize=palette.SMALL,
        bbox=palette.UNDERLAY,
    )


def _mark_places(ax: Axes, design: _core.Design, unit_mm: float) -> None:
    for hole in design.spring.holes:
        radius = 0.5 * hole.diameter_mm
        ax.axvspan(
            (hole.center_mm - radius) / unit_mm,
            (hole.center_mm + radius) / unit_mm,
            color=palette.FAINT,
            alpha=0.5,
            lw=0,
            zorder=0,
        )
    kinks = [x / unit_mm for x in kinks_mm(design.spring.thickness) if x > _rear_mm(design)]
    if kinks:
        ax.plot(
            kinks,
            np.zeros(len(kinks)),
            "^",
            color=palette.MUTED,
            ms=6,
            clip_on=False,
            label="kink in the thickness",
        )
    behind = rear_pad_mm(design) is not None
    places = [
        Place("rear pin", x / unit_mm, "left" if behind else "right") for x in pins_mm(design)[1:]
    ]
    places.append(Place(root_name(design), 0.0, "right"))
    for x, name in _pivots(design).items():
        places.append(Place(name, x / unit_mm, "left" if x > 0.0 else "right"))
    name_places(ax, places)


def _pivots(design: _core.Design) -> dict[float, str]:
    """Stations of the pivots, and whose they are."""
    names: dict[float, list[str]] = {}
    for blade in design.blades:
        pivot_mm = blade.tang.pivot_mm
        rear = blade.end == _core.End.rear
        names.setdefault(min(pins_mm(design)) - pivot_mm if rear else pivot_mm, []).append(
            blade.name
        )
    if len(design.blades) == 1:
        return dict.fromkeys(names, "pivot")
    return {x: f"{who[0]}'s pivot" if len(who) == 1 else "pivots" for x, who in names.items()}


def _rear_mm(design: _core.Design) -> float:
    return min(pins_mm(design), default=0.0) - (rear_pad_mm(design) or 0.0)
