"""Sizes for a wanted pull with margin: a coarse grid of many designs, then the solver for one."""

from __future__ import annotations

import itertools
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np

from backspring.design.design import Design
from backspring.design.draft import Draft
from backspring.errors import InvalidInput, NoConvergence
from backspring.layout.file_text import Tables
from backspring.layout.joint import drawn_about
from backspring.layout.rounding import fine
from backspring.many import check_many
from backspring.question.advise_faces import Faces
from backspring.question.advise_trials import Checks
from backspring.question.check import Check, check_blade
from backspring.question.size import SCALE, size
from backspring.units import System

_COLUMNS = ("peak_pull_n", "yield_margin", "openings_margin")
# How far the solver may go on from a place of the grid, and how far off a pull it can start.
_BOUNDS = (0.8, 1.25)
_FAR = 0.22
# Room past which more of it is worth nothing, and the usual preload: common practice, no source.
_ENOUGH = 0.2
_USUAL_PRELOAD_MM = 0.75


@dataclass(frozen=True, slots=True)
class Grid:
    """Values that the coarse search goes through: corner radii by base, preloads, scales."""

    corners_mm: tuple[float, ...]
    preloads_mm: tuple[float, ...]
    scales: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class Candidate:
    """One place of the grid: its tables, and what they give before they are rounded."""

    tables: Tables
    pull_n: float
    room: float
    worth: float
    short: str
    base: int = 0


def design_of(tables: Tables, name: str = "layout", units: System = "mm") -> Design:
    """Make a design of tables in the core's units."""
    content: dict[str, Any] = dict(tables)
    return Design(name=name, **content).replace(units=units)


def candidates(
    bases: Sequence[tuple[Tables, Grid]], aim_n: float, yield_margin: float
) -> list[Candidate]:
    """Check every place of the grid; the best first.

    Room is the least of yield margin and endurance over what is wanted, as logarithms, less what
    the pull is off beyond the solver's reach. Past enough of it what is usual counts more.
    """
    found: list[Candidate] = []
    for place, (tables, grid) in enumerate(bases):
        found += _of_base(place, tables, grid, aim_n, yield_margin)
    return sorted(found, key=lambda each: -each.worth)


def _of_base(
    place: int, tables: Tables, grid: Grid, aim_n: float, yield_margin: float
) -> Iterator[Candidate]:
    rows = np.array([*itertools.product(grid.corners_mm, grid.preloads_mm, grid.scales)])
    keys = ("tang.corner_radius", "fit.preload", "spring.thickness_scale")
    try:
        design = design_of(tables)
    except InvalidInput:
        return
    many = check_many(design, dict(zip(keys, rows.T, strict=True)), columns=_COLUMNS)
    off = np.maximum(np.abs(np.log(many["peak_pull_n"] / aim_n)) - _FAR, 0.0)
    rooms = np.array([np.log(many["yield_margin"] / yield_margin), np.log(many["openings_margin"])])
    if "openings" not in tables["targets"]:
        rooms[1] = np.inf
    room = rooms.min(axis=0) - off
    unusual = np.log(rows[:, 1] / _USUAL_PRELOAD_MM) ** 2 + np.log(rows[:, 2]) ** 2
    worth = np.minimum(room, _ENOUGH) - 0.1 * unusual
    for at in np.flatnonzero(many.ok & np.isfinite(room)):
        corner, preload, scale = rows[at]
        profile = [[x, thick * scale] for x, thick in tables["spring"]["thickness"]]
        yield Candidate(
            drawn_about(
                tables,
                spring__thickness=profile,
                tang__corner_radius=float(corner),
                fit__preload=float(preload),
            ),
            float(many["peak_pull_n"][at]),
            float(room[at]),
            float(worth[at]),
            "pull" if off[at] > 0.0 else ("yield margin", "openings")[int(rooms[:, at].argmin())],
            place,
        )


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


def first_that_passes(
    found: Iterable[Candidate], aim_n: float, units: System, tries: int
) -> tuple[Tables, Check] | None:
    """Finish candidates in turn until one meets every target."""
    for each in itertools.islice(found, tries):
        done = finished(each.tables, aim_n, units)
        if done and done[1].status == "pass":
            return done
    return None
