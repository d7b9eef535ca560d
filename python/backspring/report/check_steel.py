"""The steel of a check, as its figures were used."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from backspring.report.display import number, text
from backspring.units import System

if TYPE_CHECKING:
    from backspring.design.design import Design

_FIGURES = {"youngs_modulus": "Young's modulus", "poisson": "Poisson's ratio"}


def steel_lines(design: Design, units: System, everything: bool) -> Iterator[str]:
    """Write the figures of the steel as used; and, if all is wanted, where each comes from."""
    steel = design.steel_figures
    hardness = (
        ""
        if steel["hardness_hrc"] is None
        else f" at {text(steel['hardness_hrc'], 'hardness', units)}"
    )
    strength = f"yield {_band(steel, 'yield', units)}"
    if steel["tensile_mpa"] is not None:
        strength += f", tensile {_band(steel, 'tensile', units)}"
    modulus = text(steel["youngs_modulus_mpa"], "modulus", units)
    yield f"{steel['name']}{hardness}: Young's modulus {modulus}, {strength}"
    if not everything:
        return
    sources = design.steel["sources"]
    for figure, confidence in steel["confidence"].items():
        keys = [source["key"] for source in sources if source["figure"] == figure]
        cited = f": {', '.join(keys)}" if keys else ""
        yield f"{_FIGURES.get(figure, figure)} ({confidence}){cited}"


def _band(steel: dict[str, float], figure: str, units: System) -> str:
    value, low, high = (steel[f"{figure}{end}_mpa"] for end in ("", "_low", "_high"))
    shown = text(value, "stress", units)
    if low == high:
        return shown
    return f"{shown} ({number(low, 'stress', units)} to {number(high, 'stress', units)})"
