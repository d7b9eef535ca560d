"""Spares the open face: what comes off it raises every reading and takes preload, for good.

It is not ground for a low reading that was read only once: a sign or a decimal point is sooner lost
than steel.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from backspring import _core
from backspring.core_record import changed
from backspring.fit.log_entry import Entry, GroundEntry, MeasuredEntry
from backspring.fit.misfit import repeats
from backspring.fit.result import FitPlan, loaded_now


def read_once(entries: Sequence[Entry], result: _core.FitPlan, target_mm: float) -> tuple[str, ...]:
    """Name the positions for whose sake the open face would be ground and that were read once.

    After a trip to the open face a low reading comes as no surprise.
    """
    since = _since_the_reading_before(entries)
    if not result.removed.open_mm or any(
        isinstance(each, GroundEntry) and each.face == "open" for each in since
    ):
        return ()
    trips = sum(isinstance(each, GroundEntry) for each in entries)
    count: dict[str, int] = {}
    for (trip, _, position), readings in repeats(entries).items():
        if trip == trips:
            count[position] = count.get(position, 0) + len(readings)
    low = [name for name, value in loaded_now(result).items() if value < target_mm]
    return tuple(name for name in low if count.get(name, 0) < 2)


def _since_the_reading_before(entries: Sequence[Entry]) -> Sequence[Entry]:
    read = [place for place, each in enumerate(entries) if isinstance(each, MeasuredEntry)]
    return entries[read[-2] if len(read) > 1 else 0 :]


def once_read_again(plan: FitPlan, entries: Sequence[Entry]) -> FitPlan:
    """Return a plan as it is, or one of nothing where a low reading was read only once."""
    again = read_once(entries, plan.result, plan.target_mm)
    return reading_again(plan, again) if again else plan


def reading_again(plan: FitPlan, positions: tuple[str, ...]) -> FitPlan:
    """Plan nothing until these are read again."""
    return replace(plan, result=nothing_off(plan.result), read_again=positions)


def nothing_off(result: _core.FitPlan) -> _core.FitPlan:
    """Return a plan that leaves everything as it is."""
    return changed(
        result,
        steps=[],
        passes=0,
        removed=_core.FaceDepths(),
        left_standing=_core.FaceDepths(),
        done=result.now,
        tip_mm=None if result.tip_mm is None else 0.0,
        tip_runs_out=None,
        level_removed=None,
        notices=[],
    )
