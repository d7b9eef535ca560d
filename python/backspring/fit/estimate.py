"""Learns from a fitting log what a drawing cannot know about one knife.

Least squares by Gauss and Newton. Unknown are how far the half-stop face and the closed side stand
from the drawing, the tilt of the pad at open, the pivot's play, the root's rotation, and the error
of every depth ground. All but the first two are expected near nothing, each within its own spread,
so that what the readings cannot tell stays there. The source of the method: weighted least squares
with prior observations, any text on adjustment of measurements.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from backspring import _core
from backspring.errors import Error, NoConvergence
from backspring.fit.log_file import Entry, GroundEntry, MeasuredEntry

Array = npt.NDArray[np.float64]
# What is expected before anything is measured: common practice, no source.
TILT_RAD, PLAY_MM = 0.002, 0.02
_DEPTH_MM, _DEPTH_SHARE = 0.003, 0.05
# A gauge is never better than this.
LEAST_SPREAD_MM = 0.0005
_TOLD = 0.5
_FIRST_DEPTH = 5
_STEPS = (1e-4, 1e-4, 1e-5, 1e-4)
_ROUNDS, _SETTLED = 12, 1e-3
_NEVER = 1e9


@dataclass(frozen=True, slots=True)
class Learned:
    """One unknown: value, standard deviation, and whether the readings tell it."""

    value: float
    spread: float
    told: bool


@dataclass(frozen=True, slots=True)
class FitEstimate:
    """What a log tells about the knife as it stands.

    `now` is the core's design of it; readings are loaded, each with its standard deviation.
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


class _Problem:
    """Rows of readings against the unknowns."""

    def __init__(self, design: _core.Design, entries: Sequence[Entry], spread_mm: float) -> None:
        self.design, self.entries = design, entries
        self.ground = [entry for entry in entries if isinstance(entry, GroundEntry)]
        self.spread_mm = spread_mm
        self.root = _core.make_flexibility(design.spring).root_rotation_rad_per_nmm
        # A clamp gives way about as much as a rear span would: a tenth of the overhang's own bend.
        self.root_scale = self.root or self._overhang_rotation()
        self.prior = np.array(
            [_NEVER, _NEVER, TILT_RAD, PLAY_MM, self.root_scale]
            + [_DEPTH_MM + _DEPTH_SHARE * entry.depth_mm for entry in self.ground]
        )
        self.steps = np.array([*_STEPS, 1e-3 * self.root_scale] + [1e-4] * len(self.ground))

    def _overhang_rotation(self) -> float:
        pivot = self.design.tang.pivot_mm
        flexibility = _core.make_flexibility(self.design.spring)
        return 0.1 * _core.deflection_per_force(flexibility, pivot, pivot) / pivot**2

    def unknowns(self, x: Array) -> _core.FitUnknowns:
        extra = max(float(x[4]), -self.root)
        return _core.FitUnknowns(
            pad_tilt_rad=float(x[2]),
            pivot_play_mm=max(float(x[3]), 0.0),
            extra_root_rad_per_nmm=extra,
        )

    def after(self, x: Array, count: int) -> _core.Design:
        """Return the knife after the first grinds."""
        off = {"open": 0.0, "half_stop": -x[0], "closed": -x[1], "kick": -x[1]}
        for entry, error in zip(self.ground[:count], x[_FIRST_DEPTH:], strict=False):
            off[entry.face] += entry.depth_mm + error
        depths = {f"{face}_mm": float(depth) for face, depth in off.items()}
        return _core.take_off(self.design, _core.FaceDepths(**depths))

    def residuals(self, x: Array) -> Array:
        unknowns, rows, knife, count = self.unknowns(x), [], self.after(x, 0), 0
        seen: dict[str, _core.Readings] = {}
        for entry in self.entries:
            if isinstance(entry, GroundEntry):
                count += 1
                knife, seen = self.after(x, count), {}
                continue
            if entry.state not in seen:
                state = _core.FitState[entry.state]
                seen[entry.state] = _core.readings_in(state, knife, unknowns)
            shown, spread = seen[entry.state], max(entry.repeatability_mm, self.spread_mm)
            rows.append((_there(shown.closed_mm) - entry.closed_mm) / spread)
            if entry.half_stop_mm is not None:
                rows.append((_there(shown.half_stop_mm) - entry.half_stop_mm) / spread)
        return np.array([*rows, *(x / self.prior)])

    def jacobian(self, x: Array) -> Array:
        columns = []
        for place, step in enumerate(self.steps):
            ahead, behind = x.copy(), x.copy()
            ahead[place] += step
            behind[place] -= 0.0 if place == 3 and x[3] <= step else step
            slope = self.residuals(ahead) - self.residuals(behind)
            columns.append(slope / (ahead[place] - behind[place]))
        return np.column_stack(columns)

    def start(self) -> Array:
        """Where the first measurement alone would put the faces."""
        x = np.zeros(len(self.prior))
        first = next(entry for entry in self.entries if isinstance(entry, MeasuredEntry))
        count = self.entries.index(first)
        now = _core.as_measured(self.after(x, count), _measured(first))
        drawn = self.after(x, count).tang
        x[1] = now.tang.closed_mm - drawn.closed_mm
        if now.tang.half_stop_mm is not None and drawn.half_stop_mm is not None:
            x[0] = now.tang.half_stop_mm - drawn.half_stop_mm
        return x


