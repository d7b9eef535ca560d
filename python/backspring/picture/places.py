"""Names of places along a chart, at its top, in as many rows as keep them apart."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Literal

from matplotlib.axes import Axes
from matplotlib.font_manager import FontProperties
from matplotlib.textpath import text_to_path

from backspring.picture import palette

ROW_POINTS = 12.0
_POINTS_AN_INCH = 72.0
_FROM_LINE = 3.0
_BETWEEN = 4.0


@dataclass(frozen=True, slots=True)
class Place:
    """A place on the way and the side of its line that the name stands on."""

    name: str
    x: float
    side: Literal["left", "right"]
    style: str = ":"


def name_places(ax: Axes, places: Sequence[Place]) -> int:
    """Mark places with lines and name them at the top; a name that finds no room stands lower.

    The x axis must reach as far as it will. Returns the number of rows.
    """
    taken: list[list[tuple[float, float]]] = []
    for asked in places:
        place = _inside(ax, asked)
        start, end = _reach_points(ax, place)
        free = [
            row
            for row, others in enumerate(taken)
            if all(end < low or start > high for low, high in others)
        ]
        row = free[0] if free else len(taken)
        if not free:
            taken.append([])
        taken[row].append((start - _BETWEEN, end + _BETWEEN))
        _write(ax, place, row)
    return len(taken)


def text_width_points(text: str, size: float = palette.SMALL) -> float:
    """Width of a line of text."""
    width, _, _ = text_to_path.get_text_width_height_descent(text, FontProperties(size=size), False)
    return float(width)


def axes_points(ax: Axes) -> tuple[float, float]:
    """Width and height of axes; a layout that is still to be made leaves them no narrower."""
    box, dpi = ax.get_window_extent(), ax.figure.dpi
    return _POINTS_AN_INCH * box.width / dpi, _POINTS_AN_INCH * box.height / dpi


def _inside(ax: Axes, place: Place) -> Place:
    """Name a place on its other side where its name would run off the axes."""
    start, end = _reach_points(ax, place)
    if start < 0.0:
        return replace(place, side="right")
    return replace(place, side="left") if end > axes_points(ax)[0] else place


def _reach_points(ax: Axes, place: Place) -> tuple[float, float]:
    low, high = ax.get_xlim()
    at = (place.x - low) / (high - low) * axes_points(ax)[0]
    width = _FROM_LINE + text_width_points(place.name)
    return (at, at + width) if place.side == "right" else (at - width, at)


def _write(ax: Axes, place: Place, row: int) -> None:
    ax.axvline(place.x, color=palette.MUTED, lw=0.9, ls=place.style, zorder=0.5)
    right = place.side == "right"
    ax.annotate(
        place.name,
        (place.x, 1.0),
        xycoords=ax.get_xaxis_transform(),
        xytext=(_FROM_LINE if right else -_FROM_LINE, -_FROM_LINE - ROW_POINTS * row),
        textcoords="offset points",
        ha="left" if right else "right",
        va="top",
        fontsize=palette.SMALL,
        parse_math=False,
    )
