"""Sizes for a wanted pull with margin: a coarse grid of many designs, then the solver for one."""

from __future__ import annotations

import itertools
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
import numpy.typing as npt

from backspring.design.design import Design
from backspring.design.draft import Draft
from backspring.errors import InvalidInput, NoConvergence
from backspring.many import check_many
from backspring.new_joint.file_text import Tables
from backspring.new_joint.joint import drawn_about
from backspring.new_joint.rounding import fine
from backspring.question.advise_faces import Faces
from backspring.question.advise_trials import Checks
from backspring.question.check import Check, check_blade
from backspring.question.size import SCALE, size
from backspring.units import System

_COLUMNS = ("peak_pull_n", "yield_margin", "openings_margin")
_KEYS = ("tang.corner_radius", "fit.preload", "spring.thickness_scale")
_PASSES = 2
_SCALES = (0.4, 2.0)
# How far the solver may go on from a place of the grid, and how far off a pull it can start.
_BOUNDS = (0.8, 1.25)
_FAR = 0.3
# Room past which more of it is worth nothing, and what the unusual weighs against it.
_ENOUGH = 0.2
_WEIGHT = 0.05
# A spring thicker or thinner than the joint was drawn with, against the rest.
_HEAVY = 10.0


@dataclass(frozen=True, slots=True)
class Grid:
    """Values that the coarse search goes through about one joint.

    `unusual` is how far the joint itself is from what is usual, which counts against it.
    """

    corners_mm: tuple[float, ...]
    preloads_mm: tuple[float, ...]
    unusual: float = 0.0


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
    bases: Sequence[tuple[Tables, Grid]], aim_n: float, yield_margin: float
) -> list[Candidate]:
    """Check every place of the grid, each as thick as the pull asks; the best first."""
    found: list[Candidate] = []
    for place, (tables, grid) in enumerate(bases):
        found += _of_base(place, tables, grid, aim_n, yield_margin)
    return sorted(found, key=lambda each: -each.worth)


def _of_base(
    place: int, tables: Tables, grid: Grid, aim_n: float, yield_margin: float
) -> Iterator[Candidate]:
    rows = np.array([*itertools.product(grid.corners_mm, grid.preloads_mm)])
    try:
        design = design_of(tables)
    except InvalidInput:
        return
    scale = np.ones(len(rows))
    for _ in range(_PASSES):
        changes = dict(zip(_KEYS, (*rows.T, scale), strict=True))
        many = check_many(design, changes, columns=_COLUMNS)
        # Force goes as the cube of the thickness where the travel is the same.
        grown = np.cbrt(aim_n / many["peak_pull_n"])
        held, scale = scale, np.clip(np.nan_to_num(scale * grown, nan=1.0), *_SCALES)
    scale = held
    rooms = [np.log(many["yield_margin"] / yield_margin)]
    if "openings" in tables["targets"]:
        rooms.append(np.log(many["openings_margin"]))
    off = np.abs(np.log(many["peak_pull_n"] / aim_n))
    room = np.minimum.reduce(rooms)
    worth = np.minimum(room, _ENOUGH) - _WEIGHT * (
        _unusual(rows) + _HEAVY * np.log(scale) ** 2 + grid.unusual
    )
    for at in np.flatnonzero(many.ok & np.isfinite(room) & (off < _FAR)):
        profile = [[x, thick * scale[at]] for x, thick in tables["spring"]["thickness"]]
        yield Candidate(
            drawn_about(
                tables,
                spring__thickness=profile,
                tang__corner_radius=float(rows[at, 0]),
                fit__preload=float(rows[at, 1]),
            ),
            float(room[at]),
            float(worth[at]),
            place,
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
        fitted, _ = Faces(Draft.of(design_of(rounded)), ("main",), units, Checks()).fitted(
            Draft.of(design_of(rounded))
        )
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
