"""The rows of a log's least squares: unknowns, and all that was measured against them."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Literal

import numpy as np

from backspring import _core
from backspring.design.design import Design
from backspring.errors import Error
from backspring.fit.ask import Ask, ask_of, place_of
from backspring.fit.causes import CAUSES, PLACE
from backspring.fit.goodness import dial_sd_mm, figure_sd
from backspring.fit.habits import ShopHabits
from backspring.fit.knife_model import Array, KnifeModel
from backspring.fit.log_entry import Entry, FigureEntry, GroundEntry, MeasuredEntry
from backspring.fit.misfit import Observation
from backspring.fit.priors import Leeway, depth_prior, priors_of, stated_in

LOADED = Ask("loaded")
POSITIONS = ("half_stop", "closed")
Gapes = Literal["rear", "front"]
GAPES: tuple[Gapes, Gapes] = ("rear", "front")
# A gauge is never better than this.
LEAST_SPREAD_MM = 0.0005
_TO_THE_LETTER = Leeway()


@dataclass(frozen=True, slots=True)
class Row:
    """One entry's measurements, after so many grinds, and the question that tells of them."""

    number: int
    entry: MeasuredEntry | FigureEntry
    count: int
    ask: Ask


@dataclass(frozen=True, slots=True)
class Measured:
    """One measurement: its place in the answer, its value and its standard deviation."""

    row: Row
    place: int
    value: float
    sd: float


class LogRows:
    """What the model says of every measurement, at given unknowns, for a pad that gapes at one end.

    It rests on the other end then: readings have a kink where the pad lies flat, and no derivative
    there, but one on each side. All follows from the knife's causes after so many grinds, and these
    from the unknowns by a matrix. Slopes are taken across so many times the usual as is `wider`.
    """

    def __init__(
        self,
        design: Design,
        entries: Sequence[Entry],
        spread_mm: float,
        gapes: Gapes,
        leeway: Leeway = _TO_THE_LETTER,
        *,
        model: KnifeModel,
        habits: ShopHabits | None = None,
    ) -> None:
        self.drawn, self.model = design.core, model
        self.ground = ground_in(entries)
        self.spread_mm, self.leeway, self.wider = spread_mm, leeway, 1.0
        wider = {"loaded_offset_mm": leeway.offset, "friction": leeway.friction}
        self.priors = [
            replace(each, sd=each.sd * wider.get(each.name, 1.0))
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
        self.measured = list(self._measured(by_reading=leeway.by_reading))
        self.by_unknown = [self._by_unknown(count) for count in range(len(self.ground) + 1)]
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
        return np.asarray(self.by_unknown[count] @ x)

    def said(self, ask: Ask, x: Array, count: int) -> Array:
        """Return what the model says after the first grinds."""
        return self.model.answer(ask, self.causes(x, count))

    def slopes(self, ask: Ask, x: Array, count: int, *, every: bool = False) -> Array:
        """Slopes of what the model says with the unknowns, from both sides where bounds allow.

        `every`: what is known to move nothing is tried too.
        """
        causes, mapped = self.causes(x, count), self.by_unknown[count]
        moving = set(np.flatnonzero(np.any(mapped != 0.0, axis=1)))
        found = {}
        for place in moving - (set() if every else {PLACE[name] for name in ask.still}):
            step, (low, high) = self.wider * self.model.steps[place], self._limits[place]
            ahead, behind = causes.copy(), causes.copy()
            ahead[place] = min(causes[place] + step, high)
            behind[place] = max(causes[place] - step, low)
            change = self.model.answer(ask, ahead) - self.model.answer(ask, behind)
            found[place] = change / (ahead[place] - behind[place])
        return np.transpose([*found.values()]) @ mapped[[*found]]

    def compare(self, x: Array) -> list[Observation]:
        """Set every measurement against what the model says of it."""
        return [_observation(each, self._estimate(each, x)) for each in self.measured]

    def residuals(self, x: Array) -> tuple[Array, Array]:
        """Residuals in standard deviations, with their slopes; no number where no knife can be."""
        try:
            rows = np.array(
                [(self._estimate(each, x) - each.value) / each.sd for each in self.measured]
            )
            return rows, self._slopes_of_all(x)
        except Error:
            count = len(self.measured)
            return np.full(count, np.nan), np.zeros((count, len(x)))

    def figure_sd(self, entry: FigureEntry) -> float:
        """Say how good another measurement is: its standard deviation."""
        alike = sum(getattr(row.entry, "kind", "") == entry.kind for row in self.rows)
        dial_mm = dial_sd_mm((row.entry for row in self.rows), self.spread_mm)
        return figure_sd(entry, dial_mm, alike)

    def _estimate(self, measured: Measured, x: Array) -> float:
        row = measured.row
        return float(self.said(row.ask, x, row.count)[measured.place])

    def _slopes_of_all(self, x: Array) -> Array:
        found: dict[tuple[Ask, int], Array] = {}
        all_slopes = np.zeros((len(self.measured), len(x)))
        for each, slopes in zip(self.measured, all_slopes, strict=True):
            ask, count = each.row.ask, each.row.count
            if (ask, count) not in found:
                found[ask, count] = self.slopes(ask, x, count)
            slopes[:] = found[ask, count][each.place] / each.sd
        return all_slopes

    def _by_unknown(self, count: int) -> Array:
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

    def _measured(self, *, by_reading: bool) -> Iterator[Measured]:
        """List all that was measured; `by_reading`: what was last read with both pins in is so."""
        loaded = [(row.ask, row.count) for row in self.rows if row.ask == LOADED]
        for row in self.rows:
            entry = row.entry
            if isinstance(entry, FigureEntry):
                yield Measured(row, place_of(entry), entry.value, self.figure_sd(entry))
                continue
            so = by_reading and (row.ask, row.count) == loaded[-1]
            good = max(entry.repeatability_mm, self.spread_mm) * self.leeway.dial
            sd = LEAST_SPREAD_MM if so else good
            for place, value in enumerate((entry.half_stop_mm, entry.closed_mm)):
                if value is not None:
                    yield Measured(row, place, value, sd)

    def _cause_limits(self) -> list[tuple[float, float]]:
        limits = [(-math.inf, math.inf)] * self.model.width
        for prior in self.priors[: self.first_depth]:
            if prior.name in PLACE:
                limits[PLACE[prior.name]] = (prior.least, prior.greatest)
        limits[PLACE["pad_tilt_rad"]] = self._tilt
        for place in range(len(CAUSES), self.model.width):
            limits[place] = (0.0, math.inf)
        return limits


def ground_in(entries: Sequence[Entry]) -> list[GroundEntry]:
    """List the trips to the grinder of a log."""
    return [each for each in entries if isinstance(each, GroundEntry)]


def _rows(entries: Sequence[Entry]) -> Iterator[Row]:
    count = 0
    for number, entry in enumerate(entries, start=1):
        if isinstance(entry, GroundEntry):
            count += 1
        else:
            yield Row(number, entry, count, ask_of(entry))


def _observation(measured: Measured, estimate: float) -> Observation:
    row, entry = measured.row, measured.row.entry
    if isinstance(entry, MeasuredEntry):
        what, state = POSITIONS[measured.place], entry.state
    else:
        what, state = entry.kind, ""
    return Observation(row.number, what, state, measured.value, estimate, measured.sd)


def _is_whole(entry: MeasuredEntry | FigureEntry, square: bool) -> bool:
    if not isinstance(entry, MeasuredEntry):
        return False
    return entry.closed_mm is not None and (entry.half_stop_mm is not None) == square
