"""Which change of a design, or which two, would meet all of its targets, and at what price."""

from __future__ import annotations

import itertools
from collections.abc import Iterable, Iterator
from typing import Any

import numpy as np

from backspring.design.design import Design
from backspring.design.draft import Draft
from backspring.design.fields import row_of
from backspring.design.file_lines import written
from backspring.question.advise_changes import changes_of
from backspring.question.advise_faces import Faces
from backspring.question.advise_price import figures_of, short_of
from backspring.question.advise_result import Advice, Advised, Exclusive, Limit, Moved
from backspring.question.advise_search import Search
from backspring.question.advise_steps import Change
from backspring.question.advise_trials import Checks, Trial, Trials
from backspring.question.check import BladesCheck, Check, check
from backspring.unit_table import KINDS, Kind, System

# More pairs than these are told apart by nobody.
_PAIRS = 12
# Pairs that come nearest, looked at again for each set of targets.
_AGAIN = 6


def advise(design: Design, units: System | None = None) -> Advised:
    """Find the changes that meet every target of a design, and yield margin 1 where none is stated.

    Single changes, then two together, smallest first: thickness everywhere, a taper, width,
    preload, corner radius, pad, where pivot and rear pin stand, hardness or temper, steel. Each
    value is one that can be set in `units`, the design's own when none are given (0.01 mm or 0.0005
    in, between pins and for the pad 0.1 mm or 0.005 in, half a point of hardness), and stays within
    the limits that are told. Where the readings are a target, the tang's faces, or the kick, are
    ground to suit with every change. Each answer was checked as `check` does.

    Of several blades every one is judged. What changes is their spring's thickness, width and
    steel, and the preload and corner radius of each, or only of the one the design is seen from.
    """
    whole = design.of_every_blade()
    drawn = check(whole)
    only = design.blade if len(design.blades) > 1 and not design.of_all_blades else None
    draft = Draft.of(whole)
    system = units or design.units
    changes = changes_of(draft, system, design.blades, only)
    return _Advising(design, drawn, draft, changes, system).advised()


