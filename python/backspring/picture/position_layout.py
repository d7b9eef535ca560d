"""One scale for all positions, so that all are true to each other."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from backspring.picture.position_forces import ROW_POINTS, dial_stands_between
from backspring.picture.position_panel import PanelView
from backspring.picture.position_words import faces_named_outside

_POINTS_AN_INCH = 72.0
_MARGIN_IN = 0.18
_TOP_IN = 0.08
_HEADROOM_IN = 0.5
_FOOT_IN = 0.12
# Room for the name of the lowest face under a small tang.
_NAME_IN = 0.2
_BAR_IN = 0.8
# Room that the dial's words take on its right.
_WORDS_IN = 1.75
# A blade this near to square leaves the room under the spring free.
_HANGING_DEG = 10.0


@dataclass(frozen=True)
class Box:
    """A place in the figure, from its lower left corner [inch]."""

    left_in: float
    low_in: float
    width_in: float
    height_in: float


@dataclass(frozen=True)
class Layout:
    """Panels one under the other across the width of the figure, and the colour bar."""

    views: list[PanelView]
    left_mm: float
    mm_an_inch: float
    width_in: float

    def x_reach_mm(self) -> tuple[float, float]:
        """Least and greatest station that the panels show."""
        return self.left_mm, self.left_mm + self.mm_an_inch * (self.width_in - 2.0 * _MARGIN_IN)

    def y_reach_mm(self, view: PanelView) -> tuple[float, float]:
        """Least and greatest height that a panel shows."""
        _, _, low, high = view.corners()
        head_in = _HEADROOM_IN + dial_stands_between(view) * ROW_POINTS / _POINTS_AN_INCH
        foot_in = _FOOT_IN + _NAME_IN * faces_named_outside(view, self.mm_an_inch)
        return low - foot_in * self.mm_an_inch, high + head_in * self.mm_an_inch

    def total_in(self) -> float:
        """Height of it all."""
        bar = 0.0 if self._bar_host() else _BAR_IN
        return _TOP_IN + sum(map(self._height_in, self.views)) + bar

    def boxes(self, figure_height_in: float) -> list[Box]:
        """Places of the panels."""
        low, places = figure_height_in - _TOP_IN, []
        for view in self.views:
            height = self._height_in(view)
            low -= height
            places.append(Box(_MARGIN_IN, low, self.width_in - 2.0 * _MARGIN_IN, height))
        return places

    def bar_box(self, figure_height_in: float) -> Box:
        """Place of the colour bar: under the spring where a hanging blade leaves room."""
        places, host = self.boxes(figure_height_in), self._bar_host()
        for view, box in zip(self.views, places, strict=True):
            if view is host:
                return Box(_MARGIN_IN + 0.3, box.low_in + 0.5, 0.42 * self.width_in, 0.13)
        return Box(0.25 * self.width_in, places[-1].low_in - 0.28, 0.5 * self.width_in, 0.13)

    def _height_in(self, view: PanelView) -> float:
        low, high = self.y_reach_mm(view)
        return (high - low) / self.mm_an_inch

    def _bar_host(self) -> PanelView | None:
        for view in self.views:
            free_mm = float(view.spring.face_mm.min()) - self.y_reach_mm(view)[0]
            hangs = abs(view.blade_angle_deg - 90.0) < _HANGING_DEG
            if hangs and free_mm > 1.5 * _BAR_IN * self.mm_an_inch:
                return view
        return None


def make_layout(views: list[PanelView], width_in: float) -> Layout:
    """Fit all panels and the words beside the dial to a width."""
    corners = np.array([view.corners() for view in views])
    left, right = float(corners[:, 0].min()), float(corners[:, 1].max())
    marked = max(_last_mark_mm(view) for view in views)
    inside = width_in - 2.0 * _MARGIN_IN
    scale = max((right - left) / inside, (marked - left) / (inside - _WORDS_IN))
    return Layout(views, left, scale, width_in)


def _last_mark_mm(view: PanelView) -> float:
    return max([view.design.fit.dial_mm, *(touch.x_mm for touch in view.touches)])
