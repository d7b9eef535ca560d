"""Checks a design: three positions, strokes, stress, margins, readings, and the targets."""

from __future__ import annotations

from functools import cached_property
from typing import Literal, NamedTuple

from backspring import _core
from backspring.design.design import Design
from backspring.notice import Notice, all_from_core
from backspring.question.budget import error_budget
from backspring.question.judged import Judged
from backspring.question.targets import TargetResult, target_results
from backspring.question.whole_back import WholeBack, whole_back


class Beside(NamedTuple):
    """One blade with the others in one of their positions. mm, N, N mm, MPa, mJ, degrees.

    Stress is the worst of the whole spring; behind the pins its stations are below 0. Contacts are
    from the blade's own pivot.
    """

    result: _core.Beside

    @property
    def others(self) -> list[_core.OtherBlade]:
        """Where each other blade stands, and how hard its tang bears while this one turns."""
        return self.result.others

    @property
    def positions(self) -> dict[str, _core.Position]:
        """Positions the blade has by name; loaded readings are relative to all blades open."""
        return {position.name: position for position in self.result.positions}

    @property
    def strokes(self) -> list[_core.StrokeReport]:
        """Opening strokes in turn; none when a blade does not stay where it should."""
        return self.result.strokes

    @property
    def travel(self) -> _core.Travel:
        """The worst while this blade turns."""
        return self.result.travel


class Check(Judged):
    """Everything one check says of a blade. mm, N, N mm, MPa, mJ, degrees.

    Of a blade that shares its spring: with all others closed; `beside` has every case, and
    verdict, targets and notices are the worst of them.
    """

    _report_by = "check:check_report"
    _data_by = "check_data:check_data"

    design: Design
    result: _core.Check

    def __init__(self, design: Design, result: _core.Check) -> None:
        vars(self).update(design=design, result=result)

    @property
    def notices(self) -> tuple[Notice, ...]:
        """What a maker should know about this blade and the design."""
        return (*notices_of_blade(self), *self.design.notices)

    @cached_property
    def positions(self) -> dict[str, _core.Position]:
        """Positions the blade has by name: "open", "half_stop", "closed"."""
        return {position.name: position for position in self.result.positions}

    @property
    def strokes(self) -> list[_core.StrokeReport]:
        """Opening strokes in turn; none when the blade does not stay closed or open."""
        return self.result.strokes

    @property
    def travel(self) -> _core.Travel:
        """The worst between closed and open."""
        return self.result.travel

    @cached_property
    def beside(self) -> list[Beside]:
        """A row for every case of the other blades, all closed first; none for a blade alone."""
        return [Beside(row) for row in self.result.beside]

    @cached_property
    def feel(self) -> _core.Feel:
        """What the hand meets: rise, evenness, seats, and the pull of an oiled and a dry joint."""
        return _core.feel(self.design.core)

    @cached_property
    def error_budget(self) -> _core.ErrorBudget:
        """What the model leaves out, sized for this design, and its sum."""
        return error_budget(self.design)

    @property
    def budget(self) -> list[_core.BudgetRow]:
        """Its effects, greatest first."""
        return self.error_budget.rows

    @cached_property
    def peened(self) -> Check | None:
        """The same with the spring's pins peened tight; None where no clearance is stated."""
        pins = self.design.core.spring.pin_clearance
        if not (pins.middle_mm or pins.rear_mm):
            return None
        return check_blade(self.design.replace(**{"spring.pin_clearance": None}))

    @cached_property
    def on_fixture(self) -> Check | None:
        """The same on a fixture whose pins stand still; None where no frame is stated.

        The pins' clearances stay: they are the spring's and the tang's.
        """
        if _core.frame_of(self.design.core) is None:
            return None
        return check_blade(self.design.replace(frame=None))

    @property
    def stiffness_n_per_mm(self) -> float:
        """Stiffness of the spring at the pivot station [N/mm]."""
        return self.result.stiffness_n_per_mm

    @property
    def closed_blade(self) -> _core.ClosedBlade:
        """Tip against the handle's rim and edge against the spring, closed; what is known."""
        return self.result.closed_blade

    @property
    def status(self) -> Literal["pass", "fail"]:
        """Whether all targets are met and all results are possible."""
        return "fail" if self.result.impossible else super().status

    @cached_property
    def along(self) -> WholeBack:
        """The whole back against open, pins in, and readings to fit for that keep it flat."""
        return whole_back(self.design.core)

    @property
    def verdict(self) -> list[_core.Margin]:
        """Ways to fail that the design's data allow to judge: failures first, notes last."""
        return self.result.verdict


class BladesCheck(Judged):
    """A check of every blade on a spring: `check.blades["pen"]` is that blade's.

    Targets are judged by the worst case of all blades.
    """

    _report_by = "check_blades:check_blades_report"
    _data_by = "check_data:blades_check_data"

    design: Design
    blades: dict[str, Check]

    def __init__(self, design: Design, blades: dict[str, Check]) -> None:
        vars(self).update(design=design, blades=blades)

    @property
    def result(self) -> list[_core.Check]:
        """What the core says of each blade."""
        return [each.result for each in self.blades.values()]

    @cached_property
    def targets(self) -> tuple[TargetResult, ...]:
        """Targets the design states and the yield margin, the worst of all blades."""
        return target_results(_core.worst_targets([each.targets for each in self.result]))

    @property
    def notices(self) -> tuple[Notice, ...]:
        """What a maker should know of each blade, and of the design."""
        found = (notice for each in self.blades.values() for notice in notices_of_blade(each))
        return (*found, *self.design.notices)

    @property
    def status(self) -> Literal["pass", "fail"]:
        """Whether all blades meet all targets and all results are possible."""
        return "fail" if any(each.impossible for each in self.result) else super().status


def notices_of_blade(check: Check) -> tuple[Notice, ...]:
    """Return what the core found of a blade, with the blades that share its pin."""
    own, *others = check.design.core.blades
    pin = own.end, own.tang.pivot_mm
    mates = [each.name for each in others if (each.end, each.tang.pivot_mm) == pin]

    def explained(notice: Notice) -> Notice:
        if notice.code == "lifted-off" and mates:
            return Notice(notice.code, {**notice.values, "prouder": " or ".join(mates)})
        if notice.code == "other-loose" and notice.values["other"] in mates:
            return Notice(notice.code, {**notice.values, "beside_it": "yes"})
        return notice

    return tuple(map(explained, all_from_core(check.result.notices)))


def check(design: Design) -> Check | BladesCheck:
    """Check a design: every blade, or the one it is seen from.

    Every blade is checked with the others in every position they have, where they seat anew as the
    spring moves under them. A spring on one pin turns on it, and blades seat, without friction.

    Yielding or a blade that does not stay is a result, not an error. Raises NoConvergence without a
    solution.
    """
    if not design.of_all_blades:
        return check_blade(design)
    found = {name: check_blade(design.seen_from(name)) for name in design.blades}
    return BladesCheck(design, found)


def check_blade(design: Design) -> Check:
    """Check the blade that questions of a design are about."""
    return Check(design, _core.check(design.core))
