"""The steel of a design: elastic figures and strength, each with its source."""

from __future__ import annotations

from contextlib import suppress
from typing import Any, NamedTuple

from backspring import steel as steels
from backspring._core import Band, Elastic, Strength, strength_from_hardness
from backspring.errors import OutOfRange
from backspring.faults import Fault
from backspring.steel import tempering
from backspring.steel.files import all_sources
from backspring.steel.hardness_readings import mean_hrc, sd_hrc
from backspring.steel.known import Own, own_sources, steel_beside
from backspring.steel.stated import stated_steel

# With these no more is needed of a steel, and its name may be any.
_STATED = {"youngs_modulus", "yield"}
_OF_ONES_OWN = (
    "; of another steel give youngs_modulus and yield, a table [steel], or its file by "
    "--steels FOLDER"
)
CONVERSION_SOURCES = ("astm-e140", "din-50150")


class SteelChoice(NamedTuple):
    """What the core needs of the steel, and the record that is reported."""

    steel: steels.Steel
    elastic: Elastic
    hardness: steels.Figure | None
    strength: Strength
    record: dict[str, Any]
    # Figures with the keys of their sources, and those sources that are not shipped.
    cites: tuple[tuple[str, str], ...]
    beside: dict[str, steels.Source]
    # The steel that the design brings along, used or not.
    own: Own | None = None

    def sources(self) -> list[dict[str, str]]:
        """Where each figure comes from; those shipped are read only when this is asked."""
        known = all_sources() | self.beside
        return [
            {"figure": figure, "key": key, "title": known[key].title} for figure, key in self.cites
        ]


def choose_steel(spring: dict[str, Any], own: Own | None = None) -> SteelChoice | list[Fault]:
    """Take the steel's data, with what [spring] states itself in its place.

    `own` is the steel that a design brings along.
    """
    faults = []
    steel, hardness, ratio = None, None, Band()
    try:
        steel = steel_beside(spring["steel"], own)
        figure = steel.yield_ratio
        ratio = Band(value=figure.value, low=figure.low, high=figure.high)
    except LookupError as error:
        if spring.keys() >= _STATED:
            steel = stated_steel(spring["steel"], spring["youngs_modulus"])
        else:
            faults.append(Fault("bad-value", "spring.steel", f"{error.args[0]}{_OF_ONES_OWN}"))
    key = "spring.hardness" if "hardness" in spring else "spring.temper"
    try:
        hardness = _hardness(spring, steel)
        strength = _strength(spring, hardness, ratio)
    except OutOfRange as error:
        faults.append(Fault("bad-value", key, _by_temper(hardness, key) + str(error)))
    if steel is None or faults:
        return faults
    elastic = Elastic(
        youngs_modulus_mpa=spring.get("youngs_modulus", steel.youngs_modulus_mpa.value),
        poisson=spring.get("poisson", steel.poisson.value),
    )
    origins = _origins(spring, steel, hardness)
    record = _record(spring, steel, elastic, hardness, strength)
    record["confidence"] = {figure: confidence for figure, (confidence, _) in origins.items()}
    cites = tuple((figure, key) for figure, (_, keys) in origins.items() for key in keys)
    beside = own_sources() | (own[1] if own else {})
    return SteelChoice(steel, elastic, hardness, strength, record, cites, beside, own)


def _hardness(spring: dict[str, Any], steel: steels.Steel | None) -> steels.Figure | None:
    """Take the measured hardness before that of the temper."""
    if "hardness" in spring:
        measured = mean_hrc(spring["hardness"])
        return steels.Figure(measured, measured, measured, "read", (), "measured")
    if "temper" in spring and steel is not None:
        return tempering.hardness_after(steel, spring["temper"], spring.get("temper_time"))
    return None


def _by_temper(hardness: steels.Figure | None, key: str) -> str:
    """Say what a temper gives, where that is what is out of range."""
    if hardness is None or key != "spring.temper":
        return ""
    return (
        f"gives {hardness.value:.1f} HRC, by its data {hardness.low:.1f} to {hardness.high:.1f}: "
    )


def _strength(spring: dict[str, Any], hardness: steels.Figure | None, ratio: Band) -> Strength:
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
    elif hardness is not None:
        strength = _converted(hardness, ratio)
    if "yield" in spring:
        return Strength(yield_mpa=_alone(spring["yield"]), tensile_mpa=strength.tensile_mpa)
    return strength


