"""The rows of a log's least squares: unknowns, and all that was measured against them."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Literal

import numpy as np

from backspring import _core
from backspring.design.design import Design
from backspring.errors import Error
from backspring.fit.goodness import figure_sd
from backspring.fit.habits import ShopHabits
from backspring.fit.knife_model import CAUSES, PLACE, STIFFNESS, Array, KnifeModel
from backspring.fit.log_entry import Entry, FigureEntry, GroundEntry, MeasuredEntry
from backspring.fit.misfit import Observation
from backspring.fit.priors import Leeway, depth_prior, priors_of, stated_in

POSITIONS = ("half_stop", "closed")
Gapes = Literal["rear", "front"]
GAPES: tuple[Gapes, Gapes] = ("rear", "front")
# A gauge is never better than this.
LEAST_SPREAD_MM = 0.0005
_TO_THE_LETTER = Leeway()
Model = Callable[[Array], Array]
OFFSET = "loaded_offset_mm"
_LOADED = ("readings", "loaded")
# What does not move a measurement, and need not be tried.
_BENDING = ("extra_root_share", "preload_mm", *STIFFNESS)
_LYING = {"hardness_hrc", "friction", "pivot_play_mm", OFFSET}
_PULLING = {"hardness_hrc", "pivot_play_mm", OFFSET}
_STILL = {
    "unloaded": {*_BENDING, "friction", "hardness_hrc", OFFSET},
    # Bent by a given distance a spring has the same shape, whether stiff or not: within a reading
    # 0.02 mm of thickness are 0.0001 mm.
    "loaded": {"pivot_play_mm", "friction", "hardness_hrc", *STIFFNESS},
    "pull_n": _PULLING,
    "closing_pull_n": _PULLING,
    "start_pull_n": _PULLING,
    "tip_mm": _LYING,
    "gap_mm": _LYING,
    "moved_mm": {*CAUSES} - {*_BENDING} | {"preload_mm"},
    "thickness_mm": {*CAUSES} - {"thickness_mm"},
    "hardness_hrc": {*CAUSES} - {"hardness_hrc"},
}


@dataclass(frozen=True, slots=True)
class Row:
    """One entry's measurements, after so many grinds; `key` is alike where the model's is."""

    number: int
    entry: MeasuredEntry | FigureEntry
    count: int
    key: tuple[object, ...]


class LogRows:
    """What the model says of every measurement, at given unknowns, for a pad that gapes at one end.

    It rests on the other end then: readings have a kink where the pad lies flat, and no derivative
    there, but one on each side. All follows from the knife's causes after so many grinds, and these
    from the unknowns by a matrix.
    """

    def __init__(
        self,
        design: Design,
        entries: Sequence[Entry],
        spread_mm: float,
        gapes: Gapes,
        leeway: Leeway = _TO_THE_LETTER,
        habits: ShopHabits | None = None,
    ) -> None:
        self.drawn = design.core
        self.ground = [each for each in entries if isinstance(each, GroundEntry)]
        self.model = KnifeModel(self.drawn, self.ground)
        self.spread_mm, self.leeway = spread_mm, leeway
        self.priors = [
            each if each.name != OFFSET else replace(each, sd=each.sd * leeway.offset)
            for each in priors_of(design, self.model.root_scale)
        ]
        self.first_depth = len(self.priors)
        self.priors += [
            depth_prior(f"depth_{place}_mm", each.depth_mm, leeway.depth_share)
            for place, each in enumerate(self.ground, start=1)
        ]
        if habits is not None:
            self.priors = habits.expect(self.priors, leeway.depth_share, stated_in(design))
        self.place = {each.name: place for place, each in enumerate(self.priors)}
        self.rows = list(_rows(entries))
        self._so = _last_loaded(self.rows) if leeway.by_reading else None
        self._tilt = (0.0, math.inf) if gapes == "rear" else (-math.inf, 0.0)
        self._limits = self._cause_limits()

    def start(self) -> Array:
        """Return the unknowns with the faces where the first readings alone would put them."""
        x = np.array([0.0 if each.broad else each.expected for each in self.priors])
        first = next((row for row in self.rows if _is_whole(row.entry, self.model.square)), None)
        if first is None or not isinstance(first.entry, MeasuredEntry):
            return x
        entry, drawn = first.entry, self.model.design(self.causes(x, first.count))
        read = _core.Measured(
            state=_core.FitState[entry.state],
            half_stop_mm=entry.half_stop_mm,
            closed_mm=entry.closed_mm or 0.0,
        )
        now = _core.as_measured(drawn, read).tang
        x[self.place["closed_face_mm"]] = now.closed_mm - drawn.tang.closed_mm
        if now.half_stop_mm is not None and drawn.tang.half_stop_mm is not None:
            x[self.place["half_stop_face_mm"]] = now.half_stop_mm - drawn.tang.half_stop_mm
        return x

    def unknowns(self, start: Array) -> list[_core.Unknown]:
        """Return the unknowns, each with what is expected of it and its bounds."""
        return [
            _core.Unknown(
                start=at,
                expected=prior.expected,
                expected_sd=prior.sd,
                least=self._tilt[0] if prior.name == "pad_tilt_rad" else prior.least,
                greatest=self._tilt[1] if prior.name == "pad_tilt_rad" else prior.greatest,
            )
            for at, prior in zip(start, self.priors, strict=True)
        ]

    def causes(self, x: Array, count: int) -> Array:
        """Return what measurements after the first grinds follow from."""
        return self.by_unknown(count) @ x

    def by_unknown(self, count: int) -> Array:
        """Slopes of the causes with the unknowns, after the first grinds."""
        slopes = np.zeros((self.model.width, len(self.priors)))
        slopes[PLACE["half_stop"], self.place["half_stop_face_mm"]] = -1.0
        slopes[[PLACE["closed"], PLACE["kick"]], self.place["closed_face_mm"]] = -1.0
        slopes[PLACE["kick"], self.place["kick_height_mm"]] = -1.0
        for name in CAUSES:
            if name in self.place:
                slopes[PLACE[name], self.place[name]] = 1.0
        for place, entry in enumerate(self.ground[:count], start=self.first_depth):
            slopes[self.model.place_of(entry), place] = 1.0
        return slopes

    def slopes(self, model: Model, x: Array, count: int, kind: str = "") -> Array:
        """Slopes of what a model says with the unknowns, from both sides where bounds allow.

        `kind` is that of the measurement, or the state of a reading; without it all is tried.
        """
        causes = self.causes(x, count)
        slopes = np.zeros((len(model(causes)), len(causes)))
        mapped = self.by_unknown(count)
        still = [PLACE[name] for name in _STILL.get(kind, ())]
        for place in set(np.flatnonzero(np.any(mapped != 0.0, axis=1))) - set(still):
            step, (low, high) = self.model.steps[place], self._limits[place]
            ahead, behind = causes.copy(), causes.copy()
            ahead[place] = min(causes[place] + step, high)
            behind[place] = max(causes[place] - step, low)
            slopes[:, place] = (model(ahead) - model(behind)) / (ahead[place] - behind[place])
        return np.asarray(slopes @ mapped)

    def compare(self, x: Array) -> list[Observation]:
        """Set every measurement against what the model says of it."""
        found, said = [], {}
        for row in self.rows:
            if row.key not in said:
                said[row.key] = self.model_of(row)(self.causes(x, row.count))
            for place, value, sd in self._measured(row):
                what = POSITIONS[place] if isinstance(row.entry, MeasuredEntry) else row.entry.kind
                state = row.entry.state if isinstance(row.entry, MeasuredEntry) else ""
                found.append(
                    Observation(row.number, what, state, value, float(said[row.key][place]), sd)
                )
        return found

    def residuals(self, x: Array) -> tuple[Array, Array]:
        """Residuals in standard deviations, with their slopes; no number where no knife can be."""
        try:
            rows = np.array([each.residual for each in self.compare(x)])
            return rows, np.vstack([np.zeros((0, len(x))), *self._slope_rows(x)])
        except Error:
            count = sum(len(self._measured(row)) for row in self.rows)
            return np.full(count, np.nan), np.zeros((count, len(x)))

    def model_of(self, row: Row) -> Model:
        """Return the model of an entry's measurements."""
        entry = row.entry
        if isinstance(entry, MeasuredEntry):
            return lambda causes: self.model.readings(entry.state, causes)
        return lambda causes: self.model.figure(entry, causes)

    def figure_sd(self, entry: FigureEntry) -> float:
        """Say how good another measurement is: its standard deviation."""
        alike = sum(getattr(row.entry, "kind", "") == entry.kind for row in self.rows)
        return figure_sd(entry, self.spread_mm, alike)

    def _slope_rows(self, x: Array) -> Iterator[Array]:
        seen: dict[tuple[object, ...], Array] = {}
        for row in self.rows:
            if row.key not in seen:
                entry = row.entry
                kind = entry.state if isinstance(entry, MeasuredEntry) else entry.kind
                seen[row.key] = self.slopes(self.model_of(row), x, row.count, kind)
            for place, _, sd in self._measured(row):
                yield seen[row.key][place : place + 1] / sd

    def _measured(self, row: Row) -> list[tuple[int, float, float]]:
        """List place in the model's answer, value and standard deviation."""
        entry = row.entry
        if isinstance(entry, FigureEntry):
            return [(0, entry.value, self.figure_sd(entry))]
        sd = max(entry.repeatability_mm, self.spread_mm)
        if row.key == self._so:
            sd = LEAST_SPREAD_MM
        read = (entry.half_stop_mm, entry.closed_mm)
        return [(place, value, sd) for place, value in enumerate(read) if value is not None]

    def _cause_limits(self) -> list[tuple[float, float]]:
        limits = [(-math.inf, math.inf)] * self.model.width
        for prior in self.priors[: self.first_depth]:
            if prior.name in PLACE:
                limits[PLACE[prior.name]] = (prior.least, prior.greatest)
        limits[PLACE["pad_tilt_rad"]] = self._tilt
        for place in range(len(CAUSES), self.model.width):
            limits[place] = (0.0, math.inf)
        return limits


def _rows(entries: Sequence[Entry]) -> Iterator[Row]:
    count = 0
    for number, entry in enumerate(entries, start=1):
        if isinstance(entry, GroundEntry):
            count += 1
            continue
        what: tuple[object, ...] = ("figure", entry)
        if isinstance(entry, MeasuredEntry):
            what = ("readings", entry.state)
        yield Row(number, entry, count, (*what, count))


def _last_loaded(rows: Sequence[Row]) -> tuple[object, ...] | None:
    return next((row.key for row in reversed(rows) if row.key[:2] == _LOADED), None)


def _is_whole(entry: MeasuredEntry | FigureEntry, square: bool) -> bool:
    if not isinstance(entry, MeasuredEntry):
        return False
    return entry.closed_mm is not None and (entry.half_stop_mm is not None) == square
