"""How the results of many knives lie about the drawing, and what brings their spread."""

from __future__ import annotations

import numpy as np
from matplotlib.artist import Artist
from matplotlib.axes import Axes
from matplotlib.figure import Figure

from backspring import _core
from backspring.picture import palette
from backspring.picture.canvas import Picture
from backspring.question.tolerance import Tolerance
from backspring.report.display import STYLES, Style
from backspring.report.tolerance import RESULTS, headline
from backspring.units import System

_ROW_IN = 1.75
_HEAD_IN = 0.9
_BINS = (8, 60)
_SEEN = (0.001, 0.999)
# The target that a result is judged by, and whether on both sides of nothing.
_TARGETS = {
    "peak_pull_n": ("pull", False),
    "yield_margin": ("yield_margin", False),
    "reading_loaded_open_mm": ("reading", True),
    "reading_loaded_half_stop_mm": ("reading", True),
    "reading_loaded_closed_mm": ("reading", True),
}


def tolerance(study: Tolerance, *, units: System | None = None) -> Figure:
    """Draw each result's distribution, and beside it the share of variance each spread brings.

    `units` are the design's own when left out.
    """
    system = units or study.design.units
    shown = [each for each in study.result.results if each.sample.count > 0]
    height = _HEAD_IN + _ROW_IN * max(len(shown), 1)
    figure = Picture(figsize=(palette.WIDTH_IN, height), dpi=palette.DPI, layout="constrained")
    figure.suptitle(headline(study), fontsize=palette.NORMAL, wrap=True, parse_math=False)
    if not shown:
        return figure
    axes = figure.subplots(len(shown), 2, squeeze=False, width_ratios=(3, 2))
    for (left, right), each in zip(axes, shown, strict=True):
        name, kind = RESULTS[each.local.name]
        _draw_sample(left, study, each, name, STYLES[system][kind])
        _draw_shares(right, study, each)
    axes[0][1].set_title("share of variance", fontsize=palette.NORMAL)
    marks: dict[object, Artist] = {}
    for left in axes[:, 0]:
        handles, labels = left.get_legend_handles_labels()
        marks |= dict(zip(labels, handles, strict=True))
    axes[0][0].legend(
        marks.values(),
        marks.keys(),
        fontsize=palette.SMALL,
        frameon=False,
        loc="lower left",
        bbox_to_anchor=(0.0, 1.0),
        borderaxespad=0.2,
        ncols=3,
    )
    return figure


def _draw_sample(
    ax: Axes, study: Tolerance, each: _core.ResultSpread, name: str, style: Style
) -> None:
    values = study.sample[each.local.name]
    values = values[np.isfinite(values)] / style.size
    low, high = np.quantile(values, _SEEN)
    margin = 0.05 * (high - low) or 1e-3 * max(abs(low), 1.0)
    ends = (low - margin, high + margin)
    bins = int(np.clip(np.sqrt(values.size), *_BINS))
    ax.hist(values, bins=bins, range=ends, color=palette.SKY, alpha=0.8)
    ax.axvline(each.local.nominal / style.size, color=palette.INK, lw=1.6, label="as drawn")
    for place, quantile in enumerate((each.sample.quantiles[1], each.sample.quantiles[-2])):
        label = "90 % of knives between" if place == 0 else None
        ax.axvline(quantile / style.size, color=palette.BLUE, ls="--", lw=1.2, label=label)
    _draw_window(ax, study, each.local.name, style, ends)
    ax.set_xlim(*ends)
    ax.set_yticks([])
    ax.spines[["top", "right", "left"]].set_visible(False)
    ax.tick_params(labelsize=palette.SMALL)
    ax.set_xlabel(f"{name} [{style.unit or '-'}]", fontsize=palette.NORMAL)


def _draw_window(
    ax: Axes, study: Tolerance, name: str, style: Style, ends: tuple[float, float]
) -> None:
    """Hatch what lies outside the target."""
    target, both_sides = _TARGETS.get(name, ("", False))
    for each in study.targets:
        if each.name != target:
            continue
        high = None if each.high is None else each.high / style.size
        low = None if each.low is None else each.low / style.size
        if both_sides and high is not None:
            low = -high
        label = "misses the target"
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
            label = ""


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
