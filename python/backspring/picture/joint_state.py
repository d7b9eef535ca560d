"""All blades of a spring as they stand together, ready to draw."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from backspring import _core
from backspring.picture.mounting import Mounting, angles_deg, mounting
from backspring.picture.spring_shape import SpringShape
from backspring.picture.subject import TRAVEL_ORDER
from backspring.picture.tang_shape import Points, TangShape
from backspring.question.check import Beside, BladesCheck
from backspring.question.sweep import BladeContact, contacts

_OPEN_DEG = 180.0


@dataclass(frozen=True)
class PlacedBlade:
    """One blade of a state. `position` is None for one held at any other angle."""

    name: str
    position: str | None
    contact: BladeContact
    reading_mm: float
    mounting: Mounting

    @cached_property
    def tang(self) -> TangShape:
        """The tang's outline on the spring."""
        return self.mounting.tang(self.contact.blade_angle_deg)

    @property
    def at_rear(self) -> bool:
        """Whether it bears on the other end of the spring."""
        return self.mounting.turned_at_mm is not None

    @property
    def touches(self) -> Points:
        """Where it bears."""
        places = [(touch.x_mm, touch.height_mm) for touch in self.contact.touches]
        return self.mounting.place(np.reshape(places, (-1, 2)))

    @property
    def pivot(self) -> tuple[float, float]:
        """Its pivot."""
        ((x, y),) = self.mounting.place(np.array([self.mounting.design.tang.pivot_mm, 0.0]))
        return float(x), float(y)

    @property
    def dial_mm(self) -> float:
        """Station of its dial."""
        return float(self.mounting.station(self.mounting.design.fit.dial_mm))


@dataclass(frozen=True)
class JointState:
    """The spring and every blade on it; `own` is the one that the state is about."""

    design: _core.Design
    own: str
    blades: tuple[PlacedBlade, ...]
    spring: SpringShape

    @property
    def all_open(self) -> bool:
        """Whether this is the datum of the readings."""
        return all(blade.position == "open" for blade in self.blades)

    def behind(self, blade: PlacedBlade) -> bool:
        """Whether a blade is hidden by the one at its side that comes first."""
        ahead = sorted(self.blades, key=lambda each: each.name != self.own)
        return next(each for each in ahead if each.at_rear == blade.at_rear) is not blade

    def corners(self) -> tuple[float, float, float, float]:
        """Least x, greatest x, least y, greatest y of all that is drawn [mm]."""
        tangs = [blade.tang for blade in self.blades]
        points = [part for tang in tangs for part in (tang.body, tang.blade)]
        x = np.concatenate([self.spring.station_mm, *(each[:, 0] for each in points)])
        y = np.concatenate([self.spring.back_mm, *(each[:, 1] for each in points)])
        return float(x.min()), float(x.max()), float(y.min()), float(y.max())


Row = list[JointState]


def joint_rows(check: BladesCheck, blade: str | None, angle_deg: float | None) -> list[Row]:
    """Rows of states: a blade in each of its positions with the others closed, and open.

    Of each blade in turn, or of one; with an angle, that one held there. What was shown before is
    left out.
    """
    look = _Look(check)
    shown: set[frozenset[tuple[str, str | None]]] = set()
    rows = []
    for name in check.blades if blade is None else [blade]:
        for row in look.rows(name, angle_deg):
            new = {frozenset((b.name, b.position) for b in state.blades) for state in row}
            if angle_deg is not None or not new <= shown:
                rows.append(row)
            shown |= new
    return rows


class _Look:
    """What all states of a check share."""

    def __init__(self, check: BladesCheck) -> None:
        self._check, self._design = check, check.design
        core = self._design.core
        self._mountings = {each.name: mounting(core, at) for at, each in enumerate(core.blades)}
        self._datum = contacts(self._design, dict.fromkeys(check.blades, _OPEN_DEG)).blades

    def rows(self, name: str, angle_deg: float | None) -> Iterator[Row]:
        check = self._check.blades[name]
        cases = _core.cases(self._mountings[name].design)
        pairs = [
            (case, row)
            for case, row in zip(cases, check.beside, strict=True)
            if {other.position for other in row.others} in ({"closed"}, {"open"})
        ]
        if angle_deg is not None:
            yield [self._state(name, case, row, None, angle_deg) for case, row in pairs]
            return
        for position in TRAVEL_ORDER:
            states = [
                self._state(name, case, row, position, row.positions[position].blade_angle_deg)
                for case, row in pairs
                if position in row.positions
            ]
            if states:
                yield states

    def _state(
        self, name: str, case: _core.Design, row: Beside, position: str | None, angle_deg: float
    ) -> JointState:
        standing = angles_deg(case, _core.contact_at(case, angle_deg))
        found = contacts(self._design, standing).blades
        positions = {other.name: other.position for other in row.others} | {name: position}
        placed = tuple(
            PlacedBlade(
                each,
                positions[each],
                found[each],
                found[each].moved_mm - self._datum[each].moved_mm,
                self._mountings[each],
            )
            for each in self._check.blades
        )
        spring = self._mountings[name].spring(case, angle_deg)
        return JointState(self._design.core, name, placed, spring)
