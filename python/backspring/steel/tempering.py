"""Hardness by temper, temper by hardness, and what a later heat leaves. C, h and HRC."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from backspring import _core
from backspring._core import Band, Heat, TemperFit, TemperPoint, TemperTable
from backspring.errors import OutOfRange
from backspring.notice import Notice, Value
from backspring.steel.records import Confidence, Figure, Fit, Steel, Temper, TemperRow

# Where time counts and none is given: a common hold.
USUAL_TIME_H = 2.0


class AfterHeat(NamedTuple):
    """Hardness before and after a later heat.

    `extrapolated_in_time` says that the heat was shorter than any of the experiments fitted.
    """

    before_hrc: Figure
    hardness_hrc: Figure
    extrapolated_in_time: bool


def hardness_after(steel: Steel, temper_c: float, time_h: float | None) -> Figure:
    """Hardness [HRC] after a temper, with its band."""
    temper = data_of(steel)
    return _hardness(temper, _hardness_band(temper, temper_c, used_time_h(temper, time_h)))


def temper_for(steel: Steel, hardness_hrc: float, time_h: float | None) -> Figure:
    """Temper [C] that leaves a hardness, and those that the band of the data allows."""
    temper = data_of(steel)
    time_h = used_time_h(temper, time_h)
    value_c = _temper_c(temper, hardness_hrc, time_h)
    band = _hardness_band(temper, value_c, time_h)
    low_c, high_c = limits_c(temper)
    return Figure(
        value=value_c,
        low=_temper_or(temper, band.high, time_h, low_c),
        high=_temper_or(temper, band.low, time_h, high_c),
        confidence="derived",
        sources=_origin(temper)[1],
        note=temper.spread_hrc.note,
    )


def after_heat(
    steel: Steel, temper_c: float, time_h: float | None, later_c: float, later_h: float
) -> AfterHeat:
    """Hardness left when a tempered part is heated once more."""
    temper = data_of(steel)
    time_h = used_time_h(temper, time_h)
    before = _hardness(temper, _hardness_band(temper, temper_c, time_h))
    if temper.fit is None:
        band = _core.hardness_after_heat(_table(temper), temper_c, later_c)
        return AfterHeat(before, _hardness(temper, band), False)
    first = _heat(temper_c, time_h)
    later = Heat(temperature_c=later_c, time_h=later_h)
    effect = _core.hardness_after_heat(_fit(temper.fit, temper.spread_hrc.value), first, later)
    return AfterHeat(before, _hardness(temper, effect.hardness_hrc), effect.extrapolated_in_time)


def data_of(steel: Steel) -> Temper:
    """Temper data of a steel; raises OutOfRange where there are none."""
    if steel.temper is None:
        raise OutOfRange(f"no temper data of {steel.name}: measure the hardness and give it")
    return steel.temper


def used_time_h(temper: Temper, time_h: float | None) -> float | None:
    """Time that is meant when none is given; None where the data states no hold."""
    if time_h is not None:
        return time_h
    return USUAL_TIME_H if temper.fit else temper.hold_h


def limits_c(temper: Temper) -> tuple[float, float]:
    """Lowest and highest temper of the data."""
    if temper.fit is not None:
        return temper.fit.coolest_c, temper.fit.hottest_c
    return temper.points[0].temper_c, temper.points[-1].temper_c


def temper_notices(steel: Steel, temper_c: float, time_h: float | None) -> Iterator[Notice]:
    """Find what a maker should know of a temper."""
    for band in steel.embrittlement:
        if band.low_c <= temper_c <= band.high_c:
            yield Notice(
                "embrittlement",
                {
                    "temper": temper_c,
                    "low": band.low_c,
                    "high": band.high_c,
                    "steel": steel.name,
                    "confidence": band.confidence,
                    "note": band.note,
                },
            )
    temper = steel.temper
    if temper is None or temper.fit is not None or time_h in (None, temper.hold_h):
        return
    known: dict[str, Value] = {} if temper.hold_h is None else {"hold": temper.hold}
    yield Notice("temper-time", {"time": time_h, "steel": steel.name, **known})


def _hardness_band(temper: Temper, temper_c: float, time_h: float | None) -> Band:
    if temper.fit is None:
        return _core.hardness_after_temper(_table(temper), temper_c, time_h)
    fit = _fit(temper.fit, temper.spread_hrc.value)
    return _core.hardness_after_temper(fit, _heat(temper_c, time_h))


def _temper_c(temper: Temper, hardness_hrc: float, time_h: float | None) -> float:
    if temper.fit is None:
        return _core.temper_for_hardness(_table(temper), hardness_hrc)
    fit = _fit(temper.fit, temper.spread_hrc.value)
    return _core.temper_for_hardness(fit, hardness_hrc, _heat(0.0, time_h).time_h)


def _heat(temperature_c: float, time_h: float | None) -> Heat:
    return Heat(temperature_c=temperature_c, time_h=USUAL_TIME_H if time_h is None else time_h)


def _temper_or(temper: Temper, hardness_hrc: float, time_h: float | None, end_c: float) -> float:
    try:
        return _temper_c(temper, hardness_hrc, time_h)
    except OutOfRange:
        return end_c


def _fit(fit: Fit, spread_hrc: float) -> TemperFit:
    return TemperFit(
        time_constant=fit.time_constant,
        mean=fit.mean,
        deviation=fit.deviation,
        coefficients=fit.coefficients,
        spread_hrc=spread_hrc,
        coolest_c=fit.coolest_c,
        hottest_c=fit.hottest_c,
        shortest_h=fit.shortest_s / 3600.0,
        longest_h=fit.longest_h,
        softest_hrc=fit.softest_hrc,
    )


def _table(temper: Temper) -> TemperTable:
    points = [
        TemperPoint(temper_c=row.temper_c, hardness_hrc=row_band(row, temper.spread_hrc.value))
        for row in temper.points
    ]
    return TemperTable(points=points, hold_h=temper.hold_h)


def row_band(row: TemperRow, spread_hrc: float) -> Band:
    """Hardness of a row with the wider of its own range and the spread."""
    value = row.hardness_hrc
    low, high = value - spread_hrc, value + spread_hrc
    if row.low_hrc is not None and row.high_hrc is not None:
        low, high = min(low, row.low_hrc), max(high, row.high_hrc)
    return Band(value=value, low=low, high=high)


def _hardness(temper: Temper, band: Band) -> Figure:
    confidence, sources = _origin(temper)
    return Figure(band.value, band.low, band.high, confidence, sources, temper.spread_hrc.note)


def _origin(temper: Temper) -> tuple[Confidence, tuple[str, ...]]:
    if temper.fit is not None:
        return temper.fit.confidence, temper.fit.sources
    return temper.confidence, temper.sources
