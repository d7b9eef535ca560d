"""The tang's faces, ground to suit whatever else is changed: loaded, the back is flush again."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from backspring import _core
from backspring.design.draft import Draft
from backspring.errors import InvalidInput
from backspring.unit_table import THOU_MM, System

Column = npt.NDArray[np.float64]
CheckAll = Callable[[_core.Design], list[_core.Check]]
# Ground to the dial, finer than any other dimension is set: common practice, no source.
STEPS_MM: dict[System, float] = {"mm": 0.002, "in": 0.1 * THOU_MM}
MOST_MM = 0.5
_PROBES_MM = (0.02, 0.3)
_FELT = 0.1
_ROUNDS = 4
# A kick ground to nothing is none: this much is left of it.
_LEAST_STEPS = 10
_READ = ("open", "half_stop", "closed")


@dataclass(frozen=True)
class Face:
    """A face that sets a reading: its key, and what is drawn."""

    key: str
    drawn_mm: float


class Faces:
    """Faces of every blade, and how the loaded readings answer to them.

    Without a target for the readings nothing is ground. A closed blade that stands on a kick is
    set by the kick.
    """

    def __init__(
        self, draft: Draft, blades: tuple[str, ...], system: System, check: CheckAll
    ) -> None:
        self._check, self._step = check, STEPS_MM[system]
        self._most_mm = draft.value("targets.reading")
        self._faces: list[Face] = []
        self._depths: Column | None = None
        self._start: Draft | None = None
        drawn = None if self._most_mm is None else _readings(check(draft.core()))
        if drawn is None:
            return
        slopes = []
        for face in _faces_of(draft, blades):
            slope = self._slope(draft, face, drawn)
            if slope is not None:
                self._faces.append(face)
                slopes.append(slope)
        if slopes:
            self._depths = np.asarray(np.linalg.pinv(np.array(slopes).T), dtype=np.float64)
        with suppress(InvalidInput):
            fitted, _ = self.fitted(draft)
            self._start = fitted if fitted is not draft else None

    @property
    def keys(self) -> tuple[str, ...]:
        """Keys of the faces that may be ground."""
        return tuple(face.key for face in self._faces)

    def _slope(self, draft: Draft, face: Face, drawn: Column) -> Column | None:
        """How the readings answer to a face; a face too low to bear answers only once it is up."""
        for more in _PROBES_MM:
            with suppress(InvalidInput):
                found = _readings(
                    self._check(draft.changed({face.key: face.drawn_mm + more}).core())
                )
                if found is not None and np.abs(found - drawn).max() > _FELT * more:
                    return (found - drawn) / more
        return None

    def fitted(self, draft: Draft) -> tuple[Draft, list[_core.Check]]:
        """Return the draft with its faces as they must be, and its checks.

        A draft that reads within its target is left as it is. Raises InvalidInput with every rule
        that is broken, also by a face ground so far.
        """
        if self._depths is None:
            return draft, self._check(draft.core())
        heights = np.array([face.drawn_mm for face in self._faces])
        trial = draft
        if self._start is not None:
            heights = np.array([self._start.value(key) for key in self.keys])
            trial = self._at(draft, heights)
        checks, last = self._check(trial.core()), np.inf
        for _ in range(_ROUNDS):
            readings = _readings(checks)
            off = np.inf if readings is None else float(np.abs(readings).max())
            # What does not come nearer fast will not come home.
            if readings is None or off <= self._most_mm or off > 0.5 * last:
                break
            last = off
            heights = self._rounded(heights - self._depths @ readings)
            trial = self._at(draft, heights)
            checks = self._check(trial.core())
        return trial, checks

    def _at(self, draft: Draft, heights: Column) -> Draft:
        return draft.changed(dict(zip(self.keys, heights.tolist(), strict=True)))

    def _rounded(self, heights: Column) -> Column:
        """Round to steps, no farther from what is drawn than a face may be moved."""
        drawn = np.array([face.drawn_mm for face in self._faces])
        moved = np.clip(heights - drawn, -MOST_MM, MOST_MM)
        steps = np.round((drawn + moved) / self._step)
        return np.asarray(np.maximum(steps, _LEAST_STEPS) * self._step)


def _faces_of(draft: Draft, blades: tuple[str, ...]) -> list[Face]:
    """Half-stop, and of closed face and kick what holds the closed blade."""
    found = []
    for place in range(len(blades)):
        lead = f"blades.{blades[place]}." if place else ""
        kick = draft.value(f"{lead}tang.kick.height")
        closed = "tang.closed" if kick is None else "tang.kick.height"
        for name in ("tang.half_stop", closed):
            held = draft.value(f"{lead}{name}")
            if held is not None:
                found.append(Face(f"{lead}{name}", held))
    return found


def _readings(checks: list[_core.Check]) -> Column | None:
    """Read every blade loaded, the farthest from flush of all cases; None where one lacks."""
    found = []
    for check in checks:
        for name in _READ:
            rows = [row.positions for row in check.beside] or [check.positions]
            held = [p.reading_loaded_mm for row in rows for p in row if p.name == name]
            if any(each is None for each in held):
                return None
            if held:
                found.append(max(held, key=abs))
    return np.array(found)
