"""A fitting log: what was measured and ground, what that tells, and the next pass."""

from __future__ import annotations

import math
import os
from collections.abc import Iterator, Mapping
from contextlib import AbstractContextManager, contextmanager, nullcontext
from dataclasses import asdict
from pathlib import Path
from typing import TYPE_CHECKING, Any

from backspring.design.arguments import length, refusal
from backspring.design.design import Design
from backspring.fit.log_entry import Entry, GroundEntry, MeasuredEntry, broken_limit, faces_of
from backspring.fit.log_file import read_log, write_log
from backspring.fit.misfit import repeats, require_agreement, require_no_forgotten_trip
from backspring.fit.plan import TARGET, TIP_ALLOWANCE, ClosedBy, State, make_plan, plan_rules
from backspring.fit.plan import state_of as _state_of
from backspring.fit.result import FitPlan
from backspring.notice import Notice
from backspring.units import System
from backspring.whole_file import locked

if TYPE_CHECKING:
    from backspring.fit.estimate import FitEstimate

REPEATABILITY = "0.002 mm"
LEARNED = ("pad_tilt_rad", "pivot_play_mm", "root_stiffness_nmm_per_rad")
_MORE = 2.0


class FitLog:
    """Measurements and grinds of one knife, in turn.

    An entry is kept when the log still has an answer with it, and with a path is written then,
    whole or not at all; what stood in the file is read first and kept; what another wrote there
    meanwhile is not written over. The same entries always give the same answers. `units` are those
    that refusals speak in, the design's own when none are given.
    """

    def __init__(
        self,
        design: Design,
        path: str | os.PathLike[str] | None = None,
        *,
        units: System | None = None,
    ) -> None:
        self.design = design
        self.path = None if path is None else Path(path)
        self.units: System = units or design.units
        self._square = design.core.tang.half_stop_mm is not None
        self._stood = self._entries = self._read()
        self._holding = False
        self._found: tuple[tuple[Entry, ...], FitEstimate] | None = None

    @property
    def entries(self) -> tuple[Entry, ...]:
        """All entries in turn."""
        return self._entries

    def measure(
        self,
        *,
        closed: Any,
        state: State,
        half_stop: Any = None,
        repeatability: Any = REPEATABILITY,
    ) -> None:
        """Add what the dial showed; `repeatability` is the standard deviation of one reading.

        Raises InvalidInput when it differs from an earlier reading with nothing ground between, or
        when all that is logged contradicts it.
        """
        _state_of(state)
        if (half_stop is None) == self._square:
            wanted = "missing: this tang has a half-stop" if self._square else "this tang has none"
            raise refusal("half_stop", wanted)
        half_mm = None if half_stop is None else _within(half_stop, "half_stop", "half_stop_mm")
        closed_mm = _within(closed, "closed", "closed_mm")
        spread_mm = _within(repeatability, "repeatability", "repeatability_mm")
        self._add(MeasuredEntry(state, half_mm, closed_mm, spread_mm))

    def grind(self, face: str, depth: Any) -> None:
        """Add what came off a face: "open", "half_stop", "closed" near the pivot, or "kick"."""
        here = faces_of(self.design.core.tang)
        if face not in here:
            raise refusal("ground", f"this tang's faces are {', '.join(here)}; got {face!r}")
        self._add(GroundEntry(face, _within(depth, "ground", "depth_mm")))

    def undo(self) -> Entry:
        """Take the last entry off, and return it. Raises InvalidInput when there is none."""
        if not self._entries:
            raise refusal("log", "holds no entry to take off")
        last = self._entries[-1]
        with self._alone():
            self._write(self._entries[:-1])
        self._entries = self._stood
        return last

    @contextmanager
    def together(self, *, anew: bool = False) -> Iterator[None]:
        """Write what is added inside in one go, or nothing of it when anything inside is refused.

        The log answers for all of it first; readings added together are repeats of one another.
        `anew`: what another wrote meanwhile is read before, instead of refused.
        """
        with self._alone():
            if anew:
                self._stood = self._entries = self._read()
            stood, self._holding = self._entries, True
            try:
                yield
                if self._entries != stood:
                    self._require_answer()
                    self._write(self._entries)
            except BaseException:
                self._entries = stood
                raise
            finally:
                self._holding = False

    @property
    def scatter_mm(self) -> float | None:
        """Standard deviation between repeated readings, pooled; None when nothing is repeated."""
        squares, freedom = 0.0, 0
        for readings in repeats(self._entries).values():
            mean = sum(readings) / len(readings)
            squares += sum((each - mean) ** 2 for each in readings)
            freedom += len(readings) - 1
        return math.sqrt(squares / freedom) if freedom else None

    @property
    def spread_mm(self) -> float:
        """Standard deviation of one reading: as stated, or the scatter where that is more."""
        stated = [e.repeatability_mm for e in self._entries if isinstance(e, MeasuredEntry)]
        return max([self.scatter_mm or 0.0, *stated])

    @property
    def notices(self) -> tuple[Notice, ...]:
        """Find readings that differ more than stated."""
        stated = [e.repeatability_mm for e in self._entries if isinstance(e, MeasuredEntry)]
        scatter = self.scatter_mm
        if scatter is None or scatter <= max(_MORE * max(stated), 0.001):
            return ()
        return (Notice("scatter", {"scatter": scatter, "stated": max(stated)}),)

    def estimate(self) -> FitEstimate:
        """Learn from all entries. Raises InvalidInput without a measurement."""
        from backspring.fit.estimate import learn

        if not any(isinstance(entry, MeasuredEntry) for entry in self._entries):
            raise refusal("log", "no readings yet: measure first")
        scatter_mm = self.scatter_mm or 0.0
        require_no_forgotten_trip(self._entries, len(self._stood), scatter_mm, self.units)
        if self._found is None or self._found[0] != self._entries:
            self._found = (self._entries, learn(self.design.core, self._entries, scatter_mm))
        return self._found[1]

    def plan(
        self,
        *,
        target: Any = TARGET,
        reserve: float = 1 / 3,
        closed_by: ClosedBy = "level",
        material: Mapping[str, Any] | None = None,
        tip: Any = None,
        tip_allowance: Any = TIP_ALLOWANCE,
    ) -> FitPlan:
        """Plan the next passes, no finer than readings repeat. Options are those of fit_plan.

        Raises InvalidInput when the last loaded reading lies more than three of its standard
        deviations from what the log tells of it.
        """
        found = self.estimate()
        require_agreement(found.observations, self.units)
        last = [e.state for e in self._entries if isinstance(e, MeasuredEntry)][-1]
        rules = plan_rules(target, self.spread_mm, reserve, closed_by, material, tip, tip_allowance)
        more = (*self.notices, *_uncertain_readings(found, self.spread_mm))
        return make_plan(self.design, found.now, last, rules, found.unknowns, more)

    def to_dict(self) -> dict[str, Any]:
        """Return what the log holds and tells, as plain data ready for JSON."""
        found = self.estimate()
        return {
            "entries": len(self._entries),
            "scatter_mm": self.scatter_mm,
            "half_stop_loaded_mm": found.half_stop_loaded_mm,
            "half_stop_spread_mm": found.half_stop_spread_mm,
            "closed_loaded_mm": found.closed_loaded_mm,
            "closed_spread_mm": found.closed_spread_mm,
            "learned": {name: asdict(getattr(found, name)) for name in LEARNED},
        }

    def _add(self, entry: Entry) -> None:
        if self._holding:
            self._entries = (*self._entries, entry)
            return
        with self.together():
            self._entries = (*self._entries, entry)

    def _require_answer(self) -> None:
        if any(isinstance(entry, MeasuredEntry) for entry in self._entries):
            require_agreement(self.estimate().observations, self.units)

    def _read(self) -> tuple[Entry, ...]:
        return () if self.path is None else tuple(read_log(self.path, self.design))

    def _alone(self) -> AbstractContextManager[None]:
        return nullcontext() if self.path is None else locked(self.path, "log")

    def _write(self, entries: tuple[Entry, ...]) -> None:
        if self.path is not None:
            if self._read() != self._stood:
                raise refusal("log", f"another has written {self.path} meanwhile: read it anew")
            write_log(self.path, self.design, entries)
        self._stood = entries


def _uncertain_readings(found: FitEstimate, spread_mm: float) -> tuple[Notice, ...]:
    """Tell where unloaded readings say less about the loaded ones than they seem to."""
    widest = max(found.closed_spread_mm, found.half_stop_spread_mm or 0.0)
    if widest <= _MORE * max(spread_mm, 0.001):
        return ()
    return (Notice("measure-loaded", {"spread": widest}),)


def _within(value: Any, key: str, column: str) -> float:
    read = length(value, key)
    rule = broken_limit(column, read)
    if rule:
        raise refusal(key, rule)
    return read
