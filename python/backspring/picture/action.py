"""Torque and pull against blade angle: how the joint opens, snaps and closes."""

from __future__ import annotations

import numpy as np
from matplotlib.axes import Axes
from matplotlib.ticker import MaxNLocator

from backspring import _core
from backspring.design.design import Design
from backspring.picture import palette
from backspring.picture.chart import dress_chart, new_chart
from backspring.picture.places import ROW_POINTS, Place, axes_points, name_places
from backspring.picture.subject import as_check, rests, spoken, style_of
from backspring.question.check import Check
from backspring.units import System

STEP_DEG = 0.5
_PEAK_POINTS = 24.0
_OPENING = palette.Line(palette.BLUE, "-", 2.0)
_CLOSING = palette.Line(palette.VERMILLION, "--")


def action(
    check_or_design: Check | Design, ax: Axes | None = None, *, units: System | None = None
) -> Axes:
    """Draw the torque that resists opening against blade angle, opening and closing.

    The right-hand axis is pull at the nail nick, where the design says how far out that is.
    `units` are the design's own when left out.
    """
    check = as_check(check_or_design)
    torque = style_of("torque", check, units)
    ax = new_chart(check.design.title)[1] if ax is None else ax
    sweep = _core.sweep(check.design.core, STEP_DEG)
    for curve, line, label in (
        (sweep.opening_torque_nmm, _OPENING, "opening"),
        (sweep.closing_torque_nmm, _CLOSING, "closing"),
    ):
        ax.plot(
            sweep.blade_angle_deg,
            curve / torque.size,
            line.style,
            color=line.color,
            lw=line.width,
            label=label,
        )
    ax.axhline(0.0, color=palette.INK, lw=0.8)
    _shade_snaps(ax, check, sweep, torque.size)
    ax.set_xlim(float(sweep.blade_angle_deg[0]), float(sweep.blade_angle_deg[-1]))
    _make_room(ax, sweep, torque.size, rows=name_places(ax, _places(check)))
    _mark_peaks(ax, check, units)
    ax.set_xticks(np.arange(0.0, 181.0, 30.0))
    dress_chart(ax, "blade angle [deg]", f"torque [{torque.unit}]: + resists opening")
    _add_pull(ax, check, units)
    return ax


def _places(check: Check) -> list[Place]:
    at_rest = [
        Place(
            spoken(name),
            check.positions[name].blade_angle_deg,
            "left" if name == "open" else "right",
            "-",
        )
        for name in rests(check)
    ]
    return at_rest + [Place("crest", stroke.crest_angle_deg, "right") for stroke in check.strokes]


def _make_room(ax: Axes, sweep: _core.Sweep, unit_nmm: float, rows: int) -> None:
    """Leave room above the curves for the rows of names and a peak's words."""
    both = np.concatenate((sweep.opening_torque_nmm, sweep.closing_torque_nmm)) / unit_nmm
    low, high = min(float(both.min()), 0.0), max(float(both.max()), 0.0)
    span = (high - low) or 1.0
    words = (ROW_POINTS * rows + _PEAK_POINTS) / axes_points(ax)[1]
    ax.set_ylim(low - 0.05 * span, high + span * words / (1.0 - words))


def _shade_snaps(ax: Axes, check: Check, sweep: _core.Sweep, unit_nmm: float) -> None:
    """Shade where the blade runs home by itself: its area is the energy of the snap."""
    angle, opening = sweep.blade_angle_deg, sweep.opening_torque_nmm
    runs = np.zeros(angle.size, dtype=bool)
    for stroke in check.strokes:
        inside = (angle >= stroke.crest_angle_deg) & (angle <= stroke.to_deg)
        runs |= inside & (opening < 0.0)
    if runs.any():
        ax.fill_between(
            angle,
            opening / unit_nmm,
            0.0,
            where=runs,
            color=palette.SKY,
            alpha=0.3,
            lw=0,
            label="snaps home",
        )


def _mark_peaks(ax: Axes, check: Check, units: System | None) -> None:
    torque, force = style_of("torque", check, units), style_of("force", check, units)
    for stroke in check.strokes:
        pull = stroke.peak_pull_n
        said = torque.text(stroke.peak_torque_nmm) if pull is None else force.text(pull)
        place = (stroke.peak_torque_angle_deg, stroke.peak_torque_nmm / torque.size)
        ax.plot(*place, "o", color=_OPENING.color, ms=5)
        ax.annotate(
            f"peak {said}",
            place,
            xytext=(-10.0, 7.0),
            textcoords="offset points",
            ha="left",
            va="bottom",
            fontsize=palette.SMALL,
            bbox=palette.UNDERLAY,
        )


def _add_pull(ax: Axes, check: Check, units: System | None) -> None:
    nick_mm = check.design.core.blade.nail_nick_mm
    if nick_mm is None:
        return
    torque, force = style_of("torque", check, units), style_of("force", check, units)
    ratio = torque.size / nick_mm / force.size
    right = ax.secondary_yaxis(
        "right", functions=(lambda t: np.asarray(t) * ratio, lambda p: np.asarray(p) / ratio)
    )
    right.set_ylabel(f"pull at the nail nick [{force.unit}]", fontsize=palette.NORMAL)
    right.yaxis.set_major_locator(MaxNLocator(6))
    right.tick_params(labelsize=palette.SMALL)
