"""Learns from a fitting log what a drawing cannot know about one knife.

The core's bounded least squares. Unknown are how far the half-stop face and the closed side stand
from the drawing, the tilt of the pad at open, the pivot's play, the root's rotation, and every
depth ground. Each is expected somewhere within its own spread, so that what the readings cannot
tell stays there.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from backspring import _core
from backspring.errors import Error, NoConvergence
from backspring.fit.log_entry import Entry
from backspring.fit.log_rows import GAPES, Array, LogRows
from backspring.fit.misfit import Observation

# A gauge is never better than this.
LEAST_SPREAD_MM = 0.0005
_KNOWN = 0.5
# In standard deviations; readings carry a rounding that hides what the sum gains much below it.
_RULES = _core.LeastSquaresRules(tolerance=1e-4)


@dataclass(frozen=True, slots=True)
class Learned:
    """One unknown: value, standard deviation, and whether the readings tell it."""

    value: float
    spread: float
    known: bool


@dataclass(frozen=True, slots=True)
class FitEstimate:
    """What a log tells about the knife as it stands.

    `now` is the core's design of it; readings are loaded, each with its standard deviation.
    `observations` are the log's readings with what the estimate says of each.
    """

    now: _core.Design
    unknowns: _core.FitUnknowns
    half_stop_loaded_mm: float | None
    half_stop_spread_mm: float | None
    closed_loaded_mm: float
    closed_spread_mm: float
    pad_tilt_rad: Learned
    pivot_play_mm: Learned
    root_stiffness_nmm_per_rad: Learned
    observations: tuple[Observation, ...]


def learn(design: _core.Design, entries: Sequence[Entry], spread_mm: float) -> FitEstimate:
    """Learn from all entries, at least one of them measured.

    Raises NoConvergence when no knife of this design could have read so.
    """
    spread_mm = max(spread_mm, LEAST_SPREAD_MM)
    try:
        sides = [LogRows(design, entries, spread_mm, gapes) for gapes in GAPES]
        first = _search(sides[0], sides[0].start())
        second = _search(sides[1], np.asarray(first.x))
        better = (sides[0], first) if _sum(first) <= _sum(second) else (sides[1], second)
        return _estimate(*better)
    except Error as error:
        raise NoConvergence(f"the log cannot be this design's: {error}") from None


def _search(rows: LogRows, start: Array) -> _core.LeastSquares:
    return _core.least_squares(rows.residuals, rows.unknowns(start), _RULES)


def _sum(found: _core.LeastSquares) -> float:
    return found.chi_squared + found.expected_chi_squared


def _estimate(rows: LogRows, found: _core.LeastSquares) -> FitEstimate:
    unknowns = rows.unknowns(np.asarray(found.x))
    x, count = np.asarray(found.x), len(rows.ground)
    half, closed = (float(each) for each in rows.readings("loaded", x, count))
    # An unknown at its bound may still be anywhere inward of it.
    covariance = np.asarray(found.covariance_released)
    slopes = rows.slopes("loaded", x, count)
    spreads = np.sqrt(np.einsum("ij,jk,ik->i", slopes, covariance, slopes))
    square = rows.design.tang.half_stop_mm is not None
    tilt, play, root = (_learned(unknowns[place], found, place) for place in (2, 3, 4))
    stiffness = 1.0 / max(rows.root + root.value, 1e-3 * rows.root_scale)
    return FitEstimate(
        now=rows.knife(x),
        unknowns=_core.FitUnknowns(
            pad_tilt_rad=tilt.value,
            pivot_play_mm=play.value,
            extra_root_rad_per_nmm=root.value,
        ),
        half_stop_loaded_mm=half if square else None,
        half_stop_spread_mm=float(spreads[0]) if square else None,
        closed_loaded_mm=closed,
        closed_spread_mm=float(spreads[1]),
        pad_tilt_rad=tilt,
        pivot_play_mm=play,
        root_stiffness_nmm_per_rad=Learned(stiffness, stiffness**2 * root.spread, root.known),
        observations=tuple(rows.compare(x)),
    )


def _learned(unknown: _core.Unknown, found: _core.LeastSquares, place: int) -> Learned:
    spread = math.sqrt(found.covariance_released[place, place])
    known = spread < _KNOWN * unknown.expected_sd and not found.at_bound[place]
    return Learned(float(found.x[place]), spread, known)
