"""Which measurement of a log that does not go together is to be looked at first."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from contextlib import suppress
from dataclasses import replace
from typing import TYPE_CHECKING

import numpy as np

from backspring.errors import NoConvergence
from backspring.fit.log_entry import Entry, MeasuredEntry
from backspring.fit.misfit import Observation, contradiction, worst
from backspring.units import System

if TYPE_CHECKING:
    from backspring.fit.estimate import FitEstimate

# So many of those that fit worst are left out in turn, and all of the last ones.
_WORST, _LAST = 5, 4
# In a log of more than so many measurements none bends all others: to leave one out takes about
# its squared deviation off chi-squared, and less than this share of the greatest is no suspect.
_MANY, _SUSPECT_SHARE = 20, 1 / 3
# Chi-squared that is no better by this is alike, and then the later one is meant.
_ALIKE = 1.0


def require_agreement(
    entries: Sequence[Entry],
    found: FitEstimate,
    learn: Callable[..., FitEstimate],
    units: System,
    mend: Callable[[int], str],
) -> None:
    """Refuse entries whose measurements contradict each other, by the one that is suspect.

    `mend` says how an entry, counted from 1, is put right.
    """
    if found.observations and not found.misfit.is_chance():
        fits = suspect(entries, found, learn)
        raise contradiction(fits, found.misfit, units, mend(fits.entry))


def suspect(
    entries: Sequence[Entry],
    found: FitEstimate,
    learn: Callable[..., FitEstimate],
) -> Observation:
    """Find the measurement without which all others go together best; of two alike the later.

    A misfit bends the estimate so far that what fits it worst need not be what is wrong: each that
    may be is left out in turn. What is returned holds what all others foretell of it.
    """
    observed = found.observations
    tried = sorted(range(len(observed)), key=lambda at: abs(observed[at].off))[-_WORST:]
    tried = sorted({*tried, *range(max(len(observed) - _LAST, 0), len(observed))})
    least, best = math.inf, None
    if len(observed) > _MANY:
        least_off = _SUSPECT_SHARE * abs(worst(observed).off)
        tried = [at for at in tried if abs(observed[at].off) >= least_off]
    for at in tried:
        with suppress(NoConvergence):
            without = learn(_without(entries, observed[at]), found, letter=True)
            if without.misfit.chi_squared <= least + _ALIKE:
                least = min(without.misfit.chi_squared, least)
                best = _foretold(found, at, without)
    return best or worst(observed)


def _without(entries: Sequence[Entry], left_out: Observation) -> list[Entry]:
    kept = list(entries)
    entry = kept.pop(left_out.entry - 1)
    if isinstance(entry, MeasuredEntry) and None not in (entry.half_stop_mm, entry.closed_mm):
        half_stop = left_out.what == "half_stop"
        other = replace(entry, half_stop_mm=None) if half_stop else replace(entry, closed_mm=None)
        kept.insert(left_out.entry - 1, other)
    return kept


def _foretold(found: FitEstimate, at: int, without: FitEstimate) -> Observation:
    """Set a measurement against what an estimate without it says."""
    measured = found.rows.measured[at]
    place, ask, count = measured.place, measured.row.ask, measured.row.count
    estimate = float(found.rows.said(ask, without.x, count)[place])
    slopes = np.asarray(found.rows.slopes(ask, without.x, count)[place])
    sd = math.sqrt(float(slopes @ without.covariance @ slopes) + measured.sd**2)
    return replace(found.observations[at], estimate=estimate, sd=sd, leverage=0.0)
