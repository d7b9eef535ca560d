"""Sizes for a wanted pull with margin: a coarse grid of many designs, then the solver for one."""

from __future__ import annotations

import itertools
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
import numpy.typing as npt

from backspring import _core
from backspring.design.design import Design
from backspring.design.draft import Draft
from backspring.errors import InvalidInput, NoConvergence
from backspring.new_joint.file_text import Tables
from backspring.new_joint.joint import drawn_about, rise_of
from backspring.new_joint.rounding import fine
from backspring.new_joint.samples import Column, Given, Grid, Mask, Samples
from backspring.question.advise_faces import Faces
from backspring.question.advise_trials import Checks
from backspring.question.check import Check, check_blade
from backspring.question.size import SCALE, size
from backspring.units import System

_SCALES = (0.4, 2.0)
# How far the solver may go on from a place of the grid, and how far off a pull it can start.
_BOUNDS = (0.8, 1.25)
_FAR = 0.3
# Room past which more of it is worth nothing, and what the unusual weighs against it.
_ENOUGH = 0.2
_WEIGHT = 0.05
# Below this no solver is sent out: rounding and faces may give so much back.
LEAST_ROOM = -0.03
# Where a place as drawn lets less than this be hoped for, it is not looked at.
_NOT_WORTH_A_LOOK = -0.18
# A pin that bears less than this share of its load fails; loads are estimated.
_HOPELESS = 0.97
# A spring thicker or thinner than the joint was drawn with, against the rest.
_HEAVY = 10.0


@dataclass(frozen=True, slots=True)
class Candidate:
    """One place of the grid: its tables, and what they give before they are rounded.

    `room` is the least of yield margin and endurance over what is wanted, as a logarithm; `worth`
    weighs it against what is unusual.
    """

    tables: Tables
    room: float
    worth: float
    base: int = 0


def design_of(tables: Tables, name: str = "layout", units: System = "mm") -> Design:
    """Make a design of tables in the core's units."""
    content: dict[str, Any] = dict(tables)
    design = Design(name=name, **content)
    return design if units == "mm" else design.replace(units=units)


def candidates(
    bases: Sequence[tuple[Tables, Grid]],
    aim_n: float,
    yield_margin: float,
    samples: Samples,
    pins_mm: Sequence[float] = (),
    allowed: Callable[[Tables], bool] = lambda _: True,
) -> list[Candidate]:
    """Look at every place of the grid, each as thick as the pull asks; the best first.

    Where `pins_mm` are given, thin ones first, each place has the pin that bears its load. Only
    joints that are `allowed` are looked at.
    """
    look = _Look(aim_n, yield_margin, samples, pins_mm, allowed)
    found = [each for place, base in enumerate(bases) for each in look.at(place, *base)]
    return sorted(found, key=lambda each: -each.worth)


