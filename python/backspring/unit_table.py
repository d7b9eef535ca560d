"""The closed table of units that a value may be written in.

Factors are exact and follow NIST SP 811, appendix B; degrees and radians follow from pi.
"""

from __future__ import annotations

import math
from fractions import Fraction
from typing import Literal, NamedTuple

from backspring._core import Quantity

System = Literal["mm", "in"]
Kind = Literal[
    "length",
    "force",
    "stress",
    "angle",
    "temperature",
    "hardness",
    "mass",
    "inertia",
    "root stiffness",
    "compliance",
    "time",
    "number",
]

# What the core's numbers are read as; ratio and count are written alike.
KINDS: dict[Quantity, Kind] = {
    Quantity.length: "length",
    Quantity.force: "force",
    Quantity.stress: "stress",
    Quantity.angle: "angle",
    Quantity.temperature: "temperature",
    Quantity.hardness: "hardness",
    Quantity.mass: "mass",
    Quantity.inertia: "inertia",
    Quantity.root_stiffness: "root stiffness",
    Quantity.compliance: "compliance",
    Quantity.time: "time",
    Quantity.ratio: "number",
    Quantity.count: "number",
}

_INCH_MM = Fraction("25.4")
INCH_MM, THOU_MM, FOOT_MM = (float(each * _INCH_MM) for each in (1, Fraction(1, 1000), 12))
_POUND_FORCE_N = Fraction("4.4482216152605")
_OUNCE_G = Fraction("28.349523125")
POUND_FORCE_N, OUNCE_G = float(_POUND_FORCE_N), float(_OUNCE_G)
# Of a pound per cubic inch, in kg/m3.
LB_IN3_KG_M3 = float(16 * _OUNCE_G / 1000 / (_INCH_MM / 1000) ** 3)
MM_PER: dict[System, float] = {"mm": 1.0, "in": INCH_MM}
MM_PER_POINT = INCH_MM / 72.0
_PSI_MPA = _POUND_FORCE_N / _INCH_MM**2


class Unit(NamedTuple):
    """A unit: what it measures, and how it becomes the core's unit: value * factor + shift."""

    kind: Kind
    factor: Fraction
    shift: Fraction = Fraction(0)


def _same_kind(kind: Kind, **factors: Fraction | int | str) -> dict[str, Unit]:
    return {name: Unit(kind, Fraction(factor)) for name, factor in factors.items()}


UNITS: dict[str, Unit] = {
    **_same_kind("length", mm=1, cm=10, m=1000, um="0.001"),
    **{name: Unit("length", _INCH_MM) for name in ("in", "inch", '"')},
    **{name: Unit("length", _INCH_MM / 1000) for name in ("thou", "mil")},
    **_same_kind("force", N=1, kN=1000, kgf="9.80665", lbf=_POUND_FORCE_N, ozf=_POUND_FORCE_N / 16),
    **_same_kind("stress", MPa=1, GPa=1000, psi=_PSI_MPA, ksi=1000 * _PSI_MPA),
    "N/mm2": Unit("stress", Fraction(1)),
    **_same_kind("angle", deg=1, rad=Fraction(180.0 / math.pi)),
    "C": Unit("temperature", Fraction(1)),
    "F": Unit("temperature", Fraction(5, 9), Fraction(-160, 9)),
    "K": Unit("temperature", Fraction(1), Fraction("-273.15")),
    "HRC": Unit("hardness", Fraction(1)),
    **_same_kind("mass", g=1, kg=1000, oz=_OUNCE_G),
    "kg mm2": Unit("inertia", Fraction(1)),
    "kg m2": Unit("inertia", Fraction(10**6)),
    "g cm2": Unit("inertia", Fraction("0.1")),
    "g mm2": Unit("inertia", Fraction("0.001")),
    "oz in2": Unit("inertia", _OUNCE_G / 1000 * _INCH_MM**2),
    "N mm/rad": Unit("root stiffness", Fraction(1)),
    "N m/rad": Unit("root stiffness", Fraction(1000)),
    "lbf in/rad": Unit("root stiffness", _POUND_FORCE_N * _INCH_MM),
    "mm/N": Unit("compliance", Fraction(1)),
    "um/N": Unit("compliance", Fraction(1, 1000)),
    "in/lbf": Unit("compliance", _INCH_MM / _POUND_FORCE_N),
    "thou/lbf": Unit("compliance", _INCH_MM / 1000 / _POUND_FORCE_N),
    **_same_kind("time", h=1, min=Fraction(1, 60), s=Fraction(1, 3600)),
    "": Unit("number", Fraction(1)),
}

# What a bare number means; hardness is always HRC.
BARE: dict[System, dict[Kind, str]] = {
    "mm": {
        "length": "mm",
        "force": "N",
        "stress": "MPa",
        "angle": "deg",
        "temperature": "C",
        "hardness": "HRC",
        "mass": "g",
        "inertia": "kg mm2",
        "root stiffness": "N mm/rad",
        "compliance": "mm/N",
        "time": "h",
        "number": "",
    },
    "in": {
        "length": "in",
        "force": "lbf",
        "stress": "ksi",
        "angle": "deg",
        "temperature": "F",
        "hardness": "HRC",
        "mass": "oz",
        "inertia": "oz in2",
        "root stiffness": "lbf in/rad",
        "compliance": "in/lbf",
        "time": "h",
        "number": "",
    },
}

# Units of a kind that has others in inches than in mm, by what they go with.
_OF_INCHES = {"inch", '"', "thou", "mil", "psi", "ozf", "thou/lbf", *BARE["in"].values()}


def system_of(name: str) -> System | None:
    """Say which system a unit belongs to; None for one of both, as deg."""
    kind = UNITS[name].kind
    if BARE["mm"][kind] == BARE["in"][kind]:
        return None
    return "in" if name in _OF_INCHES else "mm"


# What no file states; the core tells it of other questions.
CORE_UNITS: dict[Quantity, str] = {
    Quantity.torque: "N mm",
    Quantity.energy: "mJ",
    Quantity.stiffness: "N/mm",
    Quantity.speed: "m/s",
    Quantity.angular_speed: "deg/s",
}

# Names people write that mean two things; the answer says which to choose.
AMBIGUOUS: dict[str, str] = dict.fromkeys(
    ("lb", "lbs", "pound", "pounds", "#"), "write lbf for a force, oz or g for a mass"
)


def unit_names(kind: Kind) -> tuple[str, ...]:
    """Every spelling of a kind's units."""
    return tuple(name for name, unit in UNITS.items() if unit.kind == kind)


def a_kind(kind: Kind) -> str:
    """Name a kind in a sentence: "a length"."""
    if kind == "number":
        return "a plain number"
    return f"an {kind}" if kind[0] in "aeiou" else f"a {kind}"


def unit_in(quantity: Quantity, system: System) -> str:
    """Return the unit of a bare number; of what no file states, the core's."""
    kind = KINDS.get(quantity)
    return CORE_UNITS[quantity] if kind is None else BARE[system][kind]
