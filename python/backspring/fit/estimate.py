"""What a log tells about one knife: unknowns, depths, figures, each with its uncertainty."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cached_property

import numpy as np

from backspring import _core
from backspring.design.design import Design
from backspring.errors import NoConvergence
from backspring.fit.ask import PULLED, Ask
from backspring.fit.knife_model import Array
from backspring.fit.log_entry import GroundEntry
from backspring.fit.log_rows import LOADED, LogRows
from backspring.fit.misfit import Misfit, Observation
from backspring.fit.priors import Leeway, Prior
from backspring.fit.yield_spread import YieldSpread, yield_spread

_KNOWN = 0.5
READINGS = ("half_stop_loaded_mm", "closed_loaded_mm")
PULLS = ("peak_pull_n", "closing_peak_pull_n")
STRESS, MARGIN = "travel_peak_stress_mpa", "yield_margin"


@dataclass(frozen=True, slots=True)
class Learned:
    """One unknown: value, standard deviation, and whether the measurements tell it."""

    value: float
    sd: float
    known: bool


@dataclass(frozen=True, slots=True)
class GroundDepth:
    """What a trip to the grinder took off [mm], with its standard deviation."""

    face: str
    depth_mm: float
    sd_mm: float
    known: bool


@dataclass(frozen=True, slots=True)
class Figured:
    """A figure of the knife as it stands, with its standard deviation and its slopes."""

    value: float
    sd: float
    slopes: Array


@dataclass(frozen=True)
class FitEstimate:
    """What a log tells about the knife as it stands.

    `now` is the core's design of it, `bench` what a drawing has no place for, `observations` the
    log's measurements with what the estimate says of each.
    """

    design: Design
    now: _core.Design
    bench: _core.FitUnknowns
    unknowns: dict[str, Learned]
    priors: dict[str, Prior]
    ground: tuple[GroundDepth, ...]
    observations: tuple[Observation, ...]
    misfit: Misfit
    rows: LogRows
    x: Array
    covariance: Array
    leeway: Leeway
    settled: bool

    @cached_property
    def loaded(self) -> dict[str, Figured]:
        """Loaded readings by name."""
        return _loaded(self.rows, self.x, self.covariance)

    @cached_property
    def figures(self) -> dict[str, Figured]:
        """Loaded readings, pulls, stress and margin: those that it has, by name."""
        strength = yield_spread(self.design, self.now)
        return self.loaded | _pulls(self.rows, self.x, self.covariance, strength)

    @property
    def widest_mm(self) -> float:
        """The larger standard deviation of the loaded readings."""
        return max(each.sd for each in self.loaded.values())


def estimate_of(design: Design, rows: LogRows, found: _core.LeastSquares) -> FitEstimate:
    """Say what a search over these rows found."""
    x = np.asarray(found.x)
    # An unknown at its bound may still be anywhere inward of it.
    covariance = np.asarray(found.covariance_released)
    causes = rows.causes(x, len(rows.ground))
    now = rows.model.design(causes)
    learned = {prior.name: _learned(prior, found, place) for place, prior in enumerate(rows.priors)}
    return FitEstimate(
        design=design,
        now=now,
        bench=rows.model.bench(causes),
        unknowns={name: each for name, each in learned.items() if _is_there(name, rows)},
        priors={each.name: each for each in rows.priors},
        ground=tuple(_depth(rows, learned, place) for place in range(len(rows.ground))),
        observations=tuple(_observations(rows, found)),
        misfit=misfit_of(rows, found),
        rows=rows,
        x=x,
        covariance=covariance,
        leeway=rows.leeway,
        settled=found.converged,
    )


def _observations(rows: LogRows, found: _core.LeastSquares) -> Iterator[Observation]:
    slopes, covariance = np.asarray(found.jacobian), np.asarray(found.covariance_released)
    leverages = np.einsum("ij,jk,ik->i", slopes, covariance, slopes)
    for each, leverage in zip(rows.compare(np.asarray(found.x)), leverages, strict=True):
        yield replace(each, leverage=float(leverage))


def _learned(prior: Prior, found: _core.LeastSquares, place: int) -> Learned:
    sd = math.sqrt(found.covariance_released[place, place])
    known = sd < _KNOWN * prior.sd and not (found.at_bound[place] and not prior.broad)
    return Learned(prior.drawn + float(found.x[place]), sd, known)


def _is_there(name: str, rows: LogRows) -> bool:
    """Say whether this knife has it; depths are told one by one."""
    drawn = rows.drawn
    absent = {
        "half_stop_face_mm": drawn.tang.half_stop_mm is None,
        "kick_height_mm": drawn.tang.kick is None,
        "hardness_hrc": drawn.hardness.spring_hrc is None,
    }
    return not absent.get(name, name.startswith("depth_"))


def _depth(rows: LogRows, learned: dict[str, Learned], place: int) -> GroundDepth:
    entry: GroundEntry = rows.ground[place]
    found = learned[f"depth_{place + 1}_mm"]
    stated = entry.depth_mm is not None
    return GroundDepth(entry.face, found.value, found.sd, stated or found.known)


def _loaded(rows: LogRows, x: Array, covariance: Array) -> dict[str, Figured]:
    figures = _figured(rows, x, covariance, LOADED)
    named = dict(zip(READINGS, figures, strict=True))
    return named if rows.model.square else {READINGS[1]: named[READINGS[1]]}


def _pulls(
    rows: LogRows, x: Array, covariance: Array, strength: YieldSpread | None
) -> dict[str, Figured]:
    """Work out pulls, stress and margin; nothing where the blade does not snap."""
    try:
        opening, closing, _, stress = _figured(rows, x, covariance, PULLED)
    except NoConvergence:
        return {}
    named = dict(zip((*PULLS, STRESS), (opening, closing, stress), strict=True))
    if rows.drawn.blade.nail_nick_mm is None:
        named = {STRESS: named[STRESS]}
    if strength is not None:
        hardness = rows.place["hardness_hrc"]
        named[MARGIN] = _margin(named[STRESS], strength, covariance, hardness, x[hardness])
    return named


def _figured(rows: LogRows, x: Array, covariance: Array, ask: Ask) -> list[Figured]:
    count = len(rows.ground)
    values, slopes = rows.said(ask, x, count), rows.slopes(ask, x, count)
    sds = np.sqrt(np.einsum("ij,jk,ik->i", slopes, covariance, slopes))
    each = zip(values, sds, slopes, strict=True)
    return [Figured(float(value), float(sd), slope) for value, sd, slope in each]


def _margin(
    stress: Figured, strength: YieldSpread, covariance: Array, hardness: int, off_hrc: float
) -> Figured:
    yield_mpa = strength.yield_mpa + strength.per_hrc_mpa * off_hrc
    margin = yield_mpa / stress.value
    slopes = -margin * stress.slopes / stress.value
    slopes[hardness] += strength.per_hrc_mpa / stress.value
    variance = slopes @ covariance @ slopes + (margin * strength.share) ** 2
    return Figured(margin, math.sqrt(variance), slopes)


def misfit_of(rows: LogRows, found: _core.LeastSquares) -> Misfit:
    """Chi-squared of measurements and expectations, but for broad ones, which only take away."""
    covariance = found.covariance_released
    taken = sum(
        1.0 - min(1.0, covariance[place, place] / prior.sd**2)
        for place, prior in enumerate(rows.priors)
        if prior.broad
    )
    return Misfit(found.chi_squared + found.expected_chi_squared, len(found.residuals) - taken)
