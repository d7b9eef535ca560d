"""Leaves standing what is too little to grind: less than a reading of the dial repeats to."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from backspring import _core
from backspring.core_record import changed
from backspring.notice import Notice

_NAMES = {"half_stop": "half-stop face", "kick": "kick"}
_OF_THE_TIP = ("moves-tip", "tip-runs-out", "tip-follows")


@dataclass(frozen=True, slots=True)
class Standing:
    """What is left on faces [mm], for less than `least_mm` is not ordered off."""

    left_on: Mapping[str, float] = field(default_factory=dict)
    least_mm: float = 0.0

    def notices(self) -> tuple[Notice, ...]:
        """Say so."""
        if not self.left_on:
            return ()
        *others, last = (_NAMES.get(face, f"{face} face") for face in self.left_on)
        names = f"{', '.join(others)} and {last}" if others else last
        return (Notice("left-standing", {"names": names, "least": self.least_mm}),)

    def to_dict(self) -> dict[str, Any]:
        """Return what is left by face, as plain data."""
        faces = _core.TangFace.__members__
        left = {f"{face}_mm": self.left_on.get(face, 0.0) for face in faces}
        return {"least_mm": self.least_mm, **left}


def plan_worth_it(
    now: _core.Design,
    blades: Sequence[_core.FittedBlade],
    state: _core.FitState,
    rules: _core.PlanRules,
    short_mm: float,
    least_mm: float,
) -> tuple[_core.BladesPlan, list[dict[str, float]]]:
    """Plan without steps of less than `least_mm`; by blade, what these would have taken off [mm].

    `short_mm` is how much farther off the target to stop; where the open face goes, nothing is. A
    face that is left so stands proud by that much: what comes off is never put back.
    """
    short = changed(rules, target_mm=rules.target_mm + short_mm)
    plan = _core.fit_plan_of_blades(now, blades, state, short)
    if short_mm and any(each.removed.open_mm for each in plan.blades):
        plan = _core.fit_plan_of_blades(now, blades, state, rules)
    if all(step.remove_mm >= least_mm for step in plan.steps):
        return plan, [{} for _ in blades]
    return _Passes(plan, blades, state, least_mm).told()


class _Passes:
    """A plan's steps that are worth it, with what is read after each worked out anew.

    Within a pass a blade is read with the others as they stood when it began.
    """

    def __init__(
        self,
        plan: _core.BladesPlan,
        blades: Sequence[_core.FittedBlade],
        state: _core.FitState,
        least_mm: float,
    ) -> None:
        self.plan, self.blades, self.state = plan, blades, state
        self.left_on: list[dict[str, float]] = [{} for _ in blades]
        self.off = [dict.fromkeys(_core.TangFace.__members__, 0.0) for _ in blades]
        self.names = [plan.now.blades[each.blade].name for each in blades]
        self.kept = [*self._kept(least_mm)]
        passes = sorted({step.pass_number for step in self.kept})
        self.pass_of = {number: place for place, number in enumerate(passes, start=1)}

    def told(self) -> tuple[_core.BladesPlan, list[dict[str, float]]]:
        """Return what is left of the plan, and by blade what is left on."""
        steps: list[_core.FitStep] = []
        for number in self.pass_of:
            stood = [dict(each) for each in self.off]
            for step in self.kept:
                if step.pass_number == number:
                    at = self._place(step)
                    self.off[at][step.face.name] += step.remove_mm
                    among = [off if n != at else self.off[n] for n, off in enumerate(stood)]
                    steps.append(self._read(step, at, among, len(steps) + 1))
        done = self._ground(self.off)
        own = [self._own(at, steps, done) for at in range(len(self.blades))]
        told = changed(self.plan, blades=own, steps=steps, passes=len(self.pass_of), done=done)
        return told, self.left_on

    def _kept(self, least_mm: float) -> Iterator[_core.FitStep]:
        """Yield steps that are worth it; what is too little waits for the face's next."""
        for step in self.plan.steps:
            waiting, face = self.left_on[self._place(step)], step.face.name
            remove_mm = waiting.pop(face, 0.0) + step.remove_mm
            # What else goes counts on the open face: it is ground, or nothing is.
            if remove_mm >= least_mm or face == "open":
                yield changed(step, remove_mm=remove_mm)
            else:
                waiting[face] = remove_mm

    def _place(self, step: _core.FitStep) -> int:
        return self.names.index(step.blade)

    def _ground(self, off: Sequence[Mapping[str, float]]) -> _core.Design:
        """Return the knife with these depths off each blade."""
        blades = list(self.plan.now.blades)
        for fitted, depths in zip(self.blades, off, strict=True):
            alone = changed(self.plan.now, blades=[blades[fitted.blade]])
            ground = _core.take_off(alone, _depths(depths))
            blades[fitted.blade] = ground.blades[0]
        return changed(self.plan.now, blades=blades)

    def _read(
        self, step: _core.FitStep, at: int, off: Sequence[Mapping[str, float]], number: int
    ) -> _core.FitStep:
        fitted = self.blades[at]
        seen = _core.seen_from(self._ground(off), fitted.blade)
        both = _core.fit_readings(seen, fitted.unknowns)
        shown = both.loaded if self.state == _core.FitState.loaded else both.unloaded
        alone = len(self.plan.now.blades) == 1
        lowest = both.loaded if alone else _core.lowest_readings(seen, fitted.unknowns)
        return changed(
            step,
            step=number,
            pass_number=self.pass_of[step.pass_number],
            half_stop_mm=shown.half_stop_mm,
            closed_mm=shown.closed_mm,
            half_stop_loaded_mm=lowest.half_stop_mm,
            closed_loaded_mm=lowest.closed_mm,
            tip_mm=None if step.tip_mm is None else self._tip_mm(at, both),
        )

    def _tip_mm(self, at: int, both: _core.FitReadings) -> float | None:
        """Say how far the tip has moved from where it stands now."""
        fitted = self.blades[at]
        seen = _core.seen_from(self.plan.now, fitted.blade)
        begun = _core.fit_readings(seen, fitted.unknowns)
        angles = both.closed_angle_deg, begun.closed_angle_deg
        now, then = (None if a is None else _core.tip_height_mm(seen, a) for a in angles)
        return None if now is None or then is None else now - then

    def _own(self, at: int, steps: Sequence[_core.FitStep], done: _core.Design) -> _core.FitPlan:
        own, before = [each for each in steps if self._place(each) == at], self.plan.blades[at]
        stays = None if before.tip_mm is None else 0.0
        return changed(
            before,
            steps=own,
            passes=own[-1].pass_number if own else 0,
            removed=_depths(self.off[at]),
            tip_mm=own[-1].tip_mm if own else stays,
            done=_core.seen_from(done, self.blades[at].blade),
            notices=self._notices(at, before, own),
        )

    def _notices(
        self, at: int, before: _core.FitPlan, own: Sequence[_core.FitStep]
    ) -> list[_core.Notice]:
        """Return the plan's own notices but for those of what is no longer ground."""
        stale = {"lowers-open"} if not self.off[at]["open"] else set()
        stale |= set() if own else {*_OF_THE_TIP, "fit-done"}
        kept = [each for each in before.notices if _core.name_of(each.code) not in stale]
        return kept if own else [_core.Notice(code=_core.NoticeCode.fit_done), *kept]


def _depths(off: Mapping[str, float]) -> _core.FaceDepths:
    return _core.FaceDepths(**{f"{face}_mm": depth for face, depth in off.items()})