def learn(design: _core.Design, entries: Sequence[Entry], spread_mm: float) -> FitEstimate:
    """Learn from all entries, at least one of them measured.

    Raises NoConvergence when no knife of this design could have read so.
    """
    problem = _Problem(design, entries, max(spread_mm, LEAST_SPREAD_MM))
    try:
        x, covariance = _solve(problem)
        return _estimate(problem, x, covariance)
    except Error as error:
        raise NoConvergence(f"the log cannot be this design's: {error}") from None


def _solve(problem: _Problem) -> tuple[Array, Array]:
    x = problem.start()
    for _ in range(_ROUNDS):
        jacobian, residuals = problem.jacobian(x), problem.residuals(x)
        step, *_ = np.linalg.lstsq(jacobian, -residuals, rcond=None)
        x = x + step
        x[3] = max(x[3], 0.0)
        covariance: Array = np.asarray(np.linalg.pinv(jacobian.T @ jacobian, hermitian=True))
        if float(np.abs(step / np.sqrt(np.diag(covariance))).max()) < _SETTLED:
            return x, covariance
    return x, covariance


def _estimate(problem: _Problem, x: Array, covariance: Array) -> FitEstimate:
    count, unknowns = len(problem.ground), problem.unknowns(x)
    now = problem.after(x, count)
    read = _core.readings_in(_core.FitState.loaded, now, unknowns)
    spread = np.sqrt(np.diag(covariance))
    told = spread[2:5] < _TOLD * problem.prior[2:5]
    slopes = _slopes(problem, x)
    by_reading = np.sqrt(np.einsum("ij,jk,ik->i", slopes, covariance, slopes))
    square = read.half_stop_mm is not None
    stiffness = 1.0 / max(problem.root + float(x[4]), 1e-3 * problem.root_scale)
    return FitEstimate(
        now=now,
        unknowns=unknowns,
        half_stop_loaded_mm=read.half_stop_mm,
        half_stop_spread_mm=float(by_reading[1]) if square else None,
        closed_loaded_mm=_there(read.closed_mm),
        closed_spread_mm=float(by_reading[0]),
        pad_tilt_rad=Learned(float(x[2]), float(spread[2]), bool(told[0])),
        pivot_play_mm=Learned(float(x[3]), float(spread[3]), bool(told[1])),
        root_stiffness_nmm_per_rad=Learned(
            stiffness, stiffness**2 * float(spread[4]), bool(told[2])
        ),
    )


def _slopes(problem: _Problem, x: Array) -> Array:
    """Change of the loaded readings now, closed and half-stop, with each unknown."""

    def loaded(at: Array) -> Array:
        now = problem.after(at, len(problem.ground))
        read = _core.readings_in(_core.FitState.loaded, now, problem.unknowns(at))
        return np.array([_there(read.closed_mm), read.half_stop_mm or 0.0])

    columns = []
    for place, step in enumerate(problem.steps):
        ahead, behind = x.copy(), x.copy()
        ahead[place] += step
        behind[place] -= step
        columns.append((loaded(ahead) - loaded(behind)) / (2.0 * step))
    return np.column_stack(columns)


def _measured(entry: MeasuredEntry) -> _core.Measured:
    state = _core.FitState[entry.state]
    return _core.Measured(state=state, half_stop_mm=entry.half_stop_mm, closed_mm=entry.closed_mm)


def _there(reading: float | None) -> float:
    if reading is None or not math.isfinite(reading):
        raise NoConvergence("the blade does not stay in a position")
    return reading
