"""Learns from a log what a drawing cannot know about one knife.

The core's bounded least squares. Each unknown is expected somewhere within its own spread, so that
what the measurements cannot tell stays there.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Sequence
from contextlib import suppress
from dataclasses import replace
from functools import partial

import numpy as np

from backspring import _core
from backspring.design.design import Design
from backspring.errors import Error, NoConvergence
from backspring.fit.estimate import FitEstimate, estimate_of, misfit_of
from backspring.fit.habits import ShopHabits
from backspring.fit.knife_model import KnifeModel
from backspring.fit.log_entry import PULLS, Entry, FigureEntry, GroundEntry, MeasuredEntry
from backspring.fit.log_rows import GAPES, LEAST_SPREAD_MM, LogRows, ground_in
from backspring.fit.misfit import off_the_last
from backspring.fit.priors import AIMED_SHARE, DEPTH_SHARE, Leeway

# In standard deviations. Where a nose or a corner takes over, slopes jump by about so much. A sound
# log takes ten steps at most.
_RULES = _core.LeastSquaresRules(most_iterations=40, tolerance=1e-2)
# Of blades side by side now one, now the other holds the spring up: slopes jump where they change.
# Taken across so many times the usual step, a dial's repeatability or the width of a feeler, they
# hardly do. A search may stop there even so: two, of other slopes, that stop within a quarter of a
# standard deviation of one another, of all that is foretold and all that is unknown, have found it.
_BESIDE = (50.0, 200.0)
_ENDS_ALIKE = 0.25
# Loaded readings that lie farther off than this times what is expected were not read so.
_OFTEN_OFF = 2.0
# A dry joint's friction may lie so many times farther off than usual, a worn dial scatters so. Our
# choice, no source: dry steel on steel, 0.4 and over (from memory), is not beyond belief then.
_DRY, _WORN = 4.0, 2.5
# No reading of a worn dial lies farther off than this many of its standard deviations.
_ALL_WITHIN = 2.5
# From one reading to the next a worn dial goes astray by more than this, in standard deviations as
# stated, and as far back: two of a difference of two. A zero that moved goes one way.
_ASTRAY = 2.0 * math.sqrt(2.0)

_FACES_OF = {"half_stop": ("open", "half_stop"), "closed": ("open", "closed", "kick")}

_End = tuple[LogRows, _core.LeastSquares]


def learn(
    design: Design,
    entries: Sequence[Entry],
    spread_mm: float,
    habits: ShopHabits | None = None,
    before: FitEstimate | None = None,
    *,
    letter: bool = False,
) -> FitEstimate:
    """Learn from all entries, to the letter or, but for `letter`, with what makes them go together.

    Depths that the readings belie count as aimed at, not as measured; loaded readings may lie
    farther from the model than expected. Where the last loaded reading still lies off the
    estimate, this goes by the reading. An estimate that is not settled has a misfit that is not
    chance, and is good for telling that alone. `habits` of a shop are expected of its knives. What
    was asked of the model for the estimate `before` is not asked again.

    Raises NoConvergence when no knife of this design could have been measured so.
    """
    model = KnifeModel(design.core, ground_in(entries))
    if before is not None and before.rows.model.is_as(model):
        model = before.rows.model
    spread_mm = max(spread_mm, LEAST_SPREAD_MM)
    rows = partial(LogRows, design, entries, spread_mm, model=model, habits=habits)
    found = _learn(design, rows, Leeway())
    for leeway in () if letter else _leeways(entries):
        if found.misfit.is_chance():
            break
        with suppress(NoConvergence):
            wider = _learn(design, rows, leeway)
            found = wider if wider.misfit.is_chance() and _is_scatter(wider) else found
    if not found.misfit.is_chance() or off_the_last(found.observations) is None:
        return found
    so = _learn(design, rows, replace(found.leeway, by_reading=True))
    return replace(so, misfit=found.misfit, observations=found.observations)


def _leeways(entries: Sequence[Entry]) -> Iterator[Leeway]:
    stated = any(isinstance(each, GroundEntry) and each.depth_mm for each in entries)
    loaded = any(isinstance(each, MeasuredEntry) and each.state == "loaded" for each in entries)
    if stated:
        yield Leeway(depth_share=AIMED_SHARE)
    if loaded:
        yield Leeway(offset=_OFTEN_OFF)
    if stated and loaded:
        yield Leeway(depth_share=AIMED_SHARE, offset=_OFTEN_OFF)
    if any(isinstance(each, FigureEntry) and each.kind in PULLS for each in entries):
        yield Leeway(friction=_DRY)
    share = AIMED_SHARE if stated else DEPTH_SHARE
    if any(isinstance(each, MeasuredEntry) for each in entries):
        yield Leeway(depth_share=share, dial=_WORN)


def _is_scatter(found: FitEstimate) -> bool:
    """Say whether a worn dial explains it, where none stands out and they go astray both ways.

    A slip stands out; a dial whose zero moved is off one way from then on, and a worn one is not.
    """
    if found.leeway.dial == 1.0:
        return True
    read = [each for each in found.observations if each.state]
    steps = [*_steps(found)]
    one_way = max(steps, default=0.0) < _ASTRAY or min(steps, default=0.0) > -_ASTRAY
    return not one_way and all(abs(each.off) <= _ALL_WITHIN for each in read)


def _steps(found: FitEstimate) -> Iterator[float]:
    """Yield how far each reading goes astray from the one before of the same thing.

    One from which an unknown depth parts it tells nothing: that depth takes half of it.
    """
    before: dict[tuple[str, str, int], float] = {}
    for each, measured in zip(found.observations, found.rows.measured, strict=True):
        if each.state:
            faces = _FACES_OF[each.what]
            ground = found.rows.ground[: measured.row.count]
            parted = sum(trip.depth_mm is None and trip.face in faces for trip in ground)
            astray, thing = -found.leeway.dial * each.residual, (each.what, each.state, parted)
            yield astray - before.get(thing, astray)
            before[thing] = astray


def _learn(design: Design, rows: Callable[..., LogRows], leeway: Leeway) -> FitEstimate:
    try:
        sides = [rows(gapes, leeway) for gapes in GAPES]
        return estimate_of(design, *_better(sides))
    except Error as error:
        raise NoConvergence(f"the log cannot be this design's: {error}") from None


def _better(sides: Sequence[LogRows]) -> _End:
    """Search on each side of the kink; a side on which the search finds no rest leaves the other.

    Where no side has a rest, the lower counts if all searches on that side end alike, or if it is a
    misfit even there: then that is told. Raises NoConvergence otherwise.
    """
    found: list[_End] = []
    for wider in _BESIDE if _stand_beside(sides[0].drawn) else (1.0,):
        found += _ends(sides, wider)
        if settled := [each for each in found if each[1].converged]:
            return min(settled, key=_sum)
    if found:
        least = min(found, key=_sum)
        others = [each for each in found if each[0] is least[0] and each is not least]
        alike = any(_apart(each, least) < _ENDS_ALIKE for each in others)
        if alike or not misfit_of(*least).is_chance():
            return least
    raise NoConvergence(
        "no knife of it reads and pulls so; look whether every value and unit is as it was"
    )


def _ends(sides: Sequence[LogRows], wider: float) -> Iterator[_End]:
    """Search on each side; where one comes to rest the next starts."""
    start = sides[0].start()
    for rows in sides:
        rows.wider = wider
        with suppress(NoConvergence):
            answer = _core.search_least_squares(rows.residuals, rows.unknowns(start), _RULES)
            yield rows, answer
            start = np.asarray(answer.x) if answer.converged else start


def _stand_beside(drawn: _core.Design) -> bool:
    """Say whether another blade stands beside the own one, at its end of the spring."""
    return any(each.end == drawn.blades[0].end for each in drawn.blades[1:])


def _apart(end: _End, other: _End) -> float:
    """Say how far apart two searches of one side end, in standard deviations."""
    expected_sds = np.array([each.sd for each in end[0].priors])
    foretold = np.asarray(end[1].residuals) - np.asarray(other[1].residuals)
    unknown = (np.asarray(end[1].x) - np.asarray(other[1].x)) / expected_sds
    return math.hypot(*foretold, *unknown)


def _sum(end: _End) -> float:
    return end[1].chi_squared + end[1].expected_chi_squared
