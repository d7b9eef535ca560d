"""Writes numbers for people, in mm or in inches."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from backspring.unit_table import UNITS, System

Shown = Literal[
    "length",
    "reading",
    "force",
    "stress",
    "modulus",
    "torque",
    "stiffness",
    "energy",
    "angle",
    "speed",
    "margin",
]
_LBF_IN = float(UNITS["lbf in/rad"].factor)
_LBF = float(UNITS["lbf"].factor)
_INCH = float(UNITS["in"].factor)
_KSI = float(UNITS["ksi"].factor)
_FLUSH_MM = 0.0005


@dataclass(frozen=True, slots=True)
class Style:
    """How a kind of number is written: its unit, the size of that unit in the core's, decimals."""

    unit: str
    size: float
    decimals: int

    def number(self, value: float) -> str:
        """Write the number without its unit; never a minus before nothing."""
        text = f"{value / self.size:.{self.decimals}f}"
        return text.lstrip("-") if float(text) == 0.0 else text

    def text(self, value: float) -> str:
        """Write the number with its unit."""
        return f"{self.number(value)} {self.unit}".rstrip()


_ALIKE: dict[Shown, Style] = {
    "energy": Style("mJ", 1.0, 1),
    "angle": Style("deg", 1.0, 1),
    "speed": Style("m/s", 1.0, 1),
    "margin": Style("", 1.0, 2),
}
STYLES: dict[System, dict[Shown, Style]] = {
    "mm": {
        **_ALIKE,
        "length": Style("mm", 1.0, 2),
        "reading": Style("mm", 1.0, 3),
        "force": Style("N", 1.0, 1),
        "stress": Style("MPa", 1.0, 0),
        "modulus": Style("MPa", 1.0, 0),
        "torque": Style("N mm", 1.0, 0),
        "stiffness": Style("N/mm", 1.0, 1),
    },
    "in": {
        **_ALIKE,
        "length": Style("in", _INCH, 4),
        "reading": Style("thou", _INCH / 1000.0, 1),
        "force": Style("lbf", _LBF, 2),
        "stress": Style("ksi", _KSI, 1),
        "modulus": Style("ksi", _KSI, 0),
        "torque": Style("lbf in", _LBF_IN, 2),
        "stiffness": Style("lbf/in", _LBF / _INCH, 0),
    },
}


def unit_of(kind: Shown, system: System) -> str:
    """Return the unit that a kind of number is shown in."""
    return STYLES[system][kind].unit


def number(value: float | None, kind: Shown, system: System) -> str:
    """Write a number without its unit; `-` when there is none."""
    return "-" if value is None else STYLES[system][kind].number(value)


def text(value: float | None, kind: Shown, system: System) -> str:
    """Write a number with its unit; `-` when there is none."""
    return "-" if value is None else STYLES[system][kind].text(value)


def both(value: float, kind: Shown, system: System) -> str:
    """Write a number in one system and, in brackets, in the other."""
    other: System = "mm" if system == "in" else "in"
    return f"{text(value, kind, system)} ({text(value, kind, other)})"


def reading(value_mm: float | None, system: System) -> str:
    """Write a reading the maker's way: so much proud, so much low, or flush."""
    if value_mm is None:
        return "-"
    if abs(value_mm) < _FLUSH_MM:
        return "flush"
    side = "proud" if value_mm > 0 else "low"
    return f"{number(abs(value_mm), 'reading', system)} {side}"
