"""A spring with all its blades, drawn to scale and coloured by bending stress."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from matplotlib.axes import Axes
from matplotlib.figure import Figure, SubFigure

from backspring.picture import palette
from backspring.picture.canvas import Picture
from backspring.picture.joint_panel import draw_state, headroom_in
from backspring.picture.joint_state import JointState, Row, joint_rows
from backspring.picture.position_layout import Box
from backspring.picture.position_words import write_scale
from backspring.picture.positions import add_axes, add_color_bar, shared_norm
from backspring.picture.subject import NAME_IN, write_name
from backspring.question.check import BladesCheck
from backspring.report.display import STYLES
from backspring.units import System

_COLUMNS = 2
_MARGIN_IN = 0.18
_GAP_IN = 0.3
_TOP_IN = 0.08
_FOOT_IN = 0.24
_BAR_IN = 0.75
_SCALE_IN = 0.36


@dataclass(frozen=True)
class _Layout:
    """Panels of one scale: a row for a blade's position, the others closed on the left."""

    rows: list[Row]
    left_mm: float
    mm_an_inch: float
    column_in: float

    def height_in(self, row: Row) -> float:
        """Height that the tallest panel of a row takes."""
        return max(self._drawn_in(state) + headroom_in(state) for state in row) + _FOOT_IN

    def total_in(self) -> float:
        """Height of all rows and the colour bar."""
        return _TOP_IN + sum(map(self.height_in, self.rows)) + _BAR_IN

    def y_reach_mm(self, state: JointState, height_in: float) -> tuple[float, float]:
        """Least and greatest height that a panel shows: words stand above all that is drawn."""
        high = state.corners()[3] + headroom_in(state) * self.mm_an_inch
        return high - height_in * self.mm_an_inch, high

    def _drawn_in(self, state: JointState) -> float:
        _, _, low, high = state.corners()
        return (high - low) / self.mm_an_inch


def whole_joint(
    check: BladesCheck,
    fig: Figure | SubFigure | None = None,
    *,
    units: System | None = None,
    blade: str | None = None,
    blade_angle_deg: float | None = None,
) -> Figure | SubFigure:
    """Draw the spring under all its tangs, each blade's positions with the others closed and open.

    `blade` draws one blade's; with an angle, only there. The free working face is drawn level, so
    each tang stands tilted by its preload. A blade behind another on one pin is a dashed line.
    Blades are invented stubs. `units` are the design's own when left out.
    """
    system = units or check.design.units
    layout = joint_layout(check, blade, blade_angle_deg)
    name_in = 0.0
    if fig is None:
        name_in = NAME_IN
        fig = Picture(figsize=(palette.WIDTH_IN, name_in + layout.total_in()), dpi=palette.DPI)
        write_name(fig, check.design.name)
    norm = shared_norm(
        [state.spring for row in layout.rows for state in row], STYLES[system]["stress"].size
    )
    low = fig.bbox.height / fig.dpi - name_in - _TOP_IN
    for row in layout.rows:
        height = layout.height_in(row)
        low -= height
        for column, state in enumerate(row):
            left = _MARGIN_IN + column * (layout.column_in + _GAP_IN)
            ax = add_axes(fig, Box(left, low, layout.column_in, height))
            _frame(ax, layout, state, height)
            draw_state(ax, state, system, norm)
    width = palette.WIDTH_IN
    add_color_bar(fig, Box(0.25 * width, low - 0.28, 0.5 * width, 0.13), norm, system)
    _add_scale(fig, layout, low, system)
    return fig


def _add_scale(fig: Figure | SubFigure, layout: _Layout, low_in: float, system: System) -> None:
    """Put a length to measure by beside the colour bar."""
    ax = add_axes(fig, Box(_MARGIN_IN, low_in - _SCALE_IN, layout.column_in, _SCALE_IN))
    ax.set_axis_off()
    ax.set_xlim(0.0, layout.mm_an_inch * layout.column_in)
    ax.set_ylim(0.0, layout.mm_an_inch * _SCALE_IN)
    write_scale(ax, 0.0, layout.mm_an_inch, system)
    for line in ax.lines:
        line.set_clip_on(False)


def joint_layout(
    check: BladesCheck, blade: str | None = None, blade_angle_deg: float | None = None
) -> _Layout:
    """Fit the panels to the width of a picture."""
    rows = joint_rows(check, blade, blade_angle_deg)
    corners = np.array([state.corners() for row in rows for state in row])
    left, right = float(corners[:, 0].min()), float(corners[:, 1].max())
    column = (palette.WIDTH_IN - 2.0 * _MARGIN_IN - (_COLUMNS - 1) * _GAP_IN) / _COLUMNS
    return _Layout(rows, left, (right - left) / column, column)


def _frame(ax: Axes, layout: _Layout, state: JointState, height_in: float) -> None:
    ax.set_axis_off()
    ax.set_aspect("equal")
    ax.set_xlim(layout.left_mm, layout.left_mm + layout.mm_an_inch * layout.column_in)
    ax.set_ylim(*layout.y_reach_mm(state, height_in))
