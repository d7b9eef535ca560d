"""Looks for a joint that does what is asked: a coarse grid, then the solver, then the blade."""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from backspring.errors import InvalidInput, NoConvergence
from backspring.new_joint.file_text import Tables
from backspring.new_joint.joint import corner_for_rise, drawn_about
from backspring.new_joint.limits import BOUND_SLACK_MM, LIGAMENT, fits, ligament
from backspring.new_joint.places import (
    TIP_INSIDE_MM,
    Base,
    Place,
    bases,
    between_places,
    blade_of,
    least_rim_mm,
    rim_mm,
)
from backspring.new_joint.request import Request
from backspring.new_joint.samples import Grid, Samples
from backspring.new_joint.solving import (
    LEAST_ROOM,
    Candidate,
    candidates,
    design_of,
    failing,
    finished,
)
from backspring.question.check import Check, check_blade

_RISES, _PRELOADS = 3, 4
_TRIES = 12
_EDGE_ROUNDS = 5
_SPARE_MM, _TIP_LEAST_MM = 0.02, 1.0
_LEAST_CORNER_MM = 0.2
# Above the least pull that will do, for what rounding takes.
_LOWEST = 1.03
# Places of the grid that the solver goes on from; rounding and faces may give room back.
_OF_EACH = 2
# Joints that a quick search looks at in one go; how often another goes on between places.
_AT_A_TIME, _ROUNDS = 9, 4
# Places that are looked about again, and how near they must come to what is asked.
_REFINED, _NEAR_ROOM = 3, -0.15


@dataclass(frozen=True)
class Found:
    """A joint that was finished and checked."""

    tables: Tables
    check: Check
    share: float
    kick: bool


class Search:
    """The grid of one request, and what was finished of it.

    A `quick` one asks only whether there is a joint, and stops at the first.
    """

    def __init__(
        self, request: Request, kick: bool, aim_n: float, samples: Samples, quick: bool
    ) -> None:
        self.request, self.kick, self.aim_n = request, kick, aim_n
        self._samples = samples
        self.edge_in_the_way = False
        # The most room that was seen at each place.
        self._rooms: dict[Place, float] = {}
        self.best: Found | None = None
        every = [*bases(request, kick)]
        step = _AT_A_TIME if quick else len(every) or 1
        for start in range(0, max(len(every), 1), step):
            self._look(every[start : start + step])
            self.best = self.first()
            if self.best is not None:
                break

    def _look(self, some: Iterable[Base]) -> None:
        """Go through the grid about some joints, those with room in the handle."""
        request = self.request
        least = request.bounds["end_thickness"][0] - BOUND_SLACK_MM
        self.bases = [
            each
            for each in some
            if rim_mm(request, least, each.tables["tang"]["open"]) >= least_rim_mm(request)
        ]
        grids = [(base.tables, _grid(request, base)) for base in self.bases]
        self.all = candidates(
            grids,
            self.aim_n,
            request.yield_margin,
            self._samples,
            request.pins_mm,
            lambda tables: fits(request, tables),
        )
        for each in self.all:
            place = self.bases[each.base].place
            self._rooms[place] = max(each.room, self._rooms.get(place, -math.inf))

    def refine(self, rounds: int) -> None:
        """Look again between the places of the grid, about those that come nearest."""
        rooms = self._rooms
        for _ in range(rounds):
            about = sorted(rooms, key=lambda place: -rooms[place])[:_REFINED]
            about = [place for place in about if rooms[place] > _NEAR_ROOM]
            new = between_places(self.request, self.kick, about, rooms.keys())
            self._look(new)
            self.best = self.first()
            if self.best is not None or not self.all:
                return

    @property
    def shares(self) -> list[float]:
        """Places of the middle pin that have room at all, the shortest spring first."""
        return sorted({self.bases[each.base].share for each in self.all if each.room > LEAST_ROOM})

    def ordered(self, share: float | None = None) -> Iterator[Candidate]:
        """Go through what has room, the best of each base first; one share of length alone."""
        seen: dict[int, int] = {}
        some = [
            each
            for each in self.all
            if each.room > LEAST_ROOM and share in (None, self.bases[each.base].share)
        ]
        # With a whole hole's width of steel beside the holes where it is to be had.
        for each in sorted(some, key=lambda one: ligament(one.tables) < LIGAMENT):
            seen[each.base] = seen.get(each.base, 0) + 1
            if seen[each.base] <= _OF_EACH:
                yield each

    def first(self, share: float | None = None, tries: int = _TRIES) -> Found | None:
        """Finish candidates in turn until one meets everything."""
        for each in itertools.islice(self.ordered(share), tries):
            found = self._finished(each)
            if found:
                return found
        return None

    def _finished(self, candidate: Candidate) -> Found | None:
        """Finish one, with a thicker pin where a thin one would shear."""
        request = self.request
        least = candidate.tables["spring"]["pin_hole"]
        for pin in (each for each in request.pins_mm if each >= least):
            tables = drawn_about(candidate.tables, spring__pin_hole=pin)
            done = finished(tables, self.aim_n, request.units)
            if done is None or done[1].status != "pass" or not fits(request, done[0]):
                return None
            placed = with_blade(request, done[0])
            if placed is None:
                self.edge_in_the_way = True
                return None
            failed = failing(placed[1])
            if not failed:
                share = self.bases[candidate.base].share
                return Found(*placed, share, self.kick)
            if not any("pin" in each for each in failed):
                return None
        return None


