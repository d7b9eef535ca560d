"""What the charts share: a new one, its axes' words, and names along its top."""

from __future__ import annotations

from typing import Literal

from matplotlib.axes import Axes
from matplotlib.figure import Figure
from matplotlib.layout_engine import ConstrainedLayoutEngine

from backspring.picture import palette
from backspring.picture.canvas import Picture
from backspring.picture.subject import NAME_IN, write_name

_HEIGHT_IN = 4.8
_ROW_POINTS = 12.0


def new_chart(name: str | None = None) -> tuple[Figure, Axes]:
    """Make a figure, which no window holds, and axes in it; a name stands above them."""
    if name is not None:
        named = named_figure(name, _HEIGHT_IN)
        return named, named.add_subplot()
    figure = Picture(figsize=(palette.WIDTH_IN, _HEIGHT_IN), dpi=palette.DPI, layout="constrained")
    return figure, figure.add_subplot()


def named_figure(name: str, height_in: float) -> Figure:
    """Make a figure for charts of a height, with a name above them."""
    whole_in = height_in + NAME_IN
    layout = ConstrainedLayoutEngine(rect=(0.0, 0.0, 1.0, height_in / whole_in))
    figure = Picture(figsize=(palette.WIDTH_IN, whole_in), dpi=palette.DPI, layout=layout)
    write_name(figure, name)
    return figure


def label_axes(ax: Axes, along: str, up: str) -> None:
    """Write the axes' labels, and leave out the frame where there is no axis."""
    ax.set_xlabel(along, fontsize=palette.NORMAL)
    ax.set_ylabel(up, fontsize=palette.NORMAL)
    ax.tick_params(labelsize=palette.SMALL)
    ax.spines[["top", "right"]].set_visible(False)


def dress_chart(ax: Axes, along: str, up: str, *, columns: int = 3) -> None:
    """Write the axes' labels and the legend above them."""
    label_axes(ax, along, up)
    legend_above(ax, columns)


def legend_above(ax: Axes, columns: int = 3) -> None:
    """Put the legend above the axes."""
    ax.legend(
        fontsize=palette.SMALL,
        frameon=False,
        loc="lower left",
        bbox_to_anchor=(0.0, 1.0),
        borderaxespad=0.2,
        ncols=columns,
        columnspacing=1.4,
    )


def name_place(
    ax: Axes,
    name: str,
    x: float,
    *,
    side: Literal["left", "right"],
    style: str = ":",
    row: int = 0,
) -> None:
    """Mark a place on the way with a line, and name it at the top on one side of the line.

    Names in different rows stand one below the other.
    """
    ax.axvline(x, color=palette.MUTED, lw=0.9, ls=style, zorder=0.5)
    ax.annotate(
        name,
        (x, 1.0),
        xycoords=ax.get_xaxis_transform(),
        xytext=(3.0 if side == "right" else -3.0, -3.0 - _ROW_POINTS * row),
        textcoords="offset points",
        ha="left" if side == "right" else "right",
        va="top",
        fontsize=palette.SMALL,
    )