class _Advising:
    def __init__(
        self,
        design: Design,
        drawn: Check | BladesCheck,
        draft: Draft,
        changes: list[Change],
        units: System,
    ) -> None:
        self._design, self._drawn, self._draft = design, drawn, draft
        self._changes, self._units = changes, units
        self._checks = Checks()
        self._faces = Faces(draft, design.blades, units, self._checks)

    def advised(self) -> Advised:
        advice: list[Advice] = []
        nearest: Advice | None = None
        exclusive: tuple[Exclusive, ...] = ()
        if self._drawn.status == "fail":
            self._search = Search(Trials(self._draft, self._changes, self._faces, self._checks))
            advice = [*self._advice()]
            if not advice:
                nearest, exclusive = self._nearest(), tuple(self._exclusive())
            if self._checks.spent:
                # Not all was tried: what was not met may well be.
                exclusive = ()
        return Advised(
            original=self._design,
            units=self._units,
            targets=self._drawn.targets,
            figures=figures_of(self._drawn),
            advice=tuple(advice),
            nearest=nearest,
            exclusive=exclusive,
            limits=tuple(self._limit(each) for each in self._changes),
            faces=self._faces.keys,
            works=_is_possible(self._drawn),
            complete=not self._checks.spent,
        )

    def _advice(self) -> Iterator[Advice]:
        search, trials = self._search, self._search.trials
        if trials.drawn.all_met:
            yield from self._checked([trials.drawn])
            return
        every = range(len(trials.names))
        singles = [search.solve([place], every) for place in search.felt]
        alone = {trial.moves[0][0]: search.size(trial) for trial in singles if trial}
        pairs = (search.solve(pair, every) for pair in itertools.combinations(search.felt, 2))

        def worth(trial: Trial) -> bool:
            """Two changes are told where they are less than either that would do alone."""
            single = [alone[place] for place, _ in trial.moves if place in alone]
            return len(trial.moves) == 2 and search.size(trial) < min(single, default=np.inf)

        both = sorted((each for each in pairs if each and worth(each)), key=search.size)
        yield from self._checked(sorted(filter(None, singles), key=search.size))
        yield from itertools.islice(self._checked(both), _PAIRS)

    def _checked(self, trials: Iterable[Trial]) -> Iterator[Advice]:
        """Check each as it would be written; what rounding takes away is left out."""
        for trial in trials:
            advice = self._told(trial)
            if advice.met:
                yield advice

    def _told(self, trial: Trial) -> Advice:
        changes = {
            key: written(key, value, self._units, self._draft.value(key), self._design.units)
            for key, value in trial.changes.items()
            if value != self._draft.value(key)
        }
        made = self._design.of_every_blade().replace(**changes)
        found = check(made)
        seen = made if self._design.of_all_blades else made.seen_from(self._design.blade)
        return Advice(
            design=made if len(made.blades) == 1 else seen,
            changes=changes,
            moved=tuple(self._moved(trial, changes)),
            size=self._search.size(trial),
            figures=figures_of(found),
            targets=found.targets,
            falls_short=tuple(sorted(short_of(found) - short_of(self._drawn))),
            met=found.status == "pass",
        )

    def _moved(self, trial: Trial, changes: dict[str, Any]) -> Iterator[Moved]:
        for place, value in trial.moves:
            change = self._changes[place]
            was: float | str = change.now
            to: float | str = value
            if change.words:
                was, to = change.words[int(change.now)], change.words[int(value)]
            side = change.sides[value > 0] if change.sides else ""
            yield Moved(change.key, change.name, _kind(change), was, to, side)
        for key in self._faces.keys:
            if key in changes:
                was, to = self._draft.value(key), trial.changes[key]
                yield Moved(key, _face_name(key), "length", was, to, face=True)

    def _nearest(self) -> Advice | None:
        tried = self._search.trials.all()
        if not tried:
            return None
        return self._told(max(tried, key=lambda each: (sum(each.met), each.least_room)))

    def _exclusive(self) -> Iterator[Exclusive]:
        """Go through sets of targets, small ones first, for those that nothing meets together."""
        names, found = self._search.trials.names, list[tuple[int, ...]]()
        if not self._search.trials.drawn.works:
            return
        for count in range(1, len(names) + 1):
            for some in itertools.combinations(range(len(names)), count):
                if any({*each} <= {*some} for each in found) or self._can_meet(some):
                    continue
                found.append(some)
                best = {names[each]: self._best(each, some) for each in some}
                yield Exclusive(tuple(names[each] for each in some), best)

    def _can_meet(self, some: tuple[int, ...]) -> bool:
        tried = self._search.trials.all()
        if any(all(trial.met[each] for each in some) for trial in tried):
            return True
        ways = [*itertools.combinations(self._search.felt, 2)]
        if not self._search.trials.of_one:
            # Several blades take their time: those that came nearest are looked at again.
            ways = sorted(ways, key=lambda pair: -self._nearness(pair, some))[:_AGAIN]
        return any(self._search.solve(each, some) for each in ways)

    def _nearness(self, pair: tuple[int, ...], some: tuple[int, ...]) -> float:
        """Room that the best trial of a pair has left at some targets."""
        tried = self._search.trials.all()
        of_pair = [each for each in tried if {place for place, _ in each.moves} == {*pair}]
        return max((float(each.room[[*some]].min()) for each in of_pair), default=-np.inf)

    def _best(self, target: int, some: tuple[int, ...]) -> float | None:
        others = [each for each in some if each != target]
        tried = [t for t in self._search.trials.all() if all(t.met[each] for each in others)]
        if not tried:
            return None
        best = max(tried, key=lambda each: each.room[target])
        return float(np.exp(best.shares[target]))

    def _limit(self, change: Change) -> Limit:
        return Limit(
            change.key,
            change.name,
            _kind(change),
            change.now,
            change.low,
            change.high,
            change.step,
            change.sides is not None,
            change.words,
        )


def _is_possible(drawn: Check | BladesCheck) -> bool:
    results = drawn.result if isinstance(drawn, BladesCheck) else [drawn.result]
    return not any(each.impossible for each in results)


def _kind(change: Change) -> Kind:
    row = row_of(change.key)
    return "length" if row is None or change.words else KINDS[row.quantity]


def _face_name(key: str) -> str:
    lead, _, name = key.rpartition(".tang.")
    whose = f"{lead.removeprefix('blades.')}'s " if lead else ""
    words = {"half_stop": "half-stop face", "closed": "closed face", "kick.height": "kick"}
    return whose + words[name.removeprefix("tang.")]
