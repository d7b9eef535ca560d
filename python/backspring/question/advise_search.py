"""Finds the smallest change, or two, that meets what is wanted.

Each change alone is tried at a few values; the logarithms of pull and margins along it make its
curve. Of two changes the curves add up, but for a product of both that a trial settles. The least
change that should do is tried, the curves are mended by what it gives, and so on: a secant method.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from backspring.question.advise_steps import Change, Values
from backspring.question.advise_trials import Moves, Trial, Trials

Grid = npt.NDArray[np.float64]
# Where along the way to its limit a change is tried first; several blades take their time.
_NODES = (0.1, 0.35, 0.65, 1.0)
_NODES_OF_SEVERAL = (0.3, 1.0)
_ROUNDS, _ROUNDS_OF_SEVERAL = 8, 4
# Beyond hope: what is wanted is missed by this share wherever the curves are followed.
_HOPELESS, _HOPELESS_OF_SEVERAL = -0.4, -0.2
_MISSES = 3
_GUARD = 1e-3
_FELT = 3e-3


class Search:
    """Curves of every change, and what they lead to."""

    def __init__(self, trials: Trials) -> None:
        self.trials = trials
        # Faces are fitted in each trial: a reading has no curve.
        self.followed = np.array([name != "reading" for name in trials.names])
        self.curves = [_Curve(trials, place) for place in range(len(trials.changes))]

    @property
    def felt(self) -> list[int]:
        """Places of the changes that change anything that is judged."""
        return [place for place, curve in enumerate(self.curves) if curve.reach > _FELT]

    def solve(self, places: Sequence[int], wanted: Sequence[int]) -> Trial | None:
        """Find the least change of one or two numbers that meets the wanted targets.

        `places` are those of the changes, `wanted` those of the targets.
        """
        plane = _Plane(self, places, np.isin(np.arange(self.followed.size), wanted))
        misses = 0
        for _ in range(_ROUNDS if self.trials.of_one else _ROUNDS_OF_SEVERAL):
            if self.trials.checks.spent:
                return None
            picked = plane.pick()
            if picked is None or (misses := misses + (not picked.hopeful)) > _MISSES:
                return None
            trial = plane.tried(picked)
            if trial.works and all(trial.met[each] for each in wanted):
                return self._smaller(plane, trial, wanted)
        return None

    def _smaller(self, plane: _Plane, trial: Trial, wanted: Sequence[int]) -> Trial:
        """Look among the finer values about a trial for one that changes less."""
        plane.narrow(trial)
        for _ in range(_MISSES):
            picked = None if self.trials.checks.spent else plane.pick()
            if picked is None or not picked.hopeful or picked.size >= self.size(trial):
                break
            found = plane.tried(picked)
            if found.works and all(found.met[each] for each in wanted):
                return found
        return trial

    def size(self, trial: Trial) -> float:
        """How large a change is; the root of the sum of squares of two."""
        sizes = [self.trials.changes[place].size(value) for place, value in trial.moves]
        return float(np.hypot.reduce([0.0, *sizes]))


class _Curve:
    """What is judged along one change, against what is drawn."""

    def __init__(self, trials: Trials, place: int) -> None:
        self.change, self._drawn = trials.changes[place], trials.drawn.shares
        self.nodes: dict[float, Grid] = {}
        if not trials.drawn.works:
            return
        for side in (-1, 1):
            for value in _first_values(
                self.change, side, _NODES if trials.of_one else _NODES_OF_SEVERAL
            ):
                trial = trials.at((place, value))
                if not trial.works and not self.change.words:
                    self._approach(trials, place, value)
                    break
                self.add(value, trial)

    def add(self, value: float, trial: Trial) -> None:
        """Take in what a trial says."""
        if trial.works and np.isfinite(trial.shares[~np.isnan(self._drawn)]).all():
            self.nodes[value] = trial.shares - self._drawn

    @property
    def reach(self) -> float:
        """The largest change of anything judged."""
        return max((float(np.nanmax(np.abs(each))) for each in self.nodes.values()), default=0.0)

    def within(self, values: Values) -> Values:
        """Leave out values beyond those that were seen to work."""
        known = [self.change.now, *self.nodes]
        if self.change.words:
            return values[np.isin(values, known)]
        return values[(values >= min(known)) & (values <= max(known))]

    def at(self, values: Values) -> Grid:
        """Follow the curve; a row a value."""
        nodes = {self.change.now: np.zeros_like(self._drawn), **self.nodes}
        places = sorted(nodes)
        columns = np.array([nodes[each] for each in places]).T
        return np.array([np.interp(values, places, column) for column in columns]).T

    def _approach(self, trials: Trials, place: int, beyond: float) -> None:
        """Come nearer to a value that does not work."""
        known = [
            each for each in self.nodes if (each > self.change.now) == (beyond > self.change.now)
        ]
        good = max(known, key=lambda each: abs(each - self.change.now), default=self.change.now)
        for _ in range(4):
            half = float(self.change.near(0.5 * (good + beyond), 0)[0])
            trial = trials.at((place, half))
            if trial.works:
                self.add(half, trial)
                good = half
            else:
                beyond = half


def _first_values(change: Change, side: int, nodes: Sequence[float]) -> list[float]:
    if change.words:
        return [float(each) for each in change.values if side > 0 and each != change.now]
    end = change.high if side > 0 else change.low
    wanted = [change.now + share * (end - change.now) for share in nodes]
    values = dict.fromkeys(float(change.near(each, 0)[0]) for each in wanted)
    return [each for each in values if each != change.now]


@dataclass(frozen=True)
class _Picked:
    where: tuple[int, ...]
    moves: Moves
    size: float
    hopeful: bool


class _Plane:
    """The values that one or two changes can have together, and what they should give."""

    def __init__(
        self, search: Search, places: Sequence[int], wanted: npt.NDArray[np.bool_]
    ) -> None:
        self._search, self._places = search, tuple(places)
        self._judged = wanted & search.followed
        self._product = np.zeros(wanted.size)
        self._set([search.trials.changes[place].coarse() for place in places])

    def _set(self, values: Sequence[Values]) -> None:
        curves = [self._search.curves[place] for place in self._places]
        self._values = [c.within(each) for c, each in zip(curves, values, strict=True)]
        self._sizes = [c.change.size(each) for c, each in zip(curves, self._values, strict=True)]
        self._done = np.zeros([each.size for each in self._values], dtype=bool)

    def narrow(self, trial: Trial) -> None:
        """Go on with every value about a trial, as far as the coarse ones are apart."""
        at, changes = dict(trial.moves), self._search.trials.changes
        fine = []
        for place in self._places:
            change = changes[place]
            apart = max(1, -(-change.values.size // 60))
            fine.append(change.near(at.get(place, change.now), apart))
        self._set(fine)

    def _shares(self) -> Grid:
        """Add the curves up: what each should give; the last axis runs over what is judged."""
        shares = np.asarray(self._search.trials.drawn.shares)
        for axis, place in enumerate(self._places):
            along = self._search.curves[place].at(self._values[axis])
            shape = [1] * len(self._places) + [shares.shape[-1]]
            shape[axis] = along.shape[0]
            shares = shares + along.reshape(shape)
        if len(self._places) == 2:
            shares = shares + np.multiply.outer(np.multiply.outer(*self._sizes), self._product)
        return shares

    def pick(self) -> _Picked | None:
        """Pick the least change that should do, or what comes nearest; None past hope."""
        if not self._judged.any() or self._done.all():
            return None
        room = self._search.trials.room_of(self._shares())[..., self._judged].min(axis=-1)
        room[self._done | np.isnan(room)] = -np.inf
        size = np.hypot.reduce(np.array(np.meshgrid(*self._sizes, indexing="ij")))
        good = room >= _GUARD
        best = np.where(good, -size, -np.inf) if good.any() else room
        where = np.unravel_index(int(np.argmax(best)), best.shape)
        of_one = self._search.trials.of_one
        if room[where] < (_HOPELESS if of_one else _HOPELESS_OF_SEVERAL):
            return None
        values = [float(each[i]) for each, i in zip(self._values, where, strict=True)]
        moves = tuple(zip(self._places, values, strict=True))
        return _Picked(where, moves, float(size[where]), bool(good[where]))  # type: ignore[arg-type]

    def tried(self, picked: _Picked) -> Trial:
        """Try it, and mend the curves by what it gives."""
        trial = self._search.trials.at(*picked.moves)
        self._done[picked.where] = True
        if not trial.works or not np.isfinite(trial.shares[self._judged]).all():
            return trial
        if len(picked.moves) == 1:
            (place, value), *_ = picked.moves
            self._search.curves[place].add(value, trial)
        else:
            both = float(np.prod([s[i] for s, i in zip(self._sizes, picked.where, strict=True)]))
            if abs(both) > 1e-3:
                missed = trial.shares - self._shares()[picked.where]
                self._product = self._product + np.nan_to_num(missed / both)
        return trial
