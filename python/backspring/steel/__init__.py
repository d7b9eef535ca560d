"""Steels a spring can be made of: figures with their bands and sources, and their tempers."""

from backspring.steel.known import (
    hardness_after_heat,
    hardness_after_temper,
    names,
    sources,
    steel,
    temper_for_hardness,
)
from backspring.steel.records import Figure, Point, Source, Steel, Temper, TemperRow
from backspring.steel.tempering import AfterHeat

__all__ = [
    "AfterHeat",
    "Figure",
    "Point",
    "Source",
    "Steel",
    "Temper",
    "TemperRow",
    "hardness_after_heat",
    "hardness_after_temper",
    "names",
    "sources",
    "steel",
    "temper_for_hardness",
]
