"""Reads what is written on a picture, and finds words that meet or run off its edge."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations
from typing import Any

import numpy as np
from matplotlib.axis import Axis
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.figure import Figure
from matplotlib.text import Text
from matplotlib.transforms import Affine2D

# Two boxes may share the rounding of their edges to whole pixels.
_SLACK_PIXELS = 1.0


def texts(drawn: Figure) -> list[Text]:
    """Every text that is seen: the numbers along the axes are, where the axes reach to them."""
    axes = [*drawn.axes, *(child for each in drawn.axes for child in each.child_axes)]
    hidden = {id(label) for ax in axes for axis in (ax.xaxis, ax.yaxis) for label in _beyond(axis)}
    shown = drawn.findobj(Text)
    return [
        each
        for each in shown
        if each.get_text().strip() and each.get_visible() and id(each) not in hidden
    ]


def words(drawn: Any) -> str:
    """All that is written, a line for each text."""
    return "\n".join(text.get_text() for text in drawn.findobj(Text))


def meeting_texts(drawn: Figure) -> list[tuple[str, str]]:
    """Find pairs of texts that overlap, tilted as they stand."""
    drawn.draw_without_rendering()
    return _meeting(drawn)


def wrong_with(drawn: Figure, name: str) -> list[str]:
    """Say what is wrong with the texts of a picture of something with a name."""
    cut = is_cut_off(drawn)
    told = [f"{one!r} on {other!r}" for one, other in _meeting(drawn)]
    return told + ["cut off"] * cut + ["no name"] * (name not in words(drawn))


def _meeting(drawn: Figure) -> list[tuple[str, str]]:
    """Find pairs of texts that overlap on a picture as it was last laid out."""
    renderer = FigureCanvasAgg(drawn).get_renderer()
    boxes = [(each.get_text(), _corners(each, renderer)) for each in texts(drawn)]
    return [(one, other) for (one, a), (other, b) in combinations(boxes, 2) if not _apart(a, b)]


def is_cut_off(drawn: Figure) -> bool:
    """Whether anything reaches the edge of the picture."""
    canvas = FigureCanvasAgg(drawn)
    canvas.draw()
    pixels = np.asarray(canvas.buffer_rgba())[..., :3]
    edges = (*pixels[[0, -1]], *pixels.swapaxes(0, 1)[[0, -1]])
    return not all(np.all(edge == 255) for edge in edges)


def _beyond(axis: Axis) -> Iterator[Text]:
    """Numbers of an axis that are not drawn: their places lie beyond its ends, or it is off."""
    low, high = sorted(axis.get_view_interval())
    slack = 1e-9 * (high - low)
    for tick in (*axis.get_major_ticks(), *axis.get_minor_ticks()):
        if axis.axes.axison and low - slack <= tick.get_loc() <= high + slack:
            continue
        yield from (tick.label1, tick.label2)


def _corners(text: Text, renderer: Any) -> np.ndarray:
    """Corners of a text's box in pixels, turned as the text is.

    An annotation's own extent would count its arrow. A text turned about its anchor has the box
    it has untilted, turned; any other is boxed as it stands.
    """
    tilt = text.get_rotation()
    turned = tilt % 90.0 and text.get_rotation_mode() == "anchor"
    if turned:
        text.set_rotation(0.0)
    box = Text.get_window_extent(text, renderer).corners()[[0, 1, 3, 2]]
    if not turned:
        return box
    text.set_rotation(tilt)
    x, y = text.get_transform().transform(text.get_unitless_position())
    return Affine2D().rotate_deg_around(x, y, tilt).transform(box)


def _apart(a: np.ndarray, b: np.ndarray) -> bool:
    """Whether a line parts two rectangles: if any does, one along a side of theirs."""
    if (a.max(axis=0) < b.min(axis=0)).any() or (b.max(axis=0) < a.min(axis=0)).any():
        return True
    for side in (a[1] - a[0], a[3] - a[0], b[1] - b[0], b[3] - b[0]):
        normal = side / (np.hypot(*side) or 1.0)
        one, other = a @ normal, b @ normal
        if min(one.max(), other.max()) - max(one.min(), other.min()) <= _SLACK_PIXELS:
            return True
    return False
