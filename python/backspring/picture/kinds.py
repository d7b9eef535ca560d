"""One picture by its name."""

from __future__ import annotations

from typing import Literal

from matplotlib.figure import Figure

from backspring.picture.action import action
from backspring.picture.chart import new_chart
from backspring.picture.positions import positions
from backspring.picture.sheet import sheet
from backspring.picture.stress import stress_along
from backspring.question.check import Check
from backspring.units import System

Kind = Literal["sheet", "positions", "stress", "action"]


def draw(
    check: Check,
    kind: Kind,
    *,
    units: System | None = None,
    blade_angle_deg: float | None = None,
) -> Figure:
    """Draw one picture in a figure of its own; positions and stress also at a blade angle."""
    if kind == "sheet":
        return sheet(check, units=units)
    if kind == "positions":
        return positions(check, units=units, blade_angle_deg=blade_angle_deg)
    figure, ax = new_chart()
    if kind == "stress":
        stress_along(check, ax, units=units, blade_angle_deg=blade_angle_deg)
    else:
        action(check, ax, units=units)
    return figure
