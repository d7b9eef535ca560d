"""One knife: its drawing, and the log of all that was measured on it and done to it."""

from __future__ import annotations

import os
from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING, Any

from backspring.design.arguments import refusal
from backspring.design.design import Design
from backspring.fit.beside import among, entries_of, others_learned
from backspring.fit.doubts import MORE, doubts
from backspring.fit.given import read_figures, read_ground, read_readings
from backspring.fit.goodness import DIAL_MM
from backspring.fit.knife_log import KnifeLog
from backspring.fit.log_entry import Entry, MeasuredEntry
from backspring.fit.misfit import require_no_forgotten_trip
from backspring.fit.open_face import once_read_again
from backspring.fit.plan import TARGET, TIP_ALLOWANCE, ClosedBy, State, make_plan, plan_rules
from backspring.fit.plan_of_log import stops_short_mm, tip_wanted
from backspring.fit.result import FitPlan
from backspring.fit.suspect import require_agreement
from backspring.notice import Notice
from backspring.report.result import Reported
from backspring.units import System

if TYPE_CHECKING:
    from backspring.fit.estimate import Figured, FitEstimate
    from backspring.fit.habits import ShopHabits
    from backspring.fit.next_measurement import NextMeasurement
    from backspring.many.spreads import SpreadsTogether

REPEATABILITY = f"{DIAL_MM} mm"
_TOO_WIDE_MM = 0.1  # With readings less sure than this nothing is planned.


