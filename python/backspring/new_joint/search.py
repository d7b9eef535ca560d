"""Looks for a joint that does what is asked: a coarse grid, then the solver, then the blade."""

from __future__ import annotations

import itertools
from collections.abc import Iterator
from dataclasses import dataclass

from backspring.errors import InvalidInput, NoConvergence
from backspring.new_joint.file_text import Tables
from backspring.new_joint.joint import corner_for_rise, drawn_about, rise_of
from backspring.new_joint.places import TIP_INSIDE_MM, Base, bases, blade_of, least_rim_mm, rim_mm
from backspring.new_joint.request import Request
from backspring.new_joint.solving import Candidate, Grid, candidates, design_of, failing, finished
from backspring.question.check import Check, check_blade

_RISES, _PRELOADS = 3, 4
_TRIES = 12
# Steel either side of a hole, in hole diameters: wanted, and least.
LIGAMENT, LEAST_LIGAMENT = 1.0, 0.5
_EDGE_ROUNDS = 5
_SPARE_MM, _TIP_LEAST_MM = 0.02, 1.0
_LEAST_CORNER_MM = 0.2
# Above the least pull that will do, for what rounding takes.
_LOWEST = 1.03
# Places of the grid that the solver goes on from; rounding and faces may give room back.
_OF_EACH, _LEAST_ROOM = 2, -0.03


@dataclass(frozen=True)
class Found:
    """A joint that was finished and checked."""

    tables: Tables
    check: Check
    share: float
    kick: bool


class Search:
    """The grid of one request, and what was finished of it."""

    def __init__(self, request: Request, kick: bool, aim_n: float) -> None:
        self.request, self.kick, self.aim_n = request, kick, aim_n
        self.bases = [*bases(request, kick)]
        grids = [(base.tables, _grid(request, base)) for base in self.bases]
        every = candidates(grids, aim_n, request.yield_margin)
        self.all = [each for each in every if fits(request, each.tables)]
        self.edge_in_the_way = False
        self.best = self.first()

    @property
    def shares(self) -> list[float]:
        """Places of the middle pin that have room at all, the shortest spring first."""
        return sorted({self.bases[each.base].share for each in self.all if each.room > _LEAST_ROOM})

    def ordered(self, share: float | None = None) -> Iterator[Candidate]:
        """Go through what has room, the best of each base first; one share of length alone."""
        seen: dict[int, int] = {}
        some = [
            each
            for each in self.all
            if each.room > _LEAST_ROOM and share in (None, self.bases[each.base].share)
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
        for pin in request.pins_mm:
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


def found_for(request: Request) -> Search | None:
    """Search for the pull asked, then for one lower that will still do.

    With a square closed face first, then with a kick where only the edge is in the way.
    """
    for aim_n in (request.pull_n, _LOWEST * request.band_n[0]):
        for kick in {"square": (False,), "kick": (True,)}.get(request.closed_face, (False, True)):
            search = Search(request, kick, aim_n)
            if search.best is not None:
                return search
            if not search.edge_in_the_way:
                break
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


def fits(request: Request, tables: Tables) -> bool:
    """Whether the joint is inside its bounds, in the handle, with steel about its holes."""
    spring, tang = tables["spring"], tables["tang"]
    middle = max(thick for _, thick in spring["thickness"])
    end = spring["thickness"][-1][1]
    sizes = {
        "thickness": middle,
        "end_thickness": end,
        "preload": tables["fit"]["preload"],
        "rise": rise_of(tang["open"], tang["corner_radius"]),
        "open": tang["open"],
    }
    inside = all(_within(request, name, value) for name, value in sizes.items())
    return (
        inside
        and rim_mm(request, end, tang["open"]) >= least_rim_mm(request)
        and ligament(tables) >= LEAST_LIGAMENT
    )


def _within(request: Request, name: str, value: float) -> bool:
    low, high = request.bounds[name]
    return low - 0.02 <= value <= high + 0.02


def ligament(tables: Tables) -> float:
    """Steel either side of the pin holes, the least, in hole diameters."""
    spring = tables["spring"]
    hole = spring["pin_hole"]
    rear, middle = spring["thickness"][0][1], spring["thickness"][1][1]
    return float(0.5 * (min(rear, middle) - hole) / hole)


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
