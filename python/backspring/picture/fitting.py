"""A fitting plan drawn: readings against passes, and the tang with what comes off, to scale."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from matplotlib.axes import Axes
from matplotlib.figure import Figure
from matplotlib.patches import Polygon

from backspring import _core
from backspring.fit.result import FACES, FitPlan
from backspring.picture import palette
from backspring.picture.chart import dress_chart, placed_figure
from backspring.picture.tang_shape import Points, tang_shape
from backspring.report.display import STYLES, reading
from backspring.report.fit import face_name
from backspring.units import System

_HEIGHT_IN = 4.6
# A tip that moves by less is drawn nowhere: it is not seen on a knife either.
_TIP_SEEN_MM = 0.02
_LINES = {
    "half_stop": palette.Line(palette.PURPLE, "--", 2.0),
    "closed": palette.Line(palette.BLUE, "-", 2.0),
}
# Where the words to a face stand: place on the face, and which way they go from it.
_ASIDE = {"open": (0.3, 1.0), "half_stop": (-1.0, 0.25), "closed": (0.0, -1.0), "kick": (1.0, -1.0)}


def fitting(plan: FitPlan, *, units: System | None = None) -> Figure:
    """Draw readings against passes, and the tang with the steel to take off shaded, to scale.

    Where the plan moves the blade's tip, its way is drawn below the readings. `units` are the
    design's own when left out.
    """
    system = units or plan.design.units
    figure, below = placed_figure(plan.design.title, _HEIGHT_IN)
    moved = any(abs(step.tip_mm or 0.0) > _TIP_SEEN_MM for step in plan.steps)
    place = (0.085, 0.47, 0.39, 0.44) if moved else (0.075, 0.13, 0.40, 0.72)
    upper = passes(plan, below.add_axes(place), units=system)
    shading(plan, below.add_axes((0.52, 0.04, 0.47, 0.86)), units=system)
    if moved:
        upper.set_xlabel("")
        tip_way(plan, below.add_axes((0.085, 0.12, 0.39, 0.25)), units=system)
    return figure


def tip_way(plan: FitPlan, ax: Axes, *, units: System | None = None) -> Axes:
    """Draw the tip's move after every step, and the move that is allowed without a word."""
    style = STYLES[units or plan.design.units]["length"]
    places, shown = [0.0], [0.0]
    for step in plan.steps:
        same = [each.step for each in plan.steps if each.pass_number == step.pass_number]
        done = (same.index(step.step) + 1) / len(same)
        places.append(step.pass_number - 1 + done)
        shown.append((step.tip_mm or 0.0) / style.size)
    allowed = plan.rules.tip_allowance_mm / style.size
    ax.axhspan(-allowed, allowed, color=palette.TANG, lw=0.0, zorder=0, label="allowed")
    ax.plot(places, shown, "-", color=palette.INK, lw=1.2, zorder=2)
    ends = [place == round(place) for place in places]
    ax.plot(
        [place for place, end in zip(places, ends, strict=True) if end],
        [value for value, end in zip(shown, ends, strict=True) if end],
        "o",
        color=palette.INK,
        ms=4.5,
        zorder=3,
        label=f"tip, ends at {style.number(shown[-1] * style.size)}",
    )
    ax.set_xticks(range(plan.passes + 1), ["now", *(str(n) for n in range(1, plan.passes + 1))])
    dress_chart(ax, "after pass", f"tip [{style.unit}], + out")
    return ax


def passes(plan: FitPlan, ax: Axes, *, units: System | None = None) -> Axes:
    """Draw the loaded readings as each pass leaves them, and the target they must not go below."""
    style = STYLES[units or plan.design.units]["reading"]
    ends = _ends(plan)
    for name, line in _LINES.items():
        values = [_loaded(each, name) for each in ends]
        if values[0] is None:
            continue
        shown = [value / style.size for value in values if value is not None]
        ax.plot(
            range(len(shown)),
            shown,
            line.style,
            marker="o",
            ms=4.5,
            color=line.color,
            lw=line.width,
            label=name.replace("_", "-"),
        )
    target = plan.target_mm / style.size
    ax.axhline(target, color=palette.VERMILLION, lw=1.4, ls="-.", label="target: never below")
    ax.set_xticks(range(len(ends)), ["now", *(str(n) for n in range(1, len(ends)))])
    dress_chart(ax, "after pass", f"loaded reading [{style.unit}], + proud")
    return ax


