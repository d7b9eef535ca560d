"""How the bench's tolerances are written, and what they mean."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
import numpy.typing as npt

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


USUAL_FRICTION: float = _core.USUAL_FRICTION
# Which of a design's priors is the spread of which dimension, and the unit of its deviation.
_STATED = {
    "preload": ("fit.preload", "mm"),
    "thickness": ("spring.thickness_offset", "mm"),
    "width": ("spring.width", "mm"),
    "corner_radius": ("tang.corner_radius", "mm"),
    "youngs_modulus": ("spring.youngs_modulus", "MPa"),
    "friction": ("friction.offset", ""),
}


@dataclass(frozen=True, eq=False)
class SpreadsTogether:
    """Spreads of which some go together, as what the log of one knife tells of it.

    `texts` are deviations by key, `covariance` is that of `keys`; the others go by themselves.
    """

    texts: Mapping[str, str]
    keys: tuple[str, ...]
    covariance: npt.NDArray[np.float64]

    def drawn(
        self, design: Design, inputs: Mapping[str, npt.NDArray[np.float64]]
    ) -> dict[str, npt.NDArray[np.float64]]:
        """Return rows drawn one by one as rows drawn together."""
        values, turns = np.linalg.eigh(self.covariance)
        root = turns * np.sqrt(np.maximum(values, 0.0))
        middle = {key: _core.dimension_value(design.core, key) or 0.0 for key in self.keys}
        sds = np.sqrt(np.diag(self.covariance))
        alone = [
            (np.asarray(inputs[key]) - middle[key]) / sd
            for key, sd in zip(self.keys, sds, strict=True)
        ]
        together = root @ np.array(alone)
        named = zip(self.keys, together, strict=True)
        return {**inputs, **{key: middle[key] + column for key, column in named}}

    def root_sum_square(self, spreads: Sequence[Spread], slopes: Sequence[float]) -> float:
        """Return the standard deviation of a result with these slopes."""
        by_key = dict(zip((each.key for each in spreads), slopes, strict=True))
        turn = np.array([by_key[key] for key in self.keys])
        alone = [
            (by_key[each.key] * _core.standard_deviation(each)) ** 2
            for each in spreads
            if each.key not in self.keys
        ]
        return float(np.sqrt(turn @ self.covariance @ turn + sum(alone)))


def ordinary_spreads(design: Design) -> dict[str, str]:
    """Return an ordinary bench's tolerances for the dimensions that the design has.

    Beside what is cut, what is not known of steel and friction: Young's modulus within the steel's
    band, yield stress as the hardness lets it, friction as usual. A deviation that the design
    states in `[priors]` takes the place of each.
    """
    cut = {spread_key(design, key): text for key, text in _ORDINARY.items()}
    cut = {key: text for key, text in cut.items() if can_spread(design, key)}
    return cut | _not_known(design) | _stated(design)


def spread_key(design: Design, key: str) -> str:
    """Name the dimension that spreads a number all along; rows of a width keep their shape."""
    return "spring.width_offset" if key == "spring.width" and design.core.spring.widths else key


def _stated(design: Design) -> dict[str, str]:
    return {
        spread_key(design, key): f"sd {design.priors[name][1]!r} {unit}".rstrip()
        for name, (key, unit) in _STATED.items()
        if name in design.priors and can_spread(design, spread_key(design, key))
    }


def _not_known(design: Design) -> dict[str, str]:
    steel = design.steel
    found = {"spring.youngs_modulus": f"sd {steel['youngs_modulus_sd_mpa']!r} MPa"}
    if steel["yield_sd_mpa"] is not None:
        share = 1.0
        if "hardness" in design.priors:
            share = design.priors["hardness"][1] / steel["hardness_sd_hrc"]
        found["spring.yield"] = f"sd {share * steel['yield_sd_mpa']!r} MPa"
    return found | {"friction.offset": f"sd {_core.FRICTION_SPREAD}"}


def with_usual_friction(design: Design) -> Design:
    """Return a design in which friction is counted: its own, or what is usual or expected of it."""
    friction = design.core.friction
    if friction.spring or friction.pivot:
        return design
    usual = design.priors.get("friction", (USUAL_FRICTION,))[0]
    return design.replace(**{"friction.spring": usual, "friction.pivot": usual})


def can_spread(design: Design, key: str) -> bool:
    """Say whether designs can differ in this key about the number that the design has."""
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
    if not isinstance(spreads, Mapping) or not spreads:
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


def taken_apart(value: Any) -> tuple[SpreadKind, float, Any]:
    """Take a tolerance apart: its kind, the deviations that it counts, and the number written."""
    if not isinstance(value, str):
        return SpreadKind.normal, _SIGMAS, value
    word, _, rest = value.strip().partition(" ")
    if word == "sd":
        return SpreadKind.normal, 1.0, rest
    if word == "uniform":
        return SpreadKind.uniform, 1.0, rest
    written = value.strip().removeprefix("+-").removeprefix("±").strip()
    return SpreadKind.normal, _SIGMAS, written


def _read(key: str, value: Any, system: System) -> Spread | Fault:
    kind, sigmas, written = taken_apart(value)
    size = read_value(key, written, system)
    if isinstance(size, Fault):
        return size
    if size < 0.0:
        return Fault("bad-value", key, f'must not be below 0, got "{value}"')
    return Spread(key=key, kind=kind, size=size / sigmas)
