"""Everything about a design on one card."""

from __future__ import annotations

import textwrap

from matplotlib.axes import Axes
from matplotlib.figure import Figure, SubFigure

from backspring.design.design import Design
from backspring.picture import palette
from backspring.picture.action import action
from backspring.picture.blades_action import blades_action
from backspring.picture.blades_stress import blades_stress
from backspring.picture.canvas import Picture
from backspring.picture.position_layout import make_layout
from backspring.picture.position_panel import rest_views
from backspring.picture.positions import positions
from backspring.picture.stress import stress_along
from backspring.picture.subject import as_check
from backspring.picture.whole_joint import joint_layout, whole_joint
from backspring.question.check import BladesCheck, Check
from backspring.report.check import headline as check_headline
from backspring.report.check_blades import headline as blades_headline
from backspring.units import System

_TITLE_IN = 0.85
_CHARTS_IN = 4.0
_TITLE_SIZE = 18.0
_TITLE_LETTERS = 60
_LINE_LETTERS = 120


def sheet(check_or_design: Check | Design, *, units: System | None = None) -> Figure:
    """Draw the card: the name, the answer in a line, the positions, stress and action.

    `units` are the design's own when left out.
    """
    check = as_check(check_or_design)
    system = units or check.design.units
    answer = check_headline(check, system).removeprefix(f"{check.design.title}: ")
    layout = make_layout(rest_views(check), palette.WIDTH_IN)
    figure, middle, left, right = _card(check.design.title, answer, layout.total_in())
    positions(check, middle, units=system)
    stress_along(check, left, units=system)
    action(check, right, units=system)
    return figure


def blades_sheet(check: BladesCheck, *, units: System | None = None) -> Figure:
    """Draw the card of a spring with several blades: the whole joint, stress and action.

    `units` are the design's own when left out.
    """
    system = units or check.design.units
    answer = blades_headline(check, system).removeprefix(f"{check.design.name}: ")
    height_in = joint_layout(check).total_in()
    figure, middle, left, right = _card(check.design.name, answer, height_in)
    whole_joint(check, middle, units=system)
    blades_stress(check, left, units=system)
    blades_action(check, right, units=system)
    return figure


def _card(name: str, answer: str, middle_in: float) -> tuple[Figure, SubFigure, Axes, Axes]:
    """Make a card with its head written; what stands in the middle, and two charts."""
    heights = [_TITLE_IN, middle_in, _CHARTS_IN]
    figure = Picture(figsize=(palette.WIDTH_IN, sum(heights)), dpi=palette.DPI)
    grid = figure.add_gridspec(
        3, 1, height_ratios=heights, hspace=0.0, left=0, right=1, bottom=0, top=1
    )
    head, middle, charts = (figure.add_subfigure(grid[row]) for row in range(3))
    _write_head(head, name, answer)
    left, right = (charts.add_axes((x, 0.13, 0.375, 0.71)) for x in (0.075, 0.55))
    return figure, middle, left, right


def _write_head(head: SubFigure, name: str, answer: str) -> None:
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