def _converted(hardness: steels.Figure, ratio: Band) -> Strength:
    """Convert the hardness; each end of its band gives that end of the strength's."""
    likely, low, high = (
        strength_from_hardness(each, ratio)
        for each in (hardness.value, hardness.low, hardness.high)
    )
    return Strength(
        yield_mpa=Band(
            value=likely.yield_mpa.value, low=low.yield_mpa.low, high=high.yield_mpa.high
        ),
        tensile_mpa=Band(
            value=likely.tensile_mpa.value, low=low.tensile_mpa.low, high=high.tensile_mpa.high
        ),
    )


def _alone(value: float) -> Band:
    return Band(value=value, low=value, high=value)


def _record(
    spring: dict[str, Any],
    steel: steels.Steel,
    elastic: Elastic,
    hardness: steels.Figure | None,
    strength: Strength,
) -> dict[str, Any]:
    tensile = strength.tensile_mpa.value or None
    likely = steel.youngs_modulus_mpa
    return {
        "name": steel.name,
        **_hardness_record(spring, hardness),
        "youngs_modulus_mpa": elastic.youngs_modulus_mpa,
        # The steel's band holds about 95 of 100 bars of it, whichever value is stated.
        "youngs_modulus_sd_mpa": 0.25 * (likely.high - likely.low),
        "poisson": elastic.poisson,
        "yield_mpa": strength.yield_mpa.value,
        "yield_low_mpa": strength.yield_mpa.low,
        "yield_high_mpa": strength.yield_mpa.high,
        "yield_sd_mpa": _yield_sd_mpa(spring, steel, hardness),
        "tensile_mpa": tensile,
        "tensile_low_mpa": tensile and strength.tensile_mpa.low,
        "tensile_high_mpa": tensile and strength.tensile_mpa.high,
    }


def _hardness_record(spring: dict[str, Any], hardness: steels.Figure | None) -> dict[str, Any]:
    """Say the hardness of a temper to the tenth: its data know no more."""
    if hardness is None:
        names = ("hardness_hrc", "hardness_low_hrc", "hardness_high_hrc", "hardness_sd_hrc")
        return dict.fromkeys(names)
    ends = {"": hardness.value, "_low": hardness.low, "_high": hardness.high}
    if "hardness" not in spring:
        ends = {end: round(each, 1) for end, each in ends.items()}
    ends["_sd"] = _hardness_sd_hrc(spring, hardness)
    return {f"hardness{end}_hrc": each for end, each in ends.items()}


def _hardness_sd_hrc(spring: dict[str, Any], hardness: steels.Figure) -> float:
    """Take a temper's band as two standard deviations either way, never below a reading's."""
    if "hardness" in spring:
        return sd_hrc(spring["hardness"])
    return max(0.25 * (hardness.high - hardness.low), sd_hrc(hardness.value))


def _yield_sd_mpa(
    spring: dict[str, Any], steel: steels.Steel, hardness: steels.Figure | None
) -> float | None:
    """How far the yield stress goes with one standard deviation of the hardness it follows from."""
    if hardness is None or spring.keys() & {"yield", "tensile"}:
        return None
    sd, ratio = _hardness_sd_hrc(spring, hardness), steel.yield_ratio
    band = Band(value=ratio.value, low=ratio.low, high=ratio.high)
    known = []
    for step in (-sd, 0.0, sd):
        # Beyond an end of the tables the other side alone tells the slope.
        with suppress(OutOfRange):
            strength = strength_from_hardness(hardness.value + step, band)
            known.append((step, strength.yield_mpa.value))
    (first, low), (last, high) = known[0], known[-1]
    return sd * (high - low) / (last - first)


def _origins(
    spring: dict[str, Any], steel: steels.Steel, hardness: steels.Figure | None
) -> dict[str, tuple[str, tuple[str, ...]]]:
    """How sure each figure is, and the keys of its sources; a given one has none."""
    origins: dict[str, tuple[str, tuple[str, ...]]] = {}
    for figure, data in (
        ("youngs_modulus", steel.youngs_modulus_mpa),
        ("poisson", steel.poisson),
    ):
        origins[figure] = ("given", ()) if figure in spring else (data.confidence, data.sources)
    tempered = "hardness" not in spring and hardness is not None
    if tempered and hardness is not None:
        origins["hardness"] = (hardness.confidence, hardness.sources)
    converted = "tensile" not in spring and hardness is not None
    if "yield" in spring:
        origins["yield"] = ("given", ())
    else:
        tables = CONVERSION_SOURCES if converted else ()
        origins["yield"] = ("derived", (*tables, *steel.yield_ratio.sources))
    if "tensile" in spring:
        origins["tensile"] = ("given", ())
    elif converted:
        origins["tensile"] = ("derived" if tempered else "read", CONVERSION_SOURCES)
    return origins
