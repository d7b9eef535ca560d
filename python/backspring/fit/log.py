"""A fitting log: what was measured and ground, what that tells, and the next pass."""

from __future__ import annotations

import math
import os
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import asdict
from pathlib import Path
from typing import TYPE_CHECKING, Any

from backspring.design.arguments import length, refusal
from backspring.design.design import Design
from backspring.fit.log_file import Entry, GroundEntry, MeasuredEntry, read_log, write_log
from backspring.fit.plan import TARGET, ClosedBy, State, make_plan, plan_rules
from backspring.fit.plan import state_of as _state_of
from backspring.fit.result import FACES, FitPlan
from backspring.notice import Notice

if TYPE_CHECKING:
    from backspring.fit.estimate import FitEstimate

REPEATABILITY = "0.002 mm"
LEARNED = ("pad_tilt_rad", "pivot_play_mm", "root_stiffness_nmm_per_rad")
_LARGEST_MM = 3.0
_CONTRADICTS = 2.0


class FitLog:
    """Measurements and grinds of one knife, in turn.

    With a path every entry is written at once, whole or not at all; what stood in the file is read
    first and kept; what another wrote there meanwhile is not written over. The same entries always
    give the same answers.
    """

    def __init__(self, design: Design, path: str | os.PathLike[str] | None = None) -> None:
        self.design = design
        self.path = None if path is None else Path(path)
        self._square = design.core.tang.half_stop_mm is not None
        self._written = self._entries = self._read()
        self._holding = False

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
        """Add what the dial showed; `repeatability` is the standard deviation of one reading."""
        _state_of(state)
        if (half_stop is None) == self._square:
            wanted = "missing: this tang has a half-stop" if self._square else "this tang has none"
            raise refusal("half_stop", wanted)
        half_mm = None if half_stop is None else _within(half_stop, "half_stop", -_LARGEST_MM)
        closed_mm = _within(closed, "closed", -_LARGEST_MM)
        spread_mm = _within(repeatability, "repeatability", 0.0, 0.2)
        self._add(MeasuredEntry(state, half_mm, closed_mm, spread_mm))

    def grind(self, face: str, depth: Any) -> None:
        """Add what came off a face: "open", "half_stop", "closed" near the pivot, or "kick"."""
        here = [
            each
            for each in FACES
            if (each != "half_stop" or self._square)
            and (each != "kick" or self.design.core.tang.kick is not None)
        ]
        if face not in here:
            raise refusal("ground", f"this tang's faces are {', '.join(here)}; got {face!r}")
        self._add(GroundEntry(face, _within(depth, "ground", 0.0)))

    @contextmanager
    def together(self) -> Iterator[None]:
        """Write what is added inside in one go, or nothing of it when something is refused."""
        stood, self._holding = self._entries, True
        try:
            yield
            if self._entries != stood:
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
        for readings in self._repeats().values():
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
        if scatter is None or scatter <= max(_CONTRADICTS * max(stated), 0.001):
            return ()
        return (Notice("scatter", {"scatter": scatter, "stated": max(stated)}),)

    def estimate(self) -> FitEstimate:
        """Learn from all entries. Raises InvalidInput without a measurement."""
        from backspring.fit.estimate import learn

        if not any(isinstance(entry, MeasuredEntry) for entry in self._entries):
            raise refusal("log", "no readings yet: measure first")
        return learn(self.design.core, self._entries, self.scatter_mm or 0.0)

    def plan(
        self,
        *,
        target: Any = TARGET,
        reserve: float = 1 / 3,
        closed_by: ClosedBy = "least",
        material: Mapping[str, Any] | None = None,
    ) -> FitPlan:
        """Plan the next passes, no finer than readings repeat. Options are those of fit_plan."""
        found = self.estimate()
        last = [e.state for e in self._entries if isinstance(e, MeasuredEntry)][-1]
        rules = plan_rules(target, self.spread_mm, reserve, closed_by, material)
        more = (*self.notices, *_unsure(found, self.spread_mm))
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
        entries = (*self._entries, entry)
        if not self._holding:
            self._write(entries)
        self._entries = entries

    def _read(self) -> tuple[Entry, ...]:
        if self.path is None:
            return ()
        return tuple(read_log(self.path, self.design.name, self._square))

    def _write(self, entries: tuple[Entry, ...]) -> None:
        if self.path is None:
            return
        if self._read() != self._written:
            raise refusal("log", f"another has written {self.path} meanwhile: read it anew")
        write_log(self.path, self.design.name, entries)
        self._written = entries

    def _repeats(self) -> dict[tuple[int, str, str], list[float]]:
        """Find readings of one state and position with nothing ground between them."""
        found: dict[tuple[int, str, str], list[float]] = {}
        stage = 0
        for entry in self._entries:
            if isinstance(entry, GroundEntry):
                stage += 1
                continue
            for name, value in (("half", entry.half_stop_mm), ("closed", entry.closed_mm)):
                if value is not None:
                    found.setdefault((stage, entry.state, name), []).append(value)
        return found


def _unsure(found: FitEstimate, spread_mm: float) -> tuple[Notice, ...]:
    """Tell where unloaded readings say less about the loaded ones than they seem to."""
    widest = max(found.closed_spread_mm, found.half_stop_spread_mm or 0.0)
    if widest <= _CONTRADICTS * max(spread_mm, 0.001):
        return ()
    return (Notice("measure-loaded", {"spread": widest}),)


def _within(value: Any, key: str, low_mm: float, high_mm: float = _LARGEST_MM) -> float:
    read = length(value, key)
    if not low_mm <= read <= high_mm:
        message = f"must be from {low_mm:g} mm to {high_mm:g} mm, got {read:.10g} mm"
        raise refusal(key, message)
    return read
