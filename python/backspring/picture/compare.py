"""Pull of two designs against blade angle, on one picture."""

from __future__ import annotations

import textwrap

import numpy as np
from matplotlib.axes import Axes
from matplotlib.figure import Figure

from backspring import _core
from backspring.picture import palette
from backspring.picture.action import STEP_DEG
from backspring.picture.chart import label_axes, named_figure, new_chart
from backspring.question.compare import BladesComparison, Compared, Comparison
from backspring.report.display import STYLES, text
from backspring.units import System

_LINES = (palette.Line(palette.BLUE, "-", 2.0), palette.Line(palette.VERMILLION, "--", 2.0))
_CLOSING = ("-.", ":")
_NAME_LETTERS = 28
_HEADROOM = 0.12
_HEIGHT_IN = 4.8


def comparison(found: Comparison, ax: Axes | None = None, *, units: System | None = None) -> Axes:
    """Draw the pull of both at their nail nicks, opening, and fainter closing.

    Torque where one of them has no nick. `units` are the first design's own when left out.
    """
    ax = new_chart(_title(found))[1] if ax is None else ax
    _draw(ax, found, found.names, units or found.a.design.units)
    return ax


def blades_comparison(found: BladesComparison, *, units: System | None = None) -> Figure:
    """Draw the pull of every blade that both have, one below the other."""
    system = units or found.a.design.units
    figure = named_figure(_title(found), _HEIGHT_IN * len(found.blades))
    for row, (blade, each) in enumerate(found.blades.items()):
        ax = figure.add_subplot(len(found.blades), 1, row + 1)
        _draw(ax, each, found.names, system)
        ax.set_title(blade, loc="right", fontsize=palette.NORMAL, parse_math=False)
    return figure


def _title(found: Compared) -> str:
    return " -> ".join(found.names)


def _draw(ax: Axes, found: Comparison, names: tuple[str, str], units: System) -> None:
    checks = (found.a, found.b)
    nicks = [each.design.core.blade.nail_nick_mm for each in checks]
    pulls = all(nick is not None for nick in nicks)
    style = STYLES[units]["force" if pulls else "torque"]
    low, high = 0.0, 0.0
    ends = [180.0, 0.0]
    for check, nick, name, line, closing in zip(
        checks, nicks, names, _LINES, _CLOSING, strict=True
    ):
        sweep = _core.sweep(check.design.core, STEP_DEG)
        by = style.size * (nick if pulls and nick is not None else 1.0)
        angle = sweep.blade_angle_deg
        opened, closed = sweep.opening_torque_nmm / by, sweep.closing_torque_nmm / by
        label = textwrap.shorten(name, _NAME_LETTERS, placeholder="...").replace("$", r"\$")
        ax.plot(angle, opened, line.style, color=line.color, lw=line.width, label=label)
        ax.plot(
            angle, closed, closing, color=line.color, lw=1.0, alpha=0.6, label=f"{label}, closing"
        )
        low = min(low, float(np.nanmin([opened, closed])))
        high = max(high, float(np.nanmax([opened, closed])))
        ends = [min(ends[0], float(angle[0])), max(ends[1], float(angle[-1]))]
    span = (high - low) or 1.0
    ax.set_ylim(low - 0.05 * span, high + _HEADROOM * span)
    for check, nick, line in zip(checks, nicks, _LINES, strict=True):
        for stroke in check.strokes:
            by = style.size * (nick if pulls and nick is not None else 1.0)
            ax.plot(
                stroke.peak_torque_angle_deg,
                stroke.peak_torque_nmm / by,
                "o",
                color=line.color,
                ms=5,
            )
    ax.axhline(0.0, color=palette.INK, lw=0.8)
    ax.set_xlim(*ends)
    ax.set_xticks(np.arange(0.0, 181.0, 30.0))
    what = "pull at the nail nick" if pulls else "torque"
    label_axes(ax, "blade angle [deg]", f"{what} [{style.unit}]: + resists opening")
    # A column each.
    ax.legend(
        fontsize=palette.SMALL,
        frameon=False,
        loc="lower left",
        bbox_to_anchor=(0.0, 1.0),
        borderaxespad=0.2,
        ncols=2,
    )
    _say_peaks(ax, found, units)


def _say_peaks(ax: Axes, found: Comparison, units: System) -> None:
    """Write both peaks in a corner, where no curve passes in a closed joint's first degrees."""
    pull = found["peak_pull_n"]
    kind = "force"
    if pull.a is None or pull.b is None:
        pull, kind = found["peak_torque_nmm"], "torque"
    told = [text(each, kind, units) for each in (pull.a, pull.b)]  # type: ignore[arg-type]
    ax.annotate(
        f"peak {told[0]} -> {told[1]}",
        (1.0, 1.0),
        xycoords="axes fraction",
        xytext=(-4.0, -4.0),
        textcoords="offset points",
        ha="right",
        va="top",
        fontsize=palette.SMALL,
        bbox=palette.UNDERLAY,
    )
