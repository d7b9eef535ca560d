"""Which dimension causes how much of what differs between two designs.

Along the straight way from one to the other the change of a figure is the integral of its gradient,
and each key's part of it is that key's contribution: no order of changing one after the other has
to be chosen. Gauss-Legendre points; the derivatives are central differences of the whole check, so
that every figure has them, and a profile counts as one key.
"""

from __future__ import annotations

from collections.abc import Sequence
from contextlib import suppress
from dataclasses import dataclass
from typing import Literal

import numpy as np
import numpy.typing as npt

from backspring import _core
from backspring.errors import Error
from backspring.question.compare_figures import MAIN, Figures, figures_of
from backspring.question.path import Part, Path, Second

Sort = Literal["number", "kind", "together"]
Array = npt.NDArray[np.float64]
_NODES, _WEIGHTS = np.polynomial.legendre.leggauss(4)
# A difference moves no number by more than this share of itself, or of 0.1.
_STEP = 1e-4
_SMALL = 0.1
# The way is cut in two where its integral misses the change by more than this share.
_GOOD = 1e-4
_MOST_PIECES = 8
# Checks of a moved key that a comparison may cost, on the whole.
_MOST_SLOPES = 320
# Where a peak lies is known to the root of what its height is: too coarse to differentiate.
_PLACES = ("peak_torque_angle_deg", "peak_stress_angle_deg", "_station_mm")
# What is left below this share of the parts, or of the figure, is rounding of the quadrature.
_ROUNDING = 1e-6
_ROUNDING_OF_FIGURE = 1e-7


@dataclass(frozen=True, slots=True)
class Cause:
    """A part of what differs: a key's numbers, all that differs in kind, or what acts together.

    `changes` are the parts of each figure's change; they add up to it over all causes. `together`
    is what the integral leaves: where a figure jumps on the way, no key has it alone.
    """

    key: str
    sort: Sort
    a: tuple[object, ...]
    b: tuple[object, ...]
    changes: dict[str, float]


def find_causes(path: Path, a: Figures, b: Figures) -> tuple[Cause, ...]:
    """Share out the change of every figure that both have; not where a peak lies, only how high."""
    names = [
        name
        for name in a
        if a[name] is not None and b.get(name) is not None and not name.endswith(_PLACES)
    ]
    if not names or not (path.numbers or path.kinds):
        return ()
    first, last = _row(a, names), _row(b, names)
    table, apart = _averaged(_Walk(path, names), first, last)
    rounding = _ROUNDING * np.abs(table).sum(axis=0) + _ROUNDING_OF_FIGURE * np.maximum(
        np.abs(first), np.abs(last)
    )
    table[np.abs(table) <= rounding] = 0.0
    rest = last - first - table.sum(axis=0)
    # Rounding goes to the greatest part, so that the parts add up to the last digit.
    small = np.flatnonzero(np.abs(rest) <= len(table) * rounding)
    table[np.abs(table).argmax(axis=0)[small], small] += rest[small]
    rest[small] = 0.0
    found = []
    rows = [row.tolist() for row in (*table, rest)]
    for part, row in zip((*_parts(path, apart), None), rows, strict=True):
        changes = dict(zip(names, row, strict=True))
        if not any(row):
            continue
        if part is None:
            found.append(Cause("", "together", (), (), changes))
        else:
            sort: Sort = "number" if part in path.numbers else "kind"
            stated = path.stated(part)
            found.append(Cause(part.key, sort, stated.a, stated.b, changes))
    return tuple(found)


def _parts(path: Path, apart: bool) -> tuple[Part, ...]:
    """Return what the rows of a table are of: all that differs in kind is one where it must be."""
    if apart or not path.kinds:
        return (*path.numbers, *path.kinds)
    key = ", ".join(part.key for part in path.kinds)
    a = tuple(value for part in path.kinds for value in part.a)
    b = tuple(value for part in path.kinds for value in part.b)
    return (*path.numbers, Part(key, a, b))


def _row(figures: Figures, names: Sequence[str]) -> Array:
    return np.array([np.nan if (v := figures.get(name)) is None else v for name in names])


def _averaged(walk: _Walk, first: Array, last: Array) -> tuple[Array, bool]:
    """Table of parts, a row a cause, and whether what differs in kind could be told apart.

    Kinds change before the numbers, and after them in the opposite order: the mean of both ways is
    what turns its sign when the designs change places.
    """
    kinds = walk.path.kinds
    ways = []
    for kinds_first in (True, False) if kinds else (False,):
        with suppress(Error):
            parts, start, end = walk.whole(kinds_first)
            ways.append((kinds_first, parts, start - first if kinds_first else last - end))
    if not ways:
        # Nothing stands between the designs: what differs in kind is all that can be told.
        nothing = np.zeros((len(walk.path.numbers), first.size))
        return np.vstack([nothing, last - first] if kinds else [nothing]), not kinds
    if not kinds:
        return _mean([ways[0][1]]), True
    with suppress(Error):
        steps = [walk.steps(kinds_first) for kinds_first, _, _ in ways]
        return _mean([np.vstack([w[1], s]) for w, s in zip(ways, steps, strict=True)]), True
    return _mean([np.vstack([parts, step]) for _, parts, step in ways]), False


