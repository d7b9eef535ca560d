"""What to measure next: how much surer each figure would be."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from backspring.errors import Error
from backspring.fit.ask import Ask, ask_of, place_of
from backspring.fit.goodness import DIAL_MM
from backspring.fit.log_entry import FigureEntry, FigureKind
from backspring.fit.log_rows import POSITIONS

if TYPE_CHECKING:
    from backspring.fit.estimate import Figured, FitEstimate
    from backspring.fit.knife_model import Array

_WEIGHT_N = 2.0 * 9.80665
_WORTH = 0.9
_LISTED = 4


@dataclass(frozen=True, slots=True)
class NextMeasurement:
    """One measurement that a bench can make, and what it would do to one figure.

    `what` names the measurement, `station_mm` where the weight hangs or the caliper goes;
    `sd_then` is the standard deviation of the figure if it were made.
    """

    what: str
    station_mm: float | None
    figure: str
    sd_now: float
    sd_then: float


def next_measurements(found: FitEstimate, spread_mm: float | None = None) -> list[NextMeasurement]:
    """List those that would tell most, each once, with the figure that it tells most of.

    sd_then^2 = sd^2 - (g' C h)^2/(h' C h + s^2), with g and h the slopes of figure and measurement,
    C the covariance, s what one measurement is good to.
    """
    listed = []
    for what, station, slope, sd in _candidates(found, spread_mm or DIAL_MM):
        best = min(
            (
                NextMeasurement(
                    what,
                    station,
                    name,
                    figure.sd,
                    _then(found, figure, slope, sd),
                )
                for name, figure in found.figures.items()
                if figure.sd > 0.0
            ),
            key=lambda each: each.sd_then / each.sd_now,
        )
        if best.sd_then < _WORTH * best.sd_now:
            listed.append(best)
    return sorted(listed, key=lambda each: each.sd_then / each.sd_now)[:_LISTED]


def _then(found: FitEstimate, figure: Figured, slope: Array, sd: float) -> float:
    toward = found.covariance @ slope
    less = float((figure.slopes @ toward) ** 2 / (slope @ toward + sd**2))
    return math.sqrt(max(figure.sd**2 - less, 0.0))


def _candidates(
    found: FitEstimate, spread_mm: float
) -> Iterator[tuple[str, float | None, Array, float]]:
    """List what a bench can measure: name, station, slopes, standard deviation."""
    rows, count = found.rows, len(found.rows.ground)
    for state in ("loaded", "unloaded"):
        slopes = rows.slopes(Ask(state), found.x, count, every=True)
        for place, position in enumerate(POSITIONS):
            if position == "closed" or rows.model.square:
                yield f"{position}_{state}", None, slopes[place], spread_mm
    for entry in _figures(found):
        try:
            slope = rows.slopes(ask_of(entry), found.x, count)[place_of(entry)]
        except Error:
            continue
        if np.any(slope != 0.0):
            yield entry.kind, entry.station_mm, slope, rows.figure_sd(entry)


def _figures(found: FitEstimate) -> Iterator[FigureEntry]:
    pulls: tuple[tuple[FigureKind, str], ...] = (
        ("pull_n", "peak_pull_n"),
        ("closing_pull_n", "closing_peak_pull_n"),
    )
    for kind, name in pulls:
        if name in found.figures:
            yield FigureEntry(kind, found.figures[name].value)
    now = found.now
    yield FigureEntry("moved_mm", 0.0, now.tang.pivot_mm, _WEIGHT_N)
    yield FigureEntry("thickness_mm", 0.0, 0.5 * now.tang.pivot_mm)
    yield FigureEntry("tip_mm", 0.0)
    if now.hardness.spring_hrc is not None:
        yield FigureEntry("hardness_hrc", now.hardness.spring_hrc)
