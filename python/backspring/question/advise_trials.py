"""Designs tried on the way to advice: changed, their faces fitted where need be, and judged."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

import numpy as np
import numpy.typing as npt

from backspring import _core
from backspring.design.draft import Draft
from backspring.errors import InvalidInput, NoConvergence
from backspring.question.advise_faces import Faces
from backspring.question.advise_steps import Change

# Each takes up to a tenth of a second: what is found until then is told.
MOST_CHECKS_OF_SEVERAL = 300
Moves = tuple[tuple[int, float], ...]
Column = npt.NDArray[np.float64]


@dataclass(frozen=True)
class Trial:
    """One design tried: what moved, what the file would say, and how each target stands.

    `shares` are logarithms of what is judged, NaN where nothing is; `room` is how far inside each
    target it is, as a share. A trial that cannot be made or does not work has neither.
    """

    moves: Moves
    changes: Mapping[str, Any]
    shares: Column
    room: Column
    met: tuple[bool, ...] = ()

    @property
    def works(self) -> bool:
        """Whether it can be made and works as a slip joint."""
        return bool(self.met)

    @property
    def all_met(self) -> bool:
        """Whether it meets every target."""
        return self.works and all(self.met)

    @property
    def least_room(self) -> float:
        """Room at the target that has least; below 0 where it is missed."""
        return float(self.room.min()) if self.works else -np.inf


class Trials:
    """Tries changes of one design, each once."""

    def __init__(self, draft: Draft, changes: list[Change], faces: Faces, checks: Checks) -> None:
        self.draft, self.changes, self.faces, self.checks = draft, changes, faces, checks
        self._known: dict[Moves, Trial] = {}
        core = draft.core()
        self.of_one = len(core.blades) == 1
        drawn = judged(checks(core))
        self.names = tuple(each.name for each in drawn)
        self.low = _limits(drawn, "low")
        self.high = _limits(drawn, "high")
        self.drawn = self.at()

    def at(self, *moves: tuple[int, float]) -> Trial:
        """Try values of some changes, by their places in the list."""
        moved = tuple(sorted((i, u) for i, u in moves if u != self.changes[i].now))
        if moved not in self._known:
            self._known[moved] = self._tried(moved)
        return self._known[moved]

    def all(self) -> list[Trial]:
        """Return every design tried that works."""
        return [each for each in self._known.values() if each.works]

    def room_of(self, shares: Column) -> Column:
        """How far inside its target each is; the last axis runs over the targets."""
        return np.minimum(shares - self.low, self.high - shares)

    def _tried(self, moves: Moves) -> Trial:
        try:
            draft = self.draft
            for place, value in moves:
                draft = draft.changed(self.changes[place].put(draft, float(value)))
            draft, checks = self.faces.fitted(draft)
        except (InvalidInput, NoConvergence):
            return self._none(moves)
        if not all(map(works, checks)):
            return self._none(moves)
        targets = judged(checks)
        shares = np.array([_share(each) for each in targets])
        return Trial(
            moves,
            draft.changes,
            shares,
            np.where(np.isnan(shares), -np.inf, self.room_of(shares)),
            tuple(each.met for each in targets),
        )

    def _none(self, moves: Moves) -> Trial:
        empty = np.full(len(self.names), np.nan)
        return Trial(moves, {}, empty, empty)


class Checks:
    """Checks every blade of a design, several on a coarser grid, and counts how often it did."""

    def __init__(self) -> None:
        self._count = 0
        self.spent = False

    def __call__(self, core: _core.Design) -> list[_core.Check]:
        """Check; raises InvalidInput for broken rules."""
        if len(core.blades) == 1:
            return [_core.check(core)]
        self._count += 1
        self.spent = self._count >= MOST_CHECKS_OF_SEVERAL
        return _core.check_blades(core)


def judged(checks: list[_core.Check]) -> list[_core.TargetResult]:
    """Every target at the blade that is worst."""
    return (
        checks[0].targets if len(checks) == 1 else _core.worst_targets([c.targets for c in checks])
    )


def works(check: _core.Check) -> bool:
    """Whether a blade stays and snaps beside all others, with numbers that can be."""
    strokes = [row.strokes for row in check.beside] or [check.strokes]
    return not check.impossible and all(strokes)


def _share(target: _core.TargetResult) -> float:
    """Logarithm of what is judged, in which changes add up; a spring without stress is fine."""
    if target.value is None:
        return np.inf if target.met else np.nan
    return float(np.log(max(target.value, 1e-9)))


def _limits(targets: list[_core.TargetResult], side: str) -> Column:
    none = -np.inf if side == "low" else np.inf
    held = [getattr(each, side) for each in targets]
    return np.array([none if limit is None else np.log(max(limit, 1e-9)) for limit in held])