class Knife(KnifeLog, Reported):
    """A design plus the log of one knife made from it.

    An entry is kept when the log still has an answer with it, and with a path is written then,
    whole or not at all; what another wrote there meanwhile is not written over. `units` are those
    that refusals speak in; `habits` of the shop, from shop_habits(), take the place of practice.

    Of several blades it is one's, the one a design is seen from: Knife(design.seen_from("pen"),
    path). All share the file, in which every entry has its blade's name. A blade is estimated from
    its own entries and from what came off the spring, with the others as theirs tell; what each
    tells of the spring is not pooled.
    """

    _report_by = "knife:knife_report"

    def __init__(
        self,
        design: Design,
        path: str | os.PathLike[str] | None = None,
        *,
        units: System | None = None,
        habits: ShopHabits | None = None,
    ) -> None:
        if design.of_all_blades:
            which = f'design.seen_from("{design.blades[0]}")'
            raise refusal("design", f"has several blades: say which, {which}")
        super().__init__(design, path)
        if habits is not None and self.path is not None and self.path.resolve() in habits.files:
            raise refusal("habits", f"already count {self.path}: give shop_habits() it as without")
        self.habits = habits
        self.units: System = units or design.units
        self._found: dict[tuple[Entry, ...], FitEstimate] = {}

    def measure(
        self,
        *,
        closed: Any = None,
        half_stop: Any = None,
        state: State | None = None,
        repeatability: Any = REPEATABILITY,
        pull: Any = None,
        closing_pull: Any = None,
        start_pull: Any = None,
        hang: str | None = None,
        moved: Any = None,
        thickness: Mapping[Any, Any] | None = None,
        hardness: Any = None,
        tip_height: Any = None,
        gap: str | Sequence[str] | None = None,
    ) -> None:
        """Add what was measured.

        Readings of the dial need their `state`; `repeatability` is the standard deviation of one.
        `pull` and `closing_pull` are the greatest at the nail nick, `start_pull` what it takes to
        leave closed. `hang` is a weight and its station as "2 kg at 32 mm" with what the dial
        `moved`, pins in and blade out; `thickness` goes by station, `hardness` may be a list.
        `tip_height` is the closed blade's tip over the handle's rim, `gap` what a feeler finds
        between edge and belly there and where, as "0.3 mm at 10 mm".

        Raises InvalidInput when a reading differs from an earlier one with nothing ground between,
        or when all that is logged contradicts it.
        """
        read = read_readings(self.drawn, self.entries, half_stop, closed, state, repeatability)
        figures = {
            "pull": pull,
            "closing_pull": closing_pull,
            "start_pull": start_pull,
            "hang": hang,
            "moved": moved,
            "thickness": thickness,
            "hardness": hardness,
            "tip_height": tip_height,
            "gap": gap,
        }
        added: list[Entry] = [*read, *read_figures(self.drawn, figures)]
        if not added:
            raise refusal("measure", "nothing measured: give a reading, pull, weight or thickness")
        self._add(*added)

    def ground(self, face: str, depth: Any = None, region: Sequence[Any] | None = None) -> None:
        """Add a trip to the grinder: a face of the tang, or the spring's "back" or "belly".

        Without a `depth` what comes off is learned from the readings before and after. `region`
        is two stations of back or belly; without it the whole back, behind the middle pin too, or
        the belly from the middle pin to the pad, as grind() takes them.
        """
        self._add(read_ground(self.drawn, face, depth, region))

    @property
    def blades(self) -> dict[str, Knife]:
        """The same log as each blade of the spring has it, to be read and not added to."""
        found = dict.fromkeys(self.drawn.blades, self)
        for name in found.keys() - {self.drawn.blade}:
            found[name] = Knife(self.drawn.seen_from(name), units=self.units)
            found[name].habits = self.habits
            found[name]._stood = found[name]._entries = self._entries
        return found

    @property
    def notices(self) -> tuple[Notice, ...]:
        """Find readings that differ more than stated, and habits that rest on too little."""
        found = () if self.habits is None else self.habits.notices
        stated, scatter = max(self._stated(), default=0.0), self.scatter_mm
        if scatter is None or scatter <= max(MORE * stated, 0.001):
            return found
        return (*found, Notice("scatter", {"scatter": scatter, "stated": stated}))

    @property
    def design(self) -> Design:
        """The likely design of this knife as it stands.

        Tilt, play, extra rotation at the root and what the model leaves out have no place in a
        design: its faces and Young's modulus stand in for them, so that it reads and pulls alike.
        """
        from backspring.fit.in_drawing import drawn_alike
        from backspring.fit.likely import likely_among, likely_design

        drawn = likely_among(self.drawn, self._others())
        return likely_design(drawn, drawn_alike(self.estimate()))

    @property
    def spreads(self) -> SpreadsTogether:
        """How sure the numbers of `design` are, for `tolerance(knife.design, knife.spreads)`."""
        from backspring.fit.in_drawing import spreads_of

        return spreads_of(self.estimate(), self.design)

    @property
    def figures(self) -> dict[str, Figured]:
        """Loaded readings, pulls, stress and margin as it stands, each with its sd."""
        return self.estimate().figures

    def estimate(self) -> FitEstimate:
        """Learn from all entries; without any, what the drawing and common practice say."""
        own, stood = self.entries, len(entries_of(self.drawn, self._stood))
        require_no_forgotten_trip(own, stood, self.scatter_mm or 0.0, self.units)
        if self._entries not in self._found:
            self._found[self._entries] = self._learn(own, *[*self._found.values()][-1:])
        found = self._found[self._entries]
        if not found.settled:
            require_agreement(own, found, self._learn, self.units, self._mend)
        return found

    def require_agreement(self) -> None:
        """Refuse a log whose measurements contradict each other."""
        require_agreement(self.entries, self.estimate(), self._learn, self.units, self._mend)

    def _learn(self, entries: Sequence[Entry], *before: FitEstimate, **how: Any) -> FitEstimate:
        from backspring.fit.learn import learn

        drawn, scatter_mm = among(self.drawn, self._others()), self.scatter_mm or 0.0
        return learn(drawn, entries, scatter_mm, self.habits, *before, **how)

    def can_plan(self) -> bool:
        """Say whether the loaded readings are known well enough to plan from."""
        read = any(isinstance(entry, MeasuredEntry) for entry in self.entries)
        return read and self.estimate().widest_mm <= _TOO_WIDE_MM

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
        """Plan the next passes, no finer than readings are known. Options are those of fit_plan.

        Where the last loaded reading lies more than three standard deviations off the log the plan
        goes by it, and says so. From unloaded readings it stops two of them short of the target.
        The open face waits for a second reading; a tip stays where it was first logged.

        Raises InvalidInput when nothing was read since a trip.
        """
        states = [each.state for each in self.entries if isinstance(each, MeasuredEntry)]
        if not states:
            raise refusal("log", "no readings yet: measure first")
        self.require_agreement()
        found = self.estimate()
        if not self.can_plan():
            raise refusal("log", "not read since it was ground: measure half-stop and closed first")
        dial_mm, tip = self.spread_mm * found.leeway.dial, tip_wanted(found, tip, closed_by)
        good_mm = max(dial_mm, found.widest_mm)
        given = target, good_mm, reserve, closed_by, material, tip, tip_allowance
        rules = plan_rules(*given, spares_open=True, dial_mm=dial_mm)
        more = (*self.notices, *doubts(found, self.spread_mm))
        how = found.bench, more, stops_short_mm(found, self.spread_mm)
        plan = make_plan(self.drawn, found.now, states[-1], rules, *how)
        return once_read_again(plan, self.entries)

    def next_measurement(self) -> list[NextMeasurement]:
        """List what to measure next: what each would make of a figure's standard deviation."""
        from backspring.fit.next_measurement import next_measurements

        return next_measurements(self.estimate(), self.spread_mm or None)

    def to_dict(self) -> dict[str, Any]:
        """Return what the log holds and tells, as plain data ready for JSON."""
        from backspring.fit.knife_data import knife_data

        habits = {} if self.habits is None else {"habits": self.habits.to_dict()}
        found, following = self.estimate(), self.next_measurement()
        return habits | knife_data(found, len(self.entries), self.scatter_mm, following)

    def _others(self) -> dict[str, FitEstimate]:
        from backspring.fit.learn import learn

        def learned(seen: Design) -> FitEstimate:
            return learn(seen, entries_of(seen, self._entries), 0.0, self.habits)

        return others_learned(self.drawn, self._entries, learned)
