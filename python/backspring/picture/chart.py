"""What the charts share: a new one with a name above it, and its axes' words."""

from __future__ import annotations

from matplotlib.axes import Axes
from matplotlib.figure import Figure, SubFigure
from matplotlib.layout_engine import ConstrainedLayoutEngine

from backspring.picture import palette
from backspring.picture.canvas import Picture
from backspring.picture.subject import head_in, write_name

_HEIGHT_IN = 4.8
# Room for a longer number that an axis takes once its size is found.
_PAD_IN = 0.1


def new_chart(name: str) -> tuple[Figure, Axes]:
    """Make a figure, which no window holds, and axes in it; a name stands above them."""
    figure = named_figure(name, _HEIGHT_IN)
    return figure, figure.add_subplot()


def named_figure(name: str, height_in: float, answer: str = "") -> Figure:
    """Make a figure for charts of a height, with a name above them, and an answer under it."""
    whole_in = height_in + head_in(answer)
    room = (0.0, 0.0, 1.0, height_in / whole_in)
    layout = ConstrainedLayoutEngine(rect=room, w_pad=_PAD_IN, h_pad=_PAD_IN)
    figure = Picture(figsize=(palette.WIDTH_IN, whole_in), dpi=palette.DPI, layout=layout)
    write_name(figure, name, answer)
    return figure


def placed_figure(name: str, height_in: float) -> tuple[Figure, SubFigure]:
    """Make a figure with a name, and the part of a height under it to place axes in."""
    heights = [head_in(), height_in]
    figure = Picture(figsize=(palette.WIDTH_IN, sum(heights)), dpi=palette.DPI)
    grid = figure.add_gridspec(
        2, 1, height_ratios=heights, hspace=0.0, left=0, right=1, bottom=0, top=1
    )
    write_name(figure, name)
    return figure, figure.add_subfigure(grid[1])


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