def found_for(request: Request, samples: Samples, *, quick: bool) -> Search | None:
    """Search for the pull asked, then for one lower that will still do, then on a finer grid.

    With a square closed face first, then with a kick where only the edge is in the way. A `quick`
    search stops at the first joint, which need not be the best, and looks finer but once.
    """
    searches: list[Search] = []
    for aim_n in (request.pull_n, _LOWEST * request.band_n[0]):
        searches = []
        for kick in {"square": (False,), "kick": (True,)}.get(request.closed_face, (False, True)):
            search = Search(request, kick, aim_n, samples, quick)
            if search.best is not None:
                return search
            searches.append(search)
            if not search.edge_in_the_way:
                break
    for search in searches:
        search.refine(1 if quick else _ROUNDS)
        if search.best is not None:
            return search
    return None


def lighter(request: Request, found: Found, pull_n: float) -> Found | None:
    """Size a joint that was found for less pull: thinner, with more margin."""
    done = finished(found.tables, pull_n, request.units)
    if done is None or not fits(request, done[0]):
        return None
    targets = {**done[0]["targets"]}
    targets.pop("edge_gap", None)
    placed = with_blade(request, {**done[0], "targets": targets})
    if placed is None or failing(placed[1]):
        return None
    return Found(*placed, found.share, found.kick)


def _grid(request: Request, base: Base) -> Grid:
    low, high = request.bounds["rise"]
    rises = [low + (high - low) * k / (_RISES - 1) for k in range(_RISES)]
    corners = [corner_for_rise(base.open_mm, rise) for rise in rises]
    least, most = request.bounds["preload"]
    ends = request.bounds["open"]
    half = max(0.5 * (ends[1] - ends[0]), 1e-9)
    return Grid(
        tuple(sorted({max(_LEAST_CORNER_MM, each) for each in corners})),
        tuple(least * (most / least) ** (k / (_PRELOADS - 1)) for k in range(_PRELOADS)),
        ((base.open_mm - 0.5 * sum(ends)) / half) ** 2,
    )


def with_blade(request: Request, tables: Tables) -> tuple[Tables, Check] | None:
    """Lay the edge as deep as its gap to the spring allows; None where it would be too shallow."""
    low, high = request.bounds["edge_depth"]
    depth, drop = min(high, tables["tang"]["open"] - request.edge_gap_mm), 0.0
    try:
        for _ in range(_EDGE_ROUNDS):
            if depth < low:
                return None
            blade = blade_of(request, tables, depth, drop)
            trial = drawn_about({**tables, "blade": blade}, targets__edge_gap=request.edge_gap_mm)
            found = check_blade(design_of(trial, request.name, request.units))
            gap = next(each.value for each in found.targets if each.name == "edge_gap")
            if gap is None:
                return None
            tip = found.closed_blade.tip_mm
            if tip is None:
                return None
            if found.status == "pass" and tip <= -_TIP_LEAST_MM:
                return trial, found
            drop += max(tip + TIP_INSIDE_MM, 0.0)
            depth -= max(request.edge_gap_mm - gap + _SPARE_MM, 0.0)
    except (InvalidInput, NoConvergence):
        return None
    return None
