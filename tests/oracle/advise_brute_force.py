"""Advice against brute force: `python advise_brute_force.py 200 [FIRST]`. All data is invented.

Draws designs by rule, each with targets near what it does. Where advice is found it is checked
once more as it would be written. Where none is found, every value of a grid over each change, and
over each two, is tried within the same limits: with faces ground by a method of its own.
"""

from __future__ import annotations

import itertools
import sys
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np

import backspring as bs
from backspring import _core
from backspring.design.draft import Draft
from backspring.question.advise_changes import changes_of
from backspring.question.advise_steps import Change
from designs import generated_designs

# Values tried of each change alone, and of each of two.
VALUES = (41, 9)


@dataclass(frozen=True)
class Found:
    """What one design came to."""

    label: str
    kind: str
    ways: int
    wrong: tuple[str, ...]


def drawn_designs(n: int, first: int = 0, seed: int = 12) -> Iterator[tuple[str, bs.Design]]:
    """Designs of every kind with targets: each number is the same design whichever are drawn."""
    tables = generated_designs(first + n, seed)
    for number in range(first, first + n):
        label, table = tables[number]
        yield f"{label} ({number})", _with_targets(table, np.random.default_rng([seed, number]))


def _with_targets(table: dict[str, Any], rng: np.random.Generator) -> bs.Design:
    spring = {
        key: v for key, v in table["spring"].items() if key not in ("youngs_modulus", "poisson")
    }
    if isinstance(spring["support"], dict):
        spring["support"] = spring["support"]["root_stiffness"]
    spring |= {"steel": str(rng.choice(["O1", "1095", "5160"])), "hardness": _half(rng, 42, 50)}
    content = {**table, "spring": spring, "name": "Drawn", "units": "mm"}
    content["blade"] = {"nail_nick": round(float(rng.uniform(22, 40)), 1)}
    content["friction"] = {"spring": 0.12, "pivot": 0.12, "pivot_pin": 3.0}
    design = bs.Design(**content)
    pulls = [stroke.peak_pull_n for stroke in bs.check(design).strokes]
    about = max(pulls, default=10.0) * float(np.exp(rng.normal(0.0, 0.4)))
    targets: dict[str, Any] = {"pull": [round(0.85 * about, 2), round(1.15 * about, 2)]}
    targets["yield_margin"] = round(float(rng.uniform(1.0, 1.3)), 2)
    if rng.random() < 0.5:
        targets["reading"] = 0.03
    if rng.random() < 0.5:
        targets["openings"] = float(rng.choice([20_000, 100_000]))
    return design.replace(**{f"targets.{key}": v for key, v in targets.items()})


def _half(rng: np.random.Generator, low: float, high: float) -> float:
    return round(2.0 * float(rng.uniform(low, high))) / 2.0


def compare(label: str, design: bs.Design, values: tuple[int, int] = VALUES) -> Found:
    """Advise on a design and hold it against brute force."""
    advised = bs.advise(design)
    if advised.status == "pass":
        return Found(label, "meets its targets", 0, ())
    ways = len(advised.advice)
    wrong = [f"way {i} fails" for i, way in enumerate(advised.advice, 1) if not _good(design, way)]
    grid = Grid(design, values)
    if not any(sum(not m.face for m in way.moved) < 2 for way in advised.advice):
        wrong += [f"single {hit}" for hit in grid.singles()]
    if ways:
        return Found(label, "advice found", ways, tuple(wrong))
    wrong += [f"pair {hit}" for hit in grid.pairs()]
    return Found(label, "none found", 0, tuple(wrong))


def _good(design: bs.Design, way: bs.Advice) -> bool:
    """Whether a way, put into the design as it would be written, meets every target."""
    again = bs.check(design.replace(**way.changes))
    return again.status == "pass" and way.met


class Grid:
    """Every change at a few values alike apart, none of them chosen by advice."""

    def __init__(self, design: bs.Design, values: tuple[int, int]) -> None:
        self._values = values
        self._draft = Draft.of(design)
        self._changes = changes_of(self._draft, design.units, design.blades)

    def singles(self) -> list[str]:
        """Values of one change that meet every target."""
        return self._hits((change,) for change in self._changes)

    def pairs(self) -> list[str]:
        """Values of two changes that do."""
        return self._hits(itertools.combinations(self._changes, 2))

    def _hits(self, several: Any) -> list[str]:
        found = []
        for changes in several:
            count = self._values[len(changes) - 1]
            for values in itertools.product(*(_spread(each, count) for each in changes)):
                if self._meets(changes, values):
                    said = zip((each.name for each in changes), values, strict=True)
                    found.append(", ".join(f"{name} {value:g}" for name, value in said))
                    break
        return found

    def _meets(self, changes: Sequence[Change], values: Sequence[float]) -> bool:
        draft = self._draft
        try:
            for change, value in zip(changes, values, strict=True):
                draft = draft.changed(change.put(draft, value))
            check = _core.check(ground(draft).core())
        except (bs.InvalidInput, bs.NoConvergence):
            return False
        return bool(check.strokes) and not check.impossible and all(t.met for t in check.targets)


def _spread(change: Change, count: int) -> list[float]:
    places = np.unique(np.linspace(0, change.values.size - 1, count).round().astype(int))
    return [float(each) for each in change.values[places]]


def ground(draft: Draft) -> Draft:
    """Grind each face by what it reads, over and over, where the readings are a target."""
    most_mm = draft.value("targets.reading")
    if most_mm is None:
        return draft
    kick = draft.value("tang.kick.height") is not None
    faces = {"half_stop": "tang.half_stop", "closed": "tang.kick.height" if kick else "tang.closed"}
    for _ in range(8):
        read = {p.name: p.reading_loaded_mm for p in _core.check(draft.core()).positions}
        off = {key: read.get(name) for name, key in faces.items() if read.get(name) is not None}
        if max(map(abs, off.values()), default=0.0) <= 0.9 * most_mm:
            break
        draft = draft.changed({key: draft.value(key) - each for key, each in off.items()})
    return draft


def main(n: int, first: int) -> int:
    """Compare n designs and print what they come to; returns the number that went wrong."""
    kinds: Counter[str] = Counter()
    wrong = ways = 0
    for label, design in drawn_designs(n, first):
        found = compare(label, design)
        kinds[found.kind] += 1
        ways += found.ways
        wrong += bool(found.wrong)
        for each in found.wrong:
            print(f"{found.label}: {found.kind}: {each}", flush=True)
    for kind, count in sorted(kinds.items()):
        print(f"{kind:<20}{count:>6}")
    print(f"{'ways checked again':<20}{ways:>6}\n{'wrong':<20}{wrong:>6}")
    return wrong


if __name__ == "__main__":
    numbers = [int(each) for each in sys.argv[1:]] or [20]
    sys.exit(main(numbers[0], numbers[1] if len(numbers) > 1 else 0) > 0)
