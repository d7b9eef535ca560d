"""The fields of a steel's file, and what each may hold."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any


@dataclass(frozen=True, slots=True)
class Number:
    """A number in a range."""

    least: float
    greatest: float


@dataclass(frozen=True, slots=True)
class Choice:
    """One of some words."""

    words: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Rows:
    """Tables of one kind, so many at least."""

    row: Fields
    least: int = 0


@dataclass(frozen=True, slots=True)
class Numbers:
    """So many numbers."""

    count: int


TEXT, TEXTS, CITED = "text", "texts", "sources"
Kind = Number | Choice | Rows | Numbers | str | Mapping[str, Any]
Fields = Mapping[str, Kind]
# Keys with this mark must be given.
_MUST = "!"
_HRC, _CELSIUS, _MPA = Number(0.0, 72.0), Number(20.0, 1200.0), Number(1.0, 5000.0)
# What every figure and row may say of itself.
SURE: Fields = {
    "confidence": Choice(("read", "memory", "derived")),
    "sources": CITED,
    "note": TEXT,
}


def _figure(least: float, greatest: float) -> Fields:
    number = Number(least, greatest)
    return {"value!": number, "low": number, "high": number, **SURE}


_TEMPERED: Fields = {
    "temper_c!": _CELSIUS, "hardness_hrc!": _HRC, "low_hrc": _HRC, "high_hrc": _HRC, **SURE,
}  # fmt: skip
_ANY = Number(-1e9, 1e9)
_FIT: Fields = {
    "time_constant!": Number(1.0, 50.0), "mean!": _ANY, "deviation!": Number(1e-6, 1e6),
    "coefficients!": Numbers(4), "rms_hrc!": _HRC, "greatest_error_hrc!": _HRC,
    "number_of_points!": Number(1.0, 1e6), "coolest_c!": _CELSIUS, "hottest_c!": _CELSIUS,
    "shortest_s!": Number(0.1, 1e7), "longest_h!": Number(1e-4, 1e4), "softest_hrc!": _HRC, **SURE,
}  # fmt: skip
STEEL: Fields = {
    "name!": TEXT, "also_called": TEXTS, "family": TEXT,
    "elastic!": {
        "youngs_modulus_mpa!": _figure(1000.0, 1e6), "poisson": _figure(0.0, 0.49),
        "density_kg_m3": _figure(1000.0, 30000.0),
    },
    "strength!": {
        "yield_ratio!": _figure(0.1, 1.0),
        "hardness_range_hrc": {"low!": _HRC, "high!": _HRC, **SURE},
        "conflicts": TEXTS, "cautions": TEXTS,
    },
    "temper": {
        "treatment": TEXT, "hold": TEXT, "hold_h": Number(1e-3, 1000.0),
        "as_quenched": {"hrc!": _HRC, **SURE}, "spread": {"hrc!": _HRC, **SURE},
        "points!": Rows(_TEMPERED, 2), "beside": Rows(_TEMPERED), "fit": _FIT, **SURE,
    },
    "embrittlement": Rows({"low_c!": _CELSIUS, "high_c!": _CELSIUS, **SURE}),
    "points": Rows({
        "condition!": TEXT, "loading": Choice(("tension", "compression")), "hardness_hrc": _HRC,
        "yield_mpa": _MPA, "tensile_mpa": _MPA, **SURE,
    }),
}  # fmt: skip
SOURCE: Fields = {
    "title!": TEXT, "kind": TEXT, "confidence": SURE["confidence"], "author": TEXT,
    "year": Number(1500.0, 3000.0), "page": TEXT, "note": TEXT,
}  # fmt: skip


def name_of(key: str) -> str:
    """Return a key's name, without the mark of what must be given."""
    return key.removesuffix(_MUST)


def must_be_given(key: str) -> bool:
    """Whether a key has that mark."""
    return key.endswith(_MUST)
