"""How the results of many knives lie about the drawing, how far targets are, what spreads them."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from matplotlib.artist import Artist
from matplotlib.axes import Axes
from matplotlib.figure import Figure

from backspring import _core
from backspring.picture import palette
from backspring.picture.chart import named_figure
from backspring.question.tolerance import Tolerance
from backspring.report.display import STYLES, Style
from backspring.report.tolerance import RESULTS, headline
from backspring.units import System

_ROW_IN = 1.85
_HEAD_IN = 0.5
_BINS = (8, 60)
_SEEN = (0.001, 0.999)
# Room beyond a limit, as a share of the way to it, and the widest chart in widths of the knives.
_BEYOND = 0.06
_WIDEST = 25.0
Limits = tuple[float | None, float | None]
# The target that a result is judged by, and whether on both sides of nothing.
_TARGETS = {
    "peak_pull_n": ("pull", False),
    "yield_margin": ("yield_margin", False),
    "reading_loaded_open_mm": ("reading", True),
    "reading_loaded_half_stop_mm": ("reading", True),
    "reading_loaded_closed_mm": ("reading", True),
}


def tolerance(study: Tolerance, *, units: System | None = None) -> Figure:
    """Draw each result's distribution, how far its target is, and what causes its spread.

    A target too far off to be drawn beside the knives is told in words. `units` are the design's
    own when left out.
    """
    system = units or study.design.units
    shown = [each for each in study.result.results if each.sample.count > 0]
    title = study.design.title
    height = _HEAD_IN + _ROW_IN * max(len(shown), 1)
    figure = named_figure(title, height, headline(study).removeprefix(f"{title}: "))
    if not shown:
        return figure
    axes = figure.subplots(len(shown), 2, squeeze=False, width_ratios=(3, 2))
    for (left, right), each in zip(axes, shown, strict=True):
        name, kind = RESULTS[each.local.name]
        _draw_sample(left, study, each, name, STYLES[system][kind])
        _draw_shares(right, study, each)
    axes[0][1].set_title("what causes the spread", fontsize=palette.NORMAL)
    _legend_of_all([*axes[:, 0]])
    return figure


def _legend_of_all(axes: Sequence[Axes]) -> None:
    """Name every mark once, above what the first chart says of its target."""
    marks: dict[str, Artist] = {}
    for ax in axes:
        handles, labels = ax.get_legend_handles_labels()
        marks |= {str(label): mark for label, mark in zip(labels, handles, strict=True)}
    axes[0].legend(
        [*marks.values()],
        [*marks],
        fontsize=palette.SMALL,
        frameon=False,
        loc="lower left",
        bbox_to_anchor=(0.0, 1.0),
        borderaxespad=2.2,
        ncols=2,
    )


def _draw_sample(
    ax: Axes, study: Tolerance, each: _core.ResultSpread, name: str, style: Style
) -> None:
    values = study.sample[each.local.name]
    values = values[np.isfinite(values)] / style.size
    low, high = np.quantile(values, _SEEN)
    margin = 0.05 * (high - low) or 1e-3 * max(abs(low), 1.0)
    knives = (float(low - margin), float(high + margin))
    bins = int(np.clip(np.sqrt(values.size), *_BINS))
    ax.hist(values, bins=bins, range=knives, color=palette.SKY, alpha=0.8)
    ax.axvline(each.local.nominal / style.size, color=palette.INK, lw=1.6, label="as drawn")
    for place, quantile in enumerate((each.sample.quantiles[1], each.sample.quantiles[-2])):
        label = "90 % of knives between" if place == 0 else None
        ax.axvline(quantile / style.size, color=palette.BLUE, ls="--", lw=1.2, label=label)
    limits = limits_of(study, each.local.name)
    ends = knives
    if limits is not None:
        ends = _with_nearest(knives, [x / style.size for x in limits if x is not None])
        _draw_limits(ax, limits, style, ends)
        _say(ax, limits, each.local.nominal, style)
    ax.set_xlim(*ends)
    ax.set_yticks([])
    ax.spines[["top", "right", "left"]].set_visible(False)
    ax.tick_params(labelsize=palette.SMALL)
    ax.set_xlabel(f"{name} [{style.unit}]" if style.unit else name, fontsize=palette.NORMAL)


def limits_of(study: Tolerance, name: str) -> Limits | None:
    """Least and greatest value that a result may have, where a target says so."""
    target, both_sides = _TARGETS.get(name, ("", False))
    for each in study.targets:
        if each.name == target:
            low = -each.high if both_sides and each.high is not None else each.low
            return low, each.high
    return None


def off_by(limits: Limits, value: float) -> float:
    """How far a value lies outside its limits; less than 0 by what it has to spare inside."""
    low, high = limits
    beyond = [low - value] if low is not None else []
    beyond += [value - high] if high is not None else []
    return max(beyond)


def _with_nearest(knives: tuple[float, float], limits: list[float]) -> tuple[float, float]:
    """Reach to the nearest limit and a little beyond, unless the knives would be a mere line."""
    low, high = knives
    nearest = min(limits, key=lambda x: max(low - x, x - high))
    beyond = _BEYOND * (max(high, nearest) - min(low, nearest))
    reach = (min(low, nearest - beyond), max(high, nearest + beyond))
    return reach if reach[1] - reach[0] < _WIDEST * (high - low) else knives


def _draw_limits(ax: Axes, limits: Limits, style: Style, ends: tuple[float, float]) -> None:
    """Draw the target's limits, and hatch what lies outside."""
    low, high = (None if each is None else each / style.size for each in limits)
    for limit in (low, high):
        if limit is not None and ends[0] <= limit <= ends[1]:
            ax.axvline(limit, color=palette.VERMILLION, lw=1.6, ls="-.", label="target")
    label: str | None = "misses the target"
    for start, end in ((ends[0], low), (high, ends[1])):
        if start is None or end is None or end <= start:
            continue
        ax.axvspan(
            max(start, ends[0]),
            min(end, ends[1]),
            facecolor=palette.ORANGE,
            edgecolor=palette.VERMILLION,
            hatch="///",
            alpha=0.25,
            lw=0,
            label=label,
        )
        label = None


def _say(ax: Axes, limits: Limits, drawn: float, style: Style) -> None:
    """Write the target, and how far from it the design is as drawn."""
    low, high = limits
    told = f"at most {style.text(high)}" if high is not None else ""
    if low is not None and low != -(high or 0.0):
        told = f"at least {style.text(low)}"
        if high is not None:
            told = f"{style.number(low)} to {style.text(high)}"
    off = off_by(limits, drawn)
    far = f"{style.text(off)} off as drawn" if off > 0.0 else f"{style.text(-off)} to spare"
    ax.set_title(f"target {told}: {far}", loc="left", fontsize=palette.SMALL, pad=3.0)


def _draw_shares(ax: Axes, study: Tolerance, each: _core.ResultSpread) -> None:
    ax.spines[["top", "right"]].set_visible(False)
    ax.tick_params(labelsize=palette.SMALL)
    ax.set_xlim(0.0, 1.0)
    names = [spread.key for spread in study.spreads]
    ax.set_yticks(range(len(names)), names)
    ax.set_ylim(len(names) - 0.5, -0.5)
    if not each.shares:
        ax.text(0.5, 0.5, "not worked out", ha="center", transform=ax.transAxes)
        return
    totals = [max(share.total, 0.0) for share in each.shares]
    ax.barh(range(len(names)), totals, height=0.6, color=palette.BLUE)
