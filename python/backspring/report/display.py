"""Writes numbers for people, in mm or in inches."""

from __future__ import annotations

import math
from typing import Literal, NamedTuple

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
    "size",
    "percent",
    "change",
    "count",
    "life",
    "hardness",
    "temperature",
    "time",
    "tilt",
    "root_stiffness",
    "compliance",
]
_LBF_IN = float(UNITS["lbf in/rad"].factor)
_LBF = float(UNITS["lbf"].factor)
_INCH = float(UNITS["in"].factor)
_KSI = float(UNITS["ksi"].factor)
_FLUSH_MM = 0.0005


_FOOT_M = 0.3048
_LBF_IN_MJ = _LBF * _INCH


class Style(NamedTuple):
    """How a kind of number is written: its unit, the size of that unit in the core's, decimals.

    `zero` is what the unit shows at the core's zero; `trim` leaves out noughts at the end.
    """

    unit: str
    size: float
    decimals: int
    zero: float = 0.0
    trim: bool = False

    def number(self, value: float) -> str:
        """Write the number without its unit; never a minus before nothing."""
        text = f"{value / self.size + self.zero:.{self.decimals}f}"
        if self.trim and "." in text:
            text = text.rstrip("0").rstrip(".")
        return text.lstrip("-") if float(text) == 0.0 else text

    def text(self, value: float) -> str:
        """Write the number with its unit."""
        return f"{self.number(value)} {self.unit}".rstrip()


class Life(Style):
    """A number of openings: two digits say all that is known of one."""

    __slots__ = ()

    def number(self, value: float) -> str:
        """Write the number."""
        return f"{float(f'{value:.1e}'):.0f}"


class Time(Style):
    """A time in the unit that suits it."""

    __slots__ = ()

    def text(self, value: float) -> str:
        """Write the time, given in hours, with its unit."""
        for size, unit in ((1.0, "h"), (1.0 / 60.0, "min")):
            if value >= size:
                return f"{value / size:.4g} {unit}"
        return f"{value * 3600.0:.4g} s"


_ALIKE: dict[Shown, Style] = {
    "angle": Style("deg", 1.0, 1),
    "margin": Style("", 1.0, 2),
    "percent": Style("%", 0.01, 0),
    "change": Style("%", 0.01, 1),
    "count": Style("", 1.0, 0),
    "life": Life("", 1.0, 0),
    "hardness": Style("HRC", 1.0, 1, trim=True),
    "time": Time("h", 1.0, 4),
    "tilt": Style("rad", 1.0, 4),
}
STYLES: dict[System, dict[Shown, Style]] = {
    "mm": {
        **_ALIKE,
        "length": Style("mm", 1.0, 2),
        "size": Style("mm", 1.0, 4, trim=True),
        "reading": Style("mm", 1.0, 3),
        "force": Style("N", 1.0, 1),
        "stress": Style("MPa", 1.0, 0),
        "modulus": Style("MPa", 1.0, 0),
        "torque": Style("N mm", 1.0, 0),
        "stiffness": Style("N/mm", 1.0, 1),
        "root_stiffness": Style("N mm/rad", 1.0, 0),
        "compliance": Style("um/N", 1e-3, 3),
        "energy": Style("mJ", 1.0, 1),
        "speed": Style("m/s", 1.0, 1),
        "temperature": Style("C", 1.0, 0),
    },
    "in": {
        **_ALIKE,
        "length": Style("in", _INCH, 4),
        "size": Style("in", _INCH, 5, trim=True),
        "reading": Style("thou", _INCH / 1000.0, 1),
        "force": Style("lbf", _LBF, 2),
        "stress": Style("ksi", _KSI, 1),
        "modulus": Style("ksi", _KSI, 0),
        "torque": Style("lbf in", _LBF_IN, 2),
        "stiffness": Style("lbf/in", _LBF / _INCH, 0),
        "root_stiffness": Style("lbf in/rad", _LBF_IN, 0),
        "compliance": Style("thou/lbf", _INCH / 1000.0 / _LBF, 4),
        "energy": Style("in lbf", _LBF_IN_MJ, 3),
        "speed": Style("ft/s", _FOOT_M, 1),
        "temperature": Style("F", 5.0 / 9.0, 0, zero=32.0),
    },
}
# Kinds that a sentence may show a quantity of the core as.
_SHOWN_AS: dict[str, tuple[Shown, ...]] = {
    "length": ("length", "size", "reading"),
    "force": ("force",),
    "stress": ("stress", "modulus"),
    "angle": ("angle",),
    "hardness": ("hardness",),
    "temperature": ("temperature",),
    "time": ("time",),
    "ratio": ("margin", "percent", "change"),
    "count": ("count", "life"),
    "torque": ("torque",),
    "energy": ("energy",),
    "stiffness": ("stiffness",),
    "speed": ("speed",),
}


class Figure(NamedTuple):
    """A number inside a sentence: the format names the kind it is shown as, as in {drop:reading}.

    A number of the core knows what kind of quantity it is and is not shown as another. A # behind
    the kind leaves out the unit.
    """

    value: float
    units: System
    quantity: str | None = None

    def __format__(self, kind: str) -> str:
        shown: Shown = kind.removesuffix("#")  # type: ignore[assignment]
        if self.quantity is not None and shown not in _SHOWN_AS[self.quantity]:
            raise ValueError(f"a {self.quantity} is not shown as {shown!r}")
        style = STYLES[self.units][shown]
        return style.number(self.value) if kind.endswith("#") else style.text(self.value)

    def __abs__(self) -> Figure:
        return Figure(abs(self.value), self.units, self.quantity)


def unit_of(kind: Shown, system: System) -> str:
    """Return the unit that a kind of number is shown in."""
    return STYLES[system][kind].unit


def number(value: float | None, kind: Shown, system: System) -> str:
    """Write a number without its unit; `-` when there is none."""
    return "-" if value is None or math.isnan(value) else STYLES[system][kind].number(value)


def text(value: float | None, kind: Shown, system: System) -> str:
    """Write a number with its unit; `-` when there is none."""
    return "-" if value is None or math.isnan(value) else STYLES[system][kind].text(value)


def scatter(value: float, kind: Shown, system: System) -> str:
    """Write how far a number scatters: with one digit more where it would be lost."""
    style = STYLES[system][kind]
    small = value < 10.0 * 10.0**-style.decimals * style.size
    return style._replace(decimals=style.decimals + small).number(value)


def reading(value_mm: float | None, system: System) -> str:
    """Write a reading the maker's way: so much proud, so much low, or flush."""
    if value_mm is None or math.isnan(value_mm):
        return "-"
    if abs(value_mm) < _FLUSH_MM:
        return "flush"
    side = "proud" if value_mm > 0 else "low"
    return f"{number(abs(value_mm), 'reading', system)} {side}"


def digits(value: float | None, count: int) -> str:
    """Write a number of any kind with so many digits that say something; `-` when there is none."""
    return "-" if value is None else f"{value:.{count}g}"
