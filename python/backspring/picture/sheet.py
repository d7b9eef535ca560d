"""Everything about a design on one card."""

from __future__ import annotations

import textwrap

from matplotlib.figure import Figure, SubFigure

from backspring.design.design import Design
from backspring.picture import palette
from backspring.picture.action import action
from backspring.picture.canvas import Picture
from backspring.picture.position_layout import make_layout
from backspring.picture.position_panel import rest_views
from backspring.picture.positions import positions
from backspring.picture.stress import stress_along
from backspring.picture.subject import as_check
from backspring.question.check import Check
from backspring.report.check import headline
from backspring.units import System

_TITLE_IN = 0.85
_CHARTS_IN = 4.0
_TITLE_SIZE = 18.0
_TITLE_LETTERS = 60
_LINE_LETTERS = 112


def sheet(check_or_design: Check | Design, *, units: System | None = None) -> Figure:
    """Draw the card: the name, the answer in a line, the positions, stress and action.

    `units` are the design's own when left out.
    """
    check = as_check(check_or_design)
    system = units or check.design.units
    heights = [_TITLE_IN, make_layout(rest_views(check), palette.WIDTH_IN).total_in(), _CHARTS_IN]
    figure = Picture(figsize=(palette.WIDTH_IN, sum(heights)), dpi=palette.DPI)
    grid = figure.add_gridspec(
        3, 1, height_ratios=heights, hspace=0.0, left=0, right=1, bottom=0, top=1
    )
    head, middle, charts = (figure.add_subfigure(grid[row]) for row in range(3))
    _write_head(head, check, system)
    positions(check, middle, units=system)
    stress_along(check, charts.add_axes((0.075, 0.13, 0.375, 0.71)), units=system)
    action(check, charts.add_axes((0.55, 0.13, 0.375, 0.71)), units=system)
    return figure


def _write_head(head: SubFigure, check: Check, system: System) -> None:
    name = check.design.name
    answer = headline(check, system).removeprefix(f"{name}: ")
    head.text(
        0.016,
        0.9,
        textwrap.shorten(name, _TITLE_LETTERS, placeholder="..."),
        fontsize=_TITLE_SIZE,
        fontweight="bold",
        va="top",
        parse_math=False,
    )
    head.text(
        0.016,
        0.5,
        textwrap.fill(answer, _LINE_LETTERS),
        fontsize=palette.NORMAL,
        va="top",
        parse_math=False,
    )
