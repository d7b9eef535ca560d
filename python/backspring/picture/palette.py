"""Colours that people with any colour vision can tell apart, each with its own line."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import cycle

# Okabe and Ito's palette, "Color Universal Design", 2008; values from memory.
BLUE = "#0072B2"
SKY = "#56B4E9"
ORANGE = "#E69F00"
VERMILLION = "#D55E00"
PURPLE = "#CC79A7"
INK = "#222222"
MUTED = "#666666"
FAINT = "#BBBBBB"
TANG = "#D4D4D4"
BLADE = "#F0F0F0"
STRESS_MAP = "PuOr_r"

# Keeps words readable where lines pass behind them.
UNDERLAY = {"boxstyle": "square,pad=0.1", "fc": "white", "ec": "none", "alpha": 0.7}

SMALL = 9.0
NORMAL = 10.0
LARGE = 12.0
DPI = 120.0
WIDTH_IN = 10.0


@dataclass(frozen=True, slots=True)
class Line:
    """A colour and a dash, so that a curve is known without its colour."""

    color: str
    style: str
    width: float = 1.6


# By position, the worst of the travel, and the blade held at an angle asked for.
STRESS_LINES = {
    "closed": Line(BLUE, "-"),
    "half_stop": Line(PURPLE, "--"),
    "open": Line(INK, "-."),
    "worst": Line(VERMILLION, "-", 2.2),
    "blade": Line(SKY, ":", 2.2),
}


def blade_lines() -> Iterator[Line]:
    """Lines for one blade after another, as many as are asked for."""
    return cycle((Line(BLUE, "-", 2.0), Line(VERMILLION, "--", 2.0), Line(PURPLE, "-.", 2.0)))


def worst_lines() -> Iterator[Line]:
    """Lines for the worst of one blade after another."""
    return cycle((Line(VERMILLION, "-", 2.2), Line(SKY, "--", 2.2), Line(PURPLE, ":", 2.2)))
