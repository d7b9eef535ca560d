"""The turning test of a bushing: what a round one would read, and how far this one is from it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Any

from backspring import _core
from backspring.design.arguments import input_faults, length
from backspring.faults import Fault, invalid
from backspring.report.result import Reported

QUARTERS = 4


@dataclass(frozen=True, repr=False)
class Bushing(Reported):
    """What a turning test tells; None stands for what its readings leave unknown. mm."""

    _report_by = "bushing:bushing_report"

    readings: tuple[_core.TurnedReading, ...]
    result: _core.TurningTest

    @property
    def unknown(self) -> tuple[str, ...]:
        """What stays unknown: names of results."""
        return tuple(_unknown(self))

    def to_dict(self) -> dict[str, Any]:
        """Results as plain data, ready for JSON; every name carries its unit."""
        names = ("half_stop_mm", "closed_mm")
        figures = ("eccentricity_mm", "oval_mm", "scatter_mm")
        spreads = ("half_stop_spread_mm", "closed_spread_mm")
        return {
            "readings": [
                {"quarter": each.quarter, **{name: getattr(each, name) for name in names}}
                for each in self.readings
            ],
            "round": {name: getattr(self.result, name) for name in names},
            **{name: getattr(self.result, name) for name in (*figures, *spreads)},
            "unknown": list(self.unknown),
        }


def turning_test(
    half_stop: Sequence[Any] | None = None, closed: Sequence[Any] | None = None
) -> Bushing:
    """Tell a bushing that is not round from readings with it turned by quarters in the tang.

    Up to four readings for each position, relative to open at the same setting, in the order of
    the quarters; None where one was not read. Bare numbers are mm. Their mean over four quarters
    is what a round bushing will read; fewer leave some of it unknown. Raises InvalidInput with
    every fault.
    """
    given = {"half_stop": half_stop or (), "closed": closed or ()}
    if faults := [*_faults(given)]:
        raise invalid(faults)
    numbers = {
        name: [None if each is None else length(each, name) for each in values]
        for name, values in given.items()
    }
    readings = []
    for quarter in range(QUARTERS):
        values = {
            f"{name}_mm": read[quarter] if quarter < len(read) else None
            for name, read in numbers.items()
        }
        if any(value is not None for value in values.values()):
            readings.append(_core.TurnedReading(quarter=quarter, **values))
    with input_faults():
        return Bushing(tuple(readings), _core.turning_test(readings))


def _faults(given: dict[str, Sequence[Any]]) -> Iterator[Fault]:
    for name, values in given.items():
        if isinstance(values, str) or len(values) > QUARTERS:
            got = repr(values) if isinstance(values, str) else f"{len(values)} readings"
            yield Fault("bad-value", name, f"must be up to four readings, got {got}")


def _unknown(bushing: Bushing) -> Iterator[str]:
    read, result = bushing.readings, bushing.result
    for name in ("half_stop", "closed"):
        taken = any(getattr(each, f"{name}_mm") is not None for each in read)
        if taken and getattr(result, f"{name}_mm") is None:
            yield name
    if result.eccentricity_mm is None:
        yield "eccentricity"
    if result.oval_mm is None:
        yield "oval"