def _mean(tables: list[Array]) -> Array:
    """Mean of the tables that have a figure; nothing where none has it."""
    known = [~np.isnan(table).any(axis=0) for table in tables]
    count = np.sum(known, axis=0)
    total = np.sum([np.where(k, t, 0.0) for k, t in zip(known, tables, strict=True)], axis=0)
    mean: Array = total / np.maximum(count, 1)
    return mean


@dataclass(frozen=True, slots=True, eq=False)
class _Piece:
    """A stretch of the way: figures at its ends, its integrals, and what they miss."""

    low: float
    high: float
    at_low: Array
    at_high: Array
    parts: Array
    miss: float


class _Walk:
    """Figures along the way, and their derivatives."""

    def __init__(self, path: Path, names: list[str]) -> None:
        self.path, self.names = path, names
        self._main = [place for place, name in enumerate(names) if name in MAIN]

    def steps(self, kinds_first: bool) -> Array:
        """Return what each kind adds as one after the other changes, at one end of the way."""
        keys = [part.key for part in self.path.kinds]
        keys = keys if kinds_first else keys[::-1]
        share = 0.0 if kinds_first else 1.0
        changed = [frozenset(keys[:count]) for count in range(len(keys) + 1)]
        figures = [self._figures(share, each.__contains__) for each in changed]
        steps = np.diff(figures, axis=0)
        return steps if kinds_first else steps[::-1]

    def whole(self, second_kinds: bool) -> tuple[Array, Array, Array]:
        """Contributions of all keys, and the figures at both ends of the way."""

        def second(_: str) -> bool:
            return second_kinds

        def piece(low: float, high: float, at_low: Array, at_high: Array) -> _Piece:
            parts = self._integral(low, high, second)
            return _Piece(low, high, at_low, at_high, parts, self._miss(at_low, at_high, parts))

        start, end = (self._figures(share, second) for share in (0.0, 1.0))
        pieces = [piece(0.0, 1.0, start, end)]
        most = min(_MOST_PIECES, _MOST_SLOPES // (_NODES.size * max(len(self.path.numbers), 1)))
        while len(pieces) < most:
            worst = max(pieces, key=lambda each: each.miss)
            if worst.miss <= _GOOD:
                break
            pieces.remove(worst)
            middle = 0.5 * (worst.low + worst.high)
            halfway = self._figures(middle, second)
            pieces.append(piece(worst.low, middle, worst.at_low, halfway))
            pieces.append(piece(middle, worst.high, halfway, worst.at_high))
        return np.sum([each.parts for each in pieces], axis=0), start, end

    def _miss(self, low: Array, high: Array, parts: Array) -> float:
        """Tell how far an integral is from the change, as a share of the figure's parts."""
        left = np.abs(high - low - parts.sum(axis=0))[self._main]
        size = np.abs(parts).sum(axis=0)[self._main] + 1e-6 * np.abs(low)[self._main]
        return float(np.nan_to_num(left / np.maximum(size, 1e-12)).max(initial=0.0))

    def _integral(self, low: float, high: float, second: Second) -> Array:
        total = np.zeros((len(self.path.numbers), len(self.names)))
        for node, weight in zip(_NODES, _WEIGHTS, strict=True):
            share = low + 0.5 * (high - low) * (1.0 + float(node))
            for place, part in enumerate(self.path.numbers):
                step = min(_step(part), 0.5 * share, 0.5 * (1.0 - share))
                slope = self._slope(share, step, part.key, second)
                total[place] += 0.5 * (high - low) * weight * slope
        return total

    def _slope(self, share: float, step: float, key: str, second: Second) -> Array:
        """Differentiate by one key, from one side where the other cannot be built."""

        def at(steps: int) -> Array:
            return self._figures(share, second, key, share + steps * step)

        for side in (0, -1, 1):
            try:
                if not side:
                    return (at(1) - at(-1)) / (2.0 * step)
                return side * (4.0 * at(side) - 3.0 * at(0) - at(2 * side)) / (2.0 * step)
            except Error:
                if side == 1:
                    raise
        raise AssertionError("unreachable")

    def _figures(
        self, share: float, second: Second, key: str | None = None, moved: float = 0.0
    ) -> Array:
        design = self.path.at(lambda each: moved if each == key else share, second)
        return _row(figures_of(_core.check(design)), self.names)


def _step(part: Part) -> float:
    """Share of the way that moves no number of a key too far."""
    farthest: float = max(
        abs(b - a) / max(abs(a), abs(b), _SMALL) for a, b in zip(part.a, part.b, strict=True)
    )
    return _STEP / farthest
