"""Influence as a report for people: where a pass matters most, then a table along the spring."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from backspring.report.display import STYLES, Shown, Style, text
from backspring.report.tables import Lines, Report, TextTable
from backspring.unit_table import THOU_MM
from backspring.units import System

if TYPE_CHECKING:
    from backspring.question.sensitivity import Influence

SHOWN: dict[str, tuple[str, Shown]] = {
    "peak_pull_n": ("pull", "force"),
    "peak_torque_nmm": ("torque", "torque"),
    "stiffness_n_per_mm": ("stiffness", "stiffness"),
    "travel_peak_stress_mpa": ("worst stress", "stress"),
    "reading_loaded_open_mm": ("open reading", "reading"),
    "reading_loaded_half_stop_mm": ("half-stop reading", "reading"),
    "reading_loaded_closed_mm": ("closed reading", "reading"),
}
# What the numbers are for, and how much that is of the core's 0.1 mm off one mm of length.
PASS_OF: dict[System, tuple[str, float]] = {
    "mm": ("0.1 mm off one mm of length", 1.0),
    "in": ("1 thou off 0.1 in of length", THOU_MM * 2.54 / 0.1),
}
_ROWS = 16
_MORE_DIGITS = 2


def influence_report(influence: Influence, units: System | None = None) -> Report:
    """Lay out an influence in the given units, the design's own when none are given."""
    units = units or influence.design.units
    length = STYLES[units]["length"]
    pass_of, share = PASS_OF[units]
    names = shown_names(influence)
    heads = ("station " + length.unit, *(f"{SHOWN[n][0]} {style(n, units).unit}" for n in names))
    rows = tuple(
        (
            length.number(float(influence.station_mm[i])),
            *(style(n, units).number(share * float(influence[n][i])) for n in names),
        )
        for i in _picked(influence)
    )
    note = (
        f"Each number is for {pass_of}; add them up over the length of a pass.",
        "Preload stays as it is. Readings with the rear pin out do not change.",
    )
    blocks = (TextTable(f"Off the {influence.face}", heads, rows), Lines("Reading it", note))
    return Report(headline(influence, units), blocks)


def headline(influence: Influence, units: System) -> str:
    """Answer in one line: where a pass takes most pull, and how far on it takes next to none."""
    name = shown_names(influence)[0]
    change = influence[name]
    place = text(float(influence.station_mm[int(np.argmin(change))]), "length", units)
    pass_of, share = PASS_OF[units]
    least = style(name, units).text(share * float(change.min()))
    return (
        f"{influence.design.title}: {SHOWN[name][0]} falls most at {place}: {least} for {pass_of}"
    )


def shown_names(influence: Influence) -> list[str]:
    """Names of the results that people are shown: pull, or torque where there is no nail nick."""
    hidden = "peak_torque_nmm" if "peak_pull_n" in influence.value else ""
    return [name for name in SHOWN if name in influence.value and name != hidden]


def style(name: str, units: System) -> Style:
    """How a small change of a result is written: as the result, with more decimals."""
    plain = STYLES[units][SHOWN[name][1]]
    return Style(plain.unit, plain.size, plain.decimals + _MORE_DIGITS)


def _picked(influence: Influence) -> list[int]:
    count = influence.station_mm.size
    return sorted({round(i) for i in np.linspace(0, count - 1, min(count, _ROWS))})
