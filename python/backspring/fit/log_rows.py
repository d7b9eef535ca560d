"""The rows of a fitting log's least squares: unknowns, and readings against them.

In turn the unknowns are the half-stop face and the closed side against the drawing, the tilt of the
pad, the pivot's play, the root's rotation beyond the drawing's, and every depth ground.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from typing import Literal

import numpy as np
import numpy.typing as npt

from backspring import _core
from backspring.errors import Error, NoConvergence
from backspring.fit.log_entry import Entry, GroundEntry, MeasuredEntry, faces_of
from backspring.fit.misfit import Observation
from backspring.fit.result import FACES

Array = npt.NDArray[np.float64]
# What is expected before anything is measured: common practice, no source.
FACE_MM, TILT_RAD, PLAY_MM = 1.0, 0.002, 0.02
_DEPTH_MM, _DEPTH_SHARE = 0.003, 0.05
_POSITIONS = ("half_stop", "closed")
_FIRST_DEPTH = 5
_TILT, _PLAY, _ROOT = 4, 5, 6
_STEP_MM, _STEP_RAD, _STEP_SHARE = 1e-4, 1e-5, 1e-3
Gapes = Literal["rear", "front"]
GAPES: tuple[Gapes, Gapes] = ("rear", "front")


class LogRows:
    """What the model says of every reading, at given unknowns, for a pad that gapes at one end.

    It rests on the other end then: readings have a kink where the pad lies flat, and no derivative
    there, but one on each side. Readings follow from the depth off each face, tilt, play and root;
    their slopes with these give those with the unknowns.
    """

    def __init__(
        self, design: _core.Design, entries: Sequence[Entry], spread_mm: float, gapes: Gapes
    ) -> None:
        self.design, self.entries = design, entries
        self.ground = [entry for entry in entries if isinstance(entry, GroundEntry)]
        self.spread_mm = spread_mm
        self.root = _core.make_flexibility(design.spring).root_rotation_rad_per_nmm
        # A clamp gives way about as much as a rear span would: a tenth of the overhang's own bend.
        self.root_scale = self.root or self._overhang_rotation()
        tilt = (0.0, math.inf) if gapes == "rear" else (-math.inf, 0.0)
        free = (-math.inf, math.inf)
        self._limits = np.array([*[free] * 4, tilt, (0.0, math.inf), (-self.root, math.inf)])
        self._steps = [*[_STEP_MM] * 4, _STEP_RAD, _STEP_MM, _STEP_SHARE * self.root_scale]

    def start(self) -> Array:
        """Return the unknowns with the faces where the first measurement alone would put them."""
        _, first, count = next(self._measured())
        x = np.array([0.0] * _FIRST_DEPTH + [entry.depth_mm for entry in self.ground])
        drawn = _core.take_off(self.design, _off(self._causes(x, count)))
        state = _core.FitState[first.state]
        read = _core.Measured(
            state=state, half_stop_mm=first.half_stop_mm, closed_mm=first.closed_mm
        )
        now = _core.as_measured(drawn, read).tang
        x[1] = now.closed_mm - drawn.tang.closed_mm
        if now.half_stop_mm is not None and drawn.tang.half_stop_mm is not None:
            x[0] = now.half_stop_mm - drawn.tang.half_stop_mm
        return x

    def unknowns(self, start: Array) -> list[_core.Unknown]:
        """Return the unknowns, each with what is expected of it and its bounds."""
        deep = np.array([entry.depth_mm for entry in self.ground])
        expected = np.array([*[0.0] * _FIRST_DEPTH, *deep])
        known = (FACE_MM, FACE_MM, TILT_RAD, PLAY_MM, self.root_scale)
        spreads = np.array([*known, *(_DEPTH_MM + _DEPTH_SHARE * deep)])
        free, steel = (-math.inf, math.inf), (0.0, math.inf)
        limits = [free, free, *self._limits[_TILT:], *[steel] * len(deep)]
        return [
            _core.Unknown(start=at, expected=value, expected_sd=sd, least=low, greatest=high)
            for at, value, sd, (low, high) in zip(start, expected, spreads, limits, strict=True)
        ]

    def readings(self, state: str, x: Array, count: int) -> Array:
        """Read the knife after the first grinds: half-stop, closed; nothing without a half-stop."""
        return self._read(state, self._causes(x, count))

    def slopes(self, state: str, x: Array, count: int) -> Array:
        """Return the slopes of both readings with the unknowns."""
        causes = self._causes(x, count)
        slopes = np.zeros((2, len(causes)))
        for place in self._moving(state):
            ahead, behind = causes.copy(), causes.copy()
            low, high = self._limits[place]
            ahead[place] = min(ahead[place] + self._steps[place], high)
            behind[place] = max(behind[place] - self._steps[place], low)
            change = self._read(state, ahead) - self._read(state, behind)
            slopes[:, place] = change / (ahead[place] - behind[place])
        return slopes @ self._by_unknown(count)

    def knife(self, x: Array) -> _core.Design:
        """Return the knife as it stands."""
        return _core.take_off(self.design, _off(self._causes(x, len(self.ground))))

    def compare(self, x: Array) -> list[Observation]:
        """Set every reading against what the model says of it."""
        rows = []
        for number, entry, count in self._measured():
            shown = dict(zip(_POSITIONS, self.readings(entry.state, x, count), strict=True))
            for position in _positions(entry):
                read, sd = getattr(entry, f"{position}_mm"), self._sd_mm(entry)
                model = float(shown[position])
                rows.append(Observation(number, position, entry.state, read, model, sd))
        return rows

    def residuals(self, x: Array) -> tuple[Array, Array]:
        """Residuals in standard deviations, with their slopes; no number where no knife can be."""
        width = _FIRST_DEPTH + len(self.ground)
        try:
            rows = np.array([row.residual for row in self.compare(x)])
            return rows, np.vstack([np.zeros((0, width)), *self._slope_rows(x)])
        except Error:
            count = sum(len(_positions(entry)) for _, entry, _ in self._measured())
            return np.full(count, np.nan), np.zeros((count, width))

    def _slope_rows(self, x: Array) -> Iterator[Array]:
        seen: dict[tuple[str, int], Array] = {}
        for _, entry, count in self._measured():
            key = (entry.state, count)
            if key not in seen:
                seen[key] = self.slopes(entry.state, x, count)
            rows = [_POSITIONS.index(position) for position in _positions(entry)]
            yield seen[key][rows] / self._sd_mm(entry)

    def _overhang_rotation(self) -> float:
        pivot = self.design.tang.pivot_mm
        flexibility = _core.make_flexibility(self.design.spring)
        return 0.1 * _core.deflection_per_force(flexibility, pivot, pivot) / pivot**2

    def _by_unknown(self, count: int) -> Array:
        """Slopes of what readings follow from with the unknowns, after the first grinds."""
        slopes = np.zeros((len(self._steps), _FIRST_DEPTH + len(self.ground)))
        slopes[FACES.index("half_stop"), 0] = -1.0
        slopes[[FACES.index("closed"), FACES.index("kick")], 1] = -1.0
        slopes[[_TILT, _PLAY, _ROOT], [2, 3, 4]] = 1.0
        for place, entry in enumerate(self.ground[:count], start=_FIRST_DEPTH):
            slopes[FACES.index(entry.face), place] = 1.0
        return slopes

    def _causes(self, x: Array, count: int) -> Array:
        """Depths off each face, tilt, play and root after the first grinds."""
        return self._by_unknown(count) @ x

    def _moving(self, state: str) -> list[int]:
        """Say which of these move the readings of a state."""
        faces = {"half_stop", "closed", "kick", *(entry.face for entry in self.ground)}
        here = [FACES.index(face) for face in faces_of(self.design.tang) if face in faces]
        return [*here, _TILT, _ROOT if state == "loaded" else _PLAY]

    def _read(self, state: str, causes: Array) -> Array:
        tilt, play, root = (float(each) for each in causes[_TILT:])
        bench = _core.FitUnknowns(
            pad_tilt_rad=tilt, pivot_play_mm=play, extra_root_rad_per_nmm=root
        )
        knife = _core.take_off(self.design, _off(causes))
        shown = _core.readings_in(_core.FitState[state], knife, bench)
        half = 0.0 if self.design.tang.half_stop_mm is None else shown.half_stop_mm
        if half is None or shown.closed_mm is None:
            raise NoConvergence("the blade does not stay in a position")
        return np.array([half, shown.closed_mm])

    def _measured(self) -> Iterator[tuple[int, MeasuredEntry, int]]:
        """Go through the measurements: number of the entry, entry, grinds before it."""
        count = 0
        for number, entry in enumerate(self.entries, start=1):
            if isinstance(entry, GroundEntry):
                count += 1
            else:
                yield number, entry, count

    def _sd_mm(self, entry: MeasuredEntry) -> float:
        return max(entry.repeatability_mm, self.spread_mm)


def _off(causes: Array) -> _core.FaceDepths:
    depths = zip(FACES, causes[: len(FACES)], strict=True)
    return _core.FaceDepths(**{f"{face}_mm": float(depth) for face, depth in depths})


def _positions(entry: MeasuredEntry) -> list[str]:
    return [each for each in _POSITIONS if getattr(entry, f"{each}_mm") is not None]
