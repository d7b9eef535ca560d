"""What one log tells of a shop's habits by itself, without what was expected of them."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING

from backspring.fit.habits import DEPTH, HABIT_OF, habit_unit
from backspring.fit.priors import DEPTH_MM, DEPTH_SHARE

if TYPE_CHECKING:
    from backspring.fit.estimate import FitEstimate


@dataclass(frozen=True, slots=True)
class Told:
    """A value with its standard deviation, and with that of common practice."""

    value: float
    sd: float
    usual_sd: float


@dataclass(frozen=True, slots=True)
class LogTold:
    """What one log tells of each habit: nothing, one value, or one for every stated depth.

    `tilted_ahead` says on which side of flat its pad was found.
    """

    habits: dict[str, tuple[Told, ...]]
    tilted_ahead: bool


def told_by(found: FitEstimate) -> LogTold:
    """Take out of an estimate what was expected of each habit, so that the measurements are left.

    A normal posterior is prior times likelihood: 1/s^2 = 1/s_posterior^2 - 1/s_prior^2, and so for
    the means over variances. A log that tells a thing no better than common practice does would
    mostly echo what is expected of all else: it tells nothing of it.
    """
    told = {name: tuple(_of_knife(found, unknown)) for unknown, name in HABIT_OF.items()}
    told[DEPTH] = tuple(_depths(found))
    return LogTold(told, tilted_ahead=bool(found.x[found.rows.place["pad_tilt_rad"]] < 0.0))


def _of_knife(found: FitEstimate, unknown: str) -> Iterator[Told]:
    place = found.rows.place[unknown]
    scale, drawn = habit_unit(found.rows.priors[place])
    for each in _alone(found, place):
        yield Told((each.value + drawn) / scale, each.sd / scale, each.usual_sd / scale)


def _depths(found: FitEstimate) -> Iterator[Told]:
    """Say how far each stated depth is off, as a share of it."""
    for place, entry in enumerate(found.rows.ground, start=found.rows.first_depth):
        if not entry.depth_mm:
            continue
        stated = entry.depth_mm
        for each in _alone(found, place):
            sd = math.hypot(each.sd, DEPTH_MM)
            yield Told(each.value / stated - 1.0, sd / stated, DEPTH_SHARE)


def _alone(found: FitEstimate, place: int) -> Iterator[Told]:
    prior, variance = found.rows.priors[place], float(found.covariance[place, place])
    weight = 1.0 / variance - prior.sd**-2
    if weight >= prior.sd**-2:
        value = (float(found.x[place]) / variance - prior.expected * prior.sd**-2) / weight
        yield Told(value, 1.0 / math.sqrt(weight), prior.sd)