def shading(plan: FitPlan, ax: Axes, *, units: System | None = None) -> Axes:
    """Draw the tang, blade open, with all that comes off shaded; everything to one scale."""
    system = units or plan.design.units
    now, done = plan.result.now, plan.result.done
    pivot_mm = now.tang.pivot_mm
    for points in _pieces(now, pivot_mm):
        ax.add_patch(
            Polygon(points, fc="#F6D5C2", ec=palette.VERMILLION, hatch="//////", lw=0.8, zorder=1)
        )
    for points in _pieces(done, pivot_mm):
        ax.add_patch(Polygon(points, fc=palette.TANG, ec=palette.INK, lw=1.0, zorder=2))
    body = _pieces(now, pivot_mm)[-1]
    _draw_pivot(ax, now)
    _name_faces(ax, plan, body, system)
    low, high = body.min(axis=0), body.max(axis=0)
    nose = 0.0 if now.tang.kick is None else now.tang.kick.height_mm
    ax.set_xlim(low[0] - 4.5, high[0] + 1.5)
    ax.set_ylim(low[1] - nose - 3.2, high[1] + 2.4)
    ax.set_aspect("equal")
    ax.set_axis_off()
    ax.set_title("to come off (hatched), blade open, to scale", fontsize=palette.NORMAL)
    return ax


def _ends(plan: FitPlan) -> Sequence[_core.FitStep | _core.FitPlan]:
    """Return the start, then the last step of every pass."""
    last = {step.pass_number: step for step in plan.steps}
    return [plan.result, *last.values()]


def _loaded(each: _core.FitStep | _core.FitPlan, name: str) -> float | None:
    value: float | None = getattr(each, f"{name}_loaded_mm")
    return value


def _pieces(design: _core.Design, pivot_mm: float) -> list[Points]:
    """Outlines from the pivot, the kick first so that the body covers it."""
    shape = tang_shape(design, 180.0)
    found = [shape.body] if shape.kick is None else [shape.kick, shape.body]
    return [points - np.array([pivot_mm, 0.0]) for points in found]


def _draw_pivot(ax: Axes, design: _core.Design) -> None:
    radius = 0.5 * design.friction.pivot_pin_mm or 0.3 * design.tang.open_mm
    around = np.linspace(0.0, 2.0 * np.pi, 73)
    circle = radius * np.column_stack((np.cos(around), np.sin(around)))
    ax.add_patch(Polygon(circle, fc="white", ec=palette.INK, lw=1.0, zorder=3))


def _name_faces(ax: Axes, plan: FitPlan, body: Points, system: System) -> None:
    tang, style = plan.result.now.tang, STYLES[system]["reading"]
    kick = tang.kick
    places = {
        "open": (0.0, tang.open_mm),
        "half_stop": (float(body[:, 0].min()), 0.0),
        "closed": (0.0, -tang.closed_mm),
        "kick": (0.0, 0.0)
        if kick is None
        else (kick.distance_mm, -tang.closed_mm - kick.height_mm),
    }
    for face in FACES:
        off = getattr(plan.result.removed, f"{face}_mm")
        if off <= 0.0:
            continue
        along, outward = _ASIDE[face]
        ax.annotate(
            f"{face_name(face, kick is not None)}:\n{style.text(off)} off",
            places[face],
            xytext=(26.0 * along, 26.0 * outward),
            textcoords="offset points",
            ha="right" if along < 0 else "center",
            va="bottom" if outward > 0 else "top",
            fontsize=palette.SMALL,
            arrowprops={"arrowstyle": "-", "color": palette.MUTED, "lw": 0.8},
        )
    if plan.done:
        closed = reading(plan.result.closed_loaded_mm, system)
        ax.text(0.0, 0.6 * tang.open_mm, f"done: closed {closed}", ha="center", zorder=4)