@dataclass(frozen=True, slots=True)
class _Look:
    aim_n: float
    yield_margin: float
    samples: Samples
    pins_mm: Sequence[float]
    allowed: Callable[[Tables], bool]

    def at(self, place: int, tables: Tables, grid: Grid) -> Iterator[Candidate]:
        """Go through the grid about one joint."""
        sampled = self.samples.of(tables, grid)
        if sampled is None:
            return
        drawn = sampled.as_drawn
        # Force goes as the cube of the thickness where the travel is the same, and stress with it.
        grown = np.nan_to_num(np.cbrt(self.aim_n / drawn.pull_n), nan=1.0)
        scale = np.clip(grown, *_SCALES)
        hoped = np.log(drawn.yield_margin / (self.yield_margin * scale))
        hole = tables["spring"]["pin_hole"]
        made = [_made(tables, row, by, hole) for row, by in zip(grid.rows, scale, strict=True)]
        worth_it = (hoped > _NOT_WORTH_A_LOOK) & np.array([self.allowed(each) for each in made])
        given = sampled.at(scale, worth_it)
        room = np.log(given.yield_margin / self.yield_margin)
        good = given.ok & (np.abs(np.log(given.pull_n / self.aim_n)) < _FAR)
        pins = self._pins(tables, grid, given)
        for pin in sorted({*pins[good & (room > LEAST_ROOM)]} - {np.nan}):
            # What has no room by its yield margin needs no closer look.
            asked = good & (pins == pin) & (room > LEAST_ROOM)
            room[asked] = self._room(tables, grid, scale, asked, float(pin))[asked]
        worth = np.minimum(room, _ENOUGH) - _WEIGHT * (
            _unusual(grid.rows) + _HEAVY * np.log(scale) ** 2 + grid.unusual
        )
        for at in np.flatnonzero(good & np.isfinite(room) & np.isfinite(pins)):
            drawn_so = drawn_about(made[at], spring__pin_hole=float(pins[at]))
            if pins[at] == hole or self.allowed(drawn_so):
                yield Candidate(drawn_so, float(room[at]), float(worth[at]), place)

    def _room(self, tables: Tables, grid: Grid, scale: Column, asked: Mask, pin: float) -> Column:
        """Find the room that yield margin and openings leave with a pin, whose hole takes some."""
        held = tables["spring"]["pin_hole"] == pin
        changed = tables if held else drawn_about(tables, spring__pin_hole=pin)
        sampled = self.samples.of(changed, grid)
        if sampled is None:
            return np.full(len(scale), np.nan)
        room: Column = np.log(sampled.at(scale, asked).yield_margin / self.yield_margin)
        if "openings" not in tables["targets"]:
            return room
        asked = asked & (room > LEAST_ROOM)
        lasting = np.log(sampled.openings_margin(scale, asked))
        return np.where(asked, np.minimum(room, lasting), room)

    def _pins(self, tables: Tables, grid: Grid, given: Given) -> Column:
        """Find the pin that bears each place's load; NaN where none does."""
        spring, tang = tables["spring"], tables["tang"]
        if not self.pins_mm:
            return np.full(len(grid.rows), float(spring["pin_hole"]))
        lift = np.array([preload + rise_of(tang["open"], r) for r, preload in grid.rows])
        load = given.stiffness_n_per_mm * lift * (1.0 + tang["pivot"] / spring["rear_pin"])
        pins = np.full(len(load), np.nan)
        for pin in reversed(self.pins_mm):
            one = _core.PinInput(
                force_n=1.0, pin_mm=pin, spring_width_mm=1.0, spring_yield_mpa=3000.0
            )
            bears = _core.pin_stress(one).shear.margin or 0.0
            pins[load < bears / _HOPELESS] = pin
        return pins


def _made(tables: Tables, row: Column, scale: float, pin_mm: float) -> Tables:
    return drawn_about(
        tables,
        spring__thickness=[[x, thick * float(scale)] for x, thick in tables["spring"]["thickness"]],
        spring__pin_hole=pin_mm,
        tang__corner_radius=float(row[0]),
        fit__preload=float(row[1]),
    )


def _unusual(rows: npt.NDArray[np.float64]) -> npt.NDArray[np.float64]:
    """How far preload and corner are from the middle of what is searched, as shares squared."""
    ends = np.array([rows.min(axis=0), rows.max(axis=0)])
    half = np.maximum(0.5 * (ends[1] - ends[0]), 1e-9)
    away: npt.NDArray[np.float64] = (((rows - ends.mean(axis=0)) / half) ** 2).sum(axis=1)
    return away


def finished(tables: Tables, aim_n: float, units: System) -> tuple[Tables, Check] | None:
    """Size it for the pull, round it, fit its faces, and check; None where that cannot be."""
    try:
        sized = size(design_of(tables), pull=aim_n, vary="thickness_scale", bounds={SCALE: _BOUNDS})
        if not sized.found:
            return None
        rounded = _rounded(sized.design.to_dict(), tables, units)
        draft = Draft.of(design_of(rounded))
        fitted, _ = Faces(draft, ("main",), units, Checks()).fitted(draft)
        content = {name: fitted.content[name] for name in rounded}
        return content, check_blade(design_of(content, units=units))
    except (InvalidInput, NoConvergence):
        return None


def _rounded(content: dict[str, Any], tables: Tables, units: System) -> Tables:
    profile = [[x, fine(thick, units)] for x, thick in content["spring"]["thickness"]]
    return drawn_about(
        {name: content[name] for name in tables},
        spring__thickness=profile,
        tang__corner_radius=fine(content["tang"]["corner_radius"], units),
        fit__preload=fine(content["fit"]["preload"], units),
    )


def failing(check: Check) -> list[str]:
    """Name what fails in a verdict."""
    return [each.name for each in check.verdict if each.word.name == "fails"]


def first_that_passes(
    found: Iterable[Candidate], aim_n: float, units: System, tries: int
) -> tuple[Tables, Check] | None:
    """Finish candidates in turn until one meets every target and nothing else of it fails."""
    for each in itertools.islice(found, tries):
        done = finished(each.tables, aim_n, units)
        if done and done[1].status == "pass" and not failing(done[1]):
            return done
    return None
