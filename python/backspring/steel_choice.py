"""The steel of a design: elastic figures and strength, each with its source."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from backspring import steels
from backspring._core import Band, Elastic, Strength, strength_from_hardness
from backspring.errors import OutOfRange
from backspring.faults import Fault

CONVERSION_SOURCES = ("astm-e140", "din-50150")


@dataclass(frozen=True, slots=True)
class SteelChoice:
    """What the core needs of the steel, and the record that is reported."""

    steel: steels.Steel
    elastic: Elastic
    strength: Strength
    record: dict[str, Any]


def choose_steel(spring: dict[str, Any]) -> SteelChoice | list[Fault]:
    """Take the steel's data, with what [spring] states itself in its place."""
    faults = []
    steel, ratio = None, Band()
    try:
        steel = steels.steel(spring["steel"])
        figure = steel.yield_ratio
        ratio = Band(value=figure.value, low=figure.low, high=figure.high)
    except LookupError as error:
        faults.append(Fault("bad-value", "spring.steel", str(error.args[0])))
    try:
        strength = _strength(spring, ratio)
    except OutOfRange as error:
        faults.append(Fault("bad-value", "spring.hardness", str(error)))
    if steel is None or faults:
        return faults
    elastic = Elastic(
        youngs_modulus_mpa=spring.get("youngs_modulus", steel.youngs_modulus_mpa.value),
        poisson=spring.get("poisson", steel.poisson.value),
    )
    return SteelChoice(steel, elastic, strength, _record(spring, steel, elastic, strength))


def _strength(spring: dict[str, Any], ratio: Band) -> Strength:
    """Given figures stand alone; the rest follows from them or from hardness."""
    strength = Strength()
    if "tensile" in spring:
        tensile = spring["tensile"]
        strength = Strength(
            yield_mpa=Band(
                value=tensile * ratio.value, low=tensile * ratio.low, high=tensile * ratio.high
            ),
            tensile_mpa=_alone(tensile),
        )
    elif "hardness" in spring:
        strength = strength_from_hardness(spring["hardness"], ratio)
    if "yield" in spring:
        return Strength(yield_mpa=_alone(spring["yield"]), tensile_mpa=strength.tensile_mpa)
    return strength


def _alone(value: float) -> Band:
    return Band(value=value, low=value, high=value)


def _record(
    spring: dict[str, Any], steel: steels.Steel, elastic: Elastic, strength: Strength
) -> dict[str, Any]:
    origins = _origins(spring, steel)
    known = steels.sources()
    tensile = strength.tensile_mpa.value or None
    return {
        "name": steel.name,
        "hardness_hrc": spring.get("hardness"),
        "youngs_modulus_mpa": elastic.youngs_modulus_mpa,
        "poisson": elastic.poisson,
        "yield_mpa": strength.yield_mpa.value,
        "yield_low_mpa": strength.yield_mpa.low,
        "yield_high_mpa": strength.yield_mpa.high,
        "tensile_mpa": tensile,
        "tensile_low_mpa": tensile and strength.tensile_mpa.low,
        "tensile_high_mpa": tensile and strength.tensile_mpa.high,
        "confidence": {figure: confidence for figure, (confidence, _) in origins.items()},
        "sources": [
            {"figure": figure, "key": key, "title": known[key].title}
            for figure, (_, keys) in origins.items()
            for key in keys
        ],
    }


def _origins(spring: dict[str, Any], steel: steels.Steel) -> dict[str, tuple[str, tuple[str, ...]]]:
    """How sure each figure is, and the keys of its sources; a given one has none."""
    origins: dict[str, tuple[str, tuple[str, ...]]] = {}
    for figure, data in (
        ("youngs_modulus", steel.youngs_modulus_mpa),
        ("poisson", steel.poisson),
    ):
        origins[figure] = ("given", ()) if figure in spring else (data.confidence, data.sources)
    converted = "tensile" not in spring and "hardness" in spring
    if "yield" in spring:
        origins["yield"] = ("given", ())
    else:
        tables = CONVERSION_SOURCES if converted else ()
        origins["yield"] = ("derived", (*tables, *steel.yield_ratio.sources))
    if "tensile" in spring:
        origins["tensile"] = ("given", ())
    elif converted:
        origins["tensile"] = ("read", CONVERSION_SOURCES)
    return origins
