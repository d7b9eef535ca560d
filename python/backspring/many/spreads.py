"""How the bench's tolerances are written, and what they mean."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from backspring import _core
from backspring._core import Spread, SpreadKind
from backspring.design.design import Design
from backspring.errors import InvalidInput
from backspring.faults import Fault, invalid
from backspring.many.dimensions import read_value, refuse_key
from backspring.units import System

# A plain tolerance is three standard deviations: common practice, no source.
_SIGMAS = 3.0
# What a careful bench holds without a jig, either way: common practice, no source.
_ORDINARY = {
    "fit.preload": "0.05 mm",
    "spring.thickness_offset": "0.03 mm",
    "spring.width": "0.02 mm",
    "tang.pivot": "0.05 mm",
    "tang.half_stop": "0.02 mm",
    "tang.closed": "0.02 mm",
    "tang.corner_radius": "0.1 mm",
}


# Friction of hardened steel on steel with some oil: common practice, no source.
USUAL_FRICTION = 0.12
_FRICTION_SD = 0.04


def ordinary_spreads(design: Design) -> dict[str, str]:
    """Return an ordinary bench's tolerances for the dimensions that the design has.

    Beside what is cut, what is not known of steel and friction: Young's modulus within the steel's
    band, yield stress as the hardness lets it, friction by 0.04.
    """
    cut = {key: text for key, text in _ORDINARY.items() if _can_spread(design, key)}
    return cut | _not_known(design)


def _not_known(design: Design) -> dict[str, str]:
    steel = design.steel
    found = {"spring.youngs_modulus": f"sd {steel['youngs_modulus_sd_mpa']!r} MPa"}
    if steel["yield_sd_mpa"] is not None:
        found["spring.yield"] = f"sd {steel['yield_sd_mpa']!r} MPa"
    return found | {"friction.offset": f"sd {_FRICTION_SD}"}


def with_usual_friction(design: Design) -> Design:
    """Return a design in which friction is counted: its own, or 0.12 where none is stated."""
    friction = design.core.friction
    if friction.spring or friction.pivot:
        return design
    return design.replace(**{"friction.spring": USUAL_FRICTION, "friction.pivot": USUAL_FRICTION})


def _can_spread(design: Design, key: str) -> bool:
    if refuse_key(design, key) is not None:
        return False
    try:
        _core.require_spreads(design.core, [Spread(key=key, size=1e-3)])
    except InvalidInput:
        return False
    return True


def read_spreads(design: Design, spreads: Mapping[str, Any], system: System = "mm") -> list[Spread]:
    """Read tolerances by key; raises InvalidInput with every fault.

    "0.05 mm", also "+-0.05 mm" or a bare number, is a tolerance either way: a normal spread with a
    third of it as standard deviation. "sd 0.02 mm" gives the standard deviation itself, "uniform
    0.05 mm" a spread alike over 0.05 mm either way.
    """
    if not spreads:
        raise invalid([Fault("bad-value", "spreads", "must name at least one dimension")])
    read: list[Spread] = []
    faults: list[Fault] = []
    for key, value in spreads.items():
        spread = refuse_key(design, key) or _read(key, value, system)
        if isinstance(spread, Fault):
            faults.append(spread)
        else:
            read.append(spread)
    if faults:
        raise invalid(faults)
    try:
        _core.require_spreads(design.core, read)
    except InvalidInput as error:
        raise invalid([Fault("bad-value", f.key, f.message) for f in error.faults]) from None
    return read


def _read(key: str, value: Any, system: System) -> Spread | Fault:
    kind, sigmas, written = SpreadKind.normal, _SIGMAS, value
    if isinstance(value, str):
        word, _, rest = value.strip().partition(" ")
        if word == "sd":
            sigmas, written = 1.0, rest
        elif word == "uniform":
            kind, sigmas, written = SpreadKind.uniform, 1.0, rest
        else:
            written = value.strip().removeprefix("+-").removeprefix("±").strip()
    size = read_value(key, written, system)
    if isinstance(size, Fault):
        return size
    if size < 0.0:
        return Fault("bad-value", key, f'must not be below 0, got "{value}"')
    return Spread(key=key, kind=kind, size=size / sigmas)
