"""Reads what is written on a picture, and finds words that meet or run off its edge."""

from __future__ import annotations

from itertools import combinations
from typing import Any

import numpy as np
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.figure import Figure
from matplotlib.text import Text

# Two boxes may share the rounding of their edges to whole pixels.
_SLACK_PIXELS = 1.0


def texts(drawn: Figure) -> list[Text]:
    """Every text with words in it, but the numbers along the axes."""
    ticks = set()
    for ax in (*drawn.axes, *(child for each in drawn.axes for child in each.child_axes)):
        for axis in (ax.xaxis, ax.yaxis):
            ticks |= {
                id(label) for tick in axis.get_major_ticks() for label in (tick.label1, tick.label2)
            }
    shown = drawn.findobj(Text)
    return [each for each in shown if each.get_text().strip() and id(each) not in ticks]


def words(drawn: Any) -> str:
    """All that is written, a line for each text."""
    return "\n".join(text.get_text() for text in drawn.findobj(Text))


def meeting_texts(drawn: Figure) -> list[tuple[str, str]]:
    """Find pairs of texts that overlap."""
    canvas = FigureCanvasAgg(drawn)
    drawn.draw_without_rendering()
    # An annotation's own extent would count its arrow.
    boxes = [
        (each.get_text(), Text.get_window_extent(each, canvas.get_renderer()))
        for each in texts(drawn)
    ]
    return [
        (one, other)
        for (one, a), (other, b) in combinations(boxes, 2)
        if min(a.x1, b.x1) - max(a.x0, b.x0) > _SLACK_PIXELS
        and min(a.y1, b.y1) - max(a.y0, b.y0) > _SLACK_PIXELS
    ]


def is_cut_off(drawn: Figure) -> bool:
    """Whether anything reaches the edge of the picture."""
    canvas = FigureCanvasAgg(drawn)
    canvas.draw()
    pixels = np.asarray(canvas.buffer_rgba())[..., :3]
    edges = (*pixels[[0, -1]], *pixels.swapaxes(0, 1)[[0, -1]])
    return not all(np.all(edge == 255) for edge in edges)
