"""Checks a spring with a blade at each end: each blade with the other in every position."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

from backspring import _core
from backspring.design.design import Design
from backspring.faults import Fault, invalid
from backspring.question.check import Judged


@dataclass(frozen=True)
class Beside:
    """One blade while the other stays in one of its positions. mm, N, N mm, MPa, mJ, degrees.

    Stress is the worst of the whole spring; its stations are the first blade's, negative towards
    the second. Contacts are from the blade's own pivot.
    """

    result: _core.Beside

    @cached_property
    def positions(self) -> dict[str, _core.Position]:
        """Positions the blade has by name; loaded readings are relative to both blades open."""
        return {position.name: position for position in self.result.positions}

    @property
    def strokes(self) -> list[_core.StrokeReport]:
        """Opening strokes in turn; none when a blade does not stay where it should."""
        return self.result.strokes

    @property
    def travel(self) -> _core.Travel:
        """The worst while this blade turns."""
        return self.result.travel

    @property
    def other_force_n(self) -> tuple[float, float]:
        """Least and greatest force on the other tang while this blade turns [N]."""
        return self.result.other_force_low_n, self.result.other_force_high_n


@dataclass(frozen=True, repr=False)
class TwoCheck(Judged):
    """Everything a check of two blades says: `check.first["closed"]` is beside the other closed.

    Targets are judged by the worst of both blades' rows.
    """

    _report_by = "check_two:check_two_report"
    _data_by = "check_data:two_check_data"

    design: Design
    result: _core.TwoCheck

    @cached_property
    def first(self) -> dict[str, Beside]:
        """The first blade, by the position of the second."""
        return {row.other: Beside(row) for row in self.result.first}

    @cached_property
    def second(self) -> dict[str, Beside]:
        """The second blade, by the position of the first."""
        return {row.other: Beside(row) for row in self.result.second}


def check_two(design: Design, step_deg: float = 1.0) -> TwoCheck:
    """Check a design with a second blade: each blade with the other in every position it has.

    The other blade seats anew as the spring moves under it. The spring turns on its pin, and a
    blade seats, without friction; set, fatigue, wear and rap are not judged. `step_deg` is the
    grid on which peaks are first looked for, 0.05 to 5 degrees. Raises NoConvergence without a
    solution.
    """
    return TwoCheck(design, _core.check_two(two_blades_of(design), step_deg))


def two_blades_of(design: Design) -> _core.TwoBlades:
    """Return the core's design of both blades; refuses a design with one."""
    if design.two_blades is None:
        message = "missing section [second]: this spring has one blade, use check()"
        raise invalid([Fault("missing-key", "second", message)])
    return design.two_blades
