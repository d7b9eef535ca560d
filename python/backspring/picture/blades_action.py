"""How every blade of a spring opens: pull against angle, and how far the others move it."""

from __future__ import annotations

import numpy as np
import numpy.typing as npt
from matplotlib.axes import Axes

from backspring import _core
from backspring.picture import palette
from backspring.picture.action import STEP_DEG
from backspring.picture.chart import dress_chart, new_chart
from backspring.question.check import BladesCheck, Check
from backspring.report.display import STYLES, Style
from backspring.units import System

Column = npt.NDArray[np.float64]
_BAND_ALPHA = 0.25


def blades_action(
    check: BladesCheck, ax: Axes | None = None, *, units: System | None = None
) -> Axes:
    """Draw the pull that opens each blade against its angle.

    The line has the other blades closed, the band holds every position of theirs. Torque is drawn
    instead where a blade has no nail nick. `units` are the design's own when left out.
    """
    system = units or check.design.units
    pulls = all(each.design.core.blade.nail_nick_mm is not None for each in check.blades.values())
    style = STYLES[system]["force" if pulls else "torque"]
    ax = new_chart(check.design.name)[1] if ax is None else ax
    for (name, each), line in zip(check.blades.items(), palette.blade_lines(), strict=False):
        angle, rows = opening(each, pulls=pulls)
        rows = rows / style.size
        label = f"{name}, peak {_peak(each, style, pulls=pulls)}"
        ax.plot(angle, rows[0], line.style, color=line.color, lw=line.width, label=label)
        low, high = rows.min(0), rows.max(0)
        ax.fill_between(angle, low, high, color=line.color, alpha=_BAND_ALPHA, lw=0, zorder=1)
    # An empty one, for the legend.
    ax.fill_between(
        [], [], color=palette.MUTED, alpha=_BAND_ALPHA, lw=0, label="band: the others anywhere"
    )
    ax.axhline(0.0, color=palette.INK, lw=0.8)
    ax.set_xlim(0.0, 180.0)
    ax.set_xticks(np.arange(0.0, 181.0, 30.0))
    what = "pull at the nail nick" if pulls else "torque"
    dress_chart(ax, "blade angle [deg]", f"{what} [{style.unit}]: + resists opening", columns=2)
    return ax


def opening(check: Check, *, pulls: bool) -> tuple[Column, Column]:
    """Angles from closed, and what resists opening there: a row for each case of the others.

    Pull in N, or torque in N mm.
    """
    sweeps = [_core.sweep(case, STEP_DEG) for case in _core.cases(check.design.core)]
    angle = sweeps[0].blade_angle_deg
    rests = [each.blade_angle_deg for each in check.positions.values() if each.name == "closed"]
    shown = angle >= max(rests, default=0.0)
    rows = np.array([each.opening_torque_nmm[shown] for each in sweeps])
    nick_mm = check.design.core.blade.nail_nick_mm
    return angle[shown], rows / nick_mm if pulls and nick_mm is not None else rows


def _peak(check: Check, style: Style, *, pulls: bool) -> str:
    """Write the largest of a travel: least and most of all cases."""
    found = [
        max(stroke.peak_pull_n or 0.0 if pulls else stroke.peak_torque_nmm for stroke in strokes)
        for strokes in (row.strokes for row in check.beside)
        if strokes
    ]
    if not found:
        return "not told: it does not stay"
    low, high = style.number(min(found)), style.text(max(found))
    return high if high.startswith(f"{low} ") else f"{low} to {high}"
