"""How sure the yield stress of a knife's spring is."""

from __future__ import annotations

from dataclasses import dataclass

from backspring import _core
from backspring.design.design import Design
from backspring.errors import Error

_HALF_HRC = 0.5


@dataclass(frozen=True, slots=True)
class YieldSpread:
    """Yield stress, its change with hardness, and the share by which its data are unsure."""

    yield_mpa: float
    per_hrc_mpa: float
    share: float


def yield_spread(design: Design, now: _core.Design) -> YieldSpread | None:
    """Read the steel's band as two standard deviations either way; None without a yield stress."""
    band = now.strength.yield_mpa
    if not band.value:
        return None
    share = (band.high - band.low) / 4.0 / band.value
    return YieldSpread(band.value, _per_hrc(design), share)


def _per_hrc(design: Design) -> float:
    spring = design.to_dict()["spring"]
    hardness = design.core.hardness.spring_hrc
    if hardness is None or "tensile" in spring or "yield" in spring:
        return 0.0
    try:
        ends = [
            design.replace(
                **{
                    "spring.temper": None,
                    "spring.temper_time": None,
                    "spring.hardness": f"{hardness + step} HRC",
                }
            ).core.strength.yield_mpa.value
            for step in (-_HALF_HRC, _HALF_HRC)
        ]
    except Error:
        return 0.0
    return (ends[1] - ends[0]) / (2.0 * _HALF_HRC)
