"""Numbers on the lines of a map, none of them on another."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

import numpy as np
import numpy.typing as npt
from matplotlib.axes import Axes
from matplotlib.contour import ContourSet

from backspring.picture import palette
from backspring.picture.places import axes_points, text_width_points

Column = npt.NDArray[np.float64]
# From a line's middle outwards, as shares of its length.
_TRIED = tuple(0.5 + side * away for away in np.arange(0.0, 0.4, 0.05) for side in (1.0, -1.0))
_APART = 1.25


def label_lines(ax: Axes, sets: Iterable[tuple[ContourSet | None, str]]) -> None:
    """Write its level on every line, as near its middle as leaves all numbers apart.

    A line without such a place stays without a number. The axes must reach as far as they will.
    """
    taken: list[tuple[Column, float]] = []
    for drawn, digits in sets:
        if drawn is None:
            continue
        places = []
        for level, pieces in zip(drawn.levels, drawn.allsegs, strict=True):
            around = 0.5 * text_width_points(digits % level) + 2.0
            for piece in pieces:
                for point in _points_on(ax, piece):
                    if _has_room(ax, point, around, taken):
                        taken.append((point, around))
                        places.append(_data(ax, point))
                        break
        if places:
            drawn.clabel(fmt=digits, fontsize=palette.SMALL, manual=places)


def _points_on(ax: Axes, piece: Column) -> Iterator[Column]:
    """Walk places on a line, in points from the axes' corner."""
    (left, right), (low, high) = ax.get_xlim(), ax.get_ylim()
    span, size = np.array([right - left, high - low]), np.array(axes_points(ax))
    points = (piece - np.array([left, low])) / span * size
    steps = np.hypot(*np.diff(points, axis=0).T)
    along = np.concatenate(([0.0], np.cumsum(steps)))
    if along[-1] <= 0.0:
        return
    for share in _TRIED:
        at = share * along[-1]
        yield np.array([np.interp(at, along, points[:, 0]), np.interp(at, along, points[:, 1])])


def _has_room(ax: Axes, point: Column, around: float, taken: list[tuple[Column, float]]) -> bool:
    inside = np.all(point > around) and np.all(point < np.array(axes_points(ax)) - around)
    return bool(inside) and all(
        np.hypot(*(point - other)) > _APART * (around + far) for other, far in taken
    )


def _data(ax: Axes, point: Column) -> tuple[float, float]:
    (left, right), (low, high) = ax.get_xlim(), ax.get_ylim()
    width, height = axes_points(ax)
    return (
        float(left + point[0] / width * (right - left)),
        float(low + point[1] / height * (high - low)),
    )
