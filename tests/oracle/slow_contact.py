"""Where the tang presses on the pad, and how hard: a complementarity problem on a fine grid.

Pressure is allowed at every station of the pad. The grid is split again wherever the outline could
still stand through the spring between two stations, so a small corner radius is resolved as well
as a long flat. Independent of the package under test. Units: mm, N.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from .slow_beam import Array, Places, SlowBeam
from .slow_tang import TurnedTang

Flags = NDArray[np.bool_]

# Below the unloaded face nothing can touch: forces only push the spring outward.
CLEARANCE_MM = 0.05
FITS_MM = 1e-11
SPLITS = 16
NOWHERE = np.zeros(0)


@dataclass(frozen=True)
class Fineness:
    """How fine the solution is; double all of it to see what it is worth."""

    cell_mm: float = 0.001
    station_mm: float = 0.1
    bulge_mm: float = 5e-10


@dataclass(frozen=True)
class WorkingFace:
    """The pad's face with both pins in and nothing pressing on it: a line between two stations."""

    start_mm: float
    stop_mm: float
    height_mm: float
    slope: float

    def at(self, x: Array) -> Array:
        return self.height_mm + self.slope * x


@dataclass(frozen=True)
class Pressing:
    """Forces on the pad at one blade angle, with the contact's height and slope at each."""

    station_mm: Array
    force_n: Array
    height_mm: Array
    slope: Array
    energy_nmm: float
    grid_mm: Array  # every station that was looked at


class _Grid:
    """Stations in order, and each stretch between two of them by its middle.

    Of both it keeps how far the tang stands through the free face; of the stations, and of the
    middles that were asked for, the beam's integrals: a split adds to them and repeats nothing.
    """

    def __init__(self, beam: SlowBeam, tang: TurnedTang, face: WorkingFace, x: Array) -> None:
        self._beam, self._tang, self._face = beam, tang, face
        self.x, self.middle = x, 0.5 * (x[1:] + x[:-1])
        both = self._interference(np.concatenate([x, self.middle]))
        self.need, self.need_middle = both[: x.size], both[x.size :]
        self.sums = beam.sums_to(x)

    def _interference(self, x: Array) -> Array:
        return np.maximum(self._tang.top(x)[0] - self._face.at(x), -CLEARANCE_MM)

    def columns(self, picked: list[int]) -> Array:
        """Deflection at every station for unit forces at those picked."""
        sums = self.sums[:, picked]
        return self._beam.flexibility_columns(self.x, self.sums, self.x[picked], sums)

    def split(self, chosen: Flags) -> None:
        """Cut each chosen stretch into equal ones."""
        start, length = self.x[:-1][chosen, None], np.diff(self.x)[chosen, None]
        extra = (start + length * (np.arange(1, SPLITS) / SPLITS)).ravel()
        middle = (start + length * ((np.arange(SPLITS) + 0.5) / SPLITS)).ravel()
        need = self._interference(np.concatenate([extra, middle]))
        x = np.concatenate([self.x, extra])
        order = np.argsort(x)
        self.x = x[order]
        self.need = np.concatenate([self.need, need[: extra.size]])[order]
        self.sums = np.concatenate([self.sums, self._beam.sums_to(extra)], axis=1)[:, order]
        middle = np.concatenate([self.middle[~chosen], middle])
        order = np.argsort(middle)
        self.middle = middle[order]
        self.need_middle = np.concatenate([self.need_middle[~chosen], need[extra.size :]])[order]


def press(
    beam: SlowBeam,
    tang: TurnedTang,
    face: WorkingFace,
    fine: Fineness,
    near: Pressing | None = None,
) -> Pressing:
    """Gap >= 0, force >= 0, gap x force = 0 on the pad.

    A solution of a blade angle near by saves time only: its grid is added to this one's, and what
    presses there is where the search begins.
    """
    further = near.grid_mm if near else NOWHERE
    grid = _Grid(beam, tang, face, _first_stations(tang, face, fine, further))
    pressed, force = (near.station_mm, near.force_n) if near else (NOWHERE, NOWHERE)
    for _ in range(12):
        on, force, gap = _balance(grid, np.searchsorted(grid.x, pressed), force)
        pressed = grid.x[on]
        through = _still_through(beam, grid, pressed, force, gap, fine)
        if not through.any():
            break
        grid.split(through)
    return _describe(beam, tang, face, pressed, force, grid.x)


def _first_stations(tang: TurnedTang, face: WorkingFace, fine: Fineness, further: Array) -> Array:
    count = int(np.ceil((face.stop_mm - face.start_mm) / fine.station_mm)) + 1
    even = np.linspace(face.start_mm, face.stop_mm, count)
    edges = np.array([e for e in tang.edges_mm() if face.start_mm < e < face.stop_mm])
    return np.unique(np.concatenate([even, edges, further]))


def _balance(grid: _Grid, on: Places, force: Array) -> tuple[Places, Array, Array]:
    """Active set after Lawson and Hanson: press the worst station, let go of those that pull.

    Returns the stations pressed, their forces, and the gap at every station.
    """
    need = grid.need
    picked = [int(i) for i in on]
    columns = grid.columns(picked)
    target = _solve(columns[picked], need[picked])
    picked, columns, force = _let_go(need, picked, columns, force, target)
    barred: list[int] = []
    for _ in range(20 * need.size):
        gap = columns @ force - need
        open_gap = gap.copy()
        open_gap[picked + barred] = np.inf
        worst = int(np.argmin(open_gap))
        if open_gap[worst] >= -FITS_MM:
            break
        more = [*picked, worst]
        wider = np.concatenate([columns, grid.columns([worst])], axis=1)
        target = _solve(wider[more], need[more])
        if target[-1] <= 0.0:  # only rounding can do this
            barred.append(worst)
            continue
        barred.clear()
        picked, columns, force = _let_go(need, more, wider, np.append(force, 0.0), target)
    else:
        raise RuntimeError("the contact did not settle")
    order = np.argsort(picked)
    return np.array(picked, dtype=int)[order], force[order], gap


def _let_go(
    need: Array, picked: list[int], columns: Array, force: Array, target: Array
) -> tuple[list[int], Array, Array]:
    """From forces that push towards those that close the gaps, without stations that would pull."""
    while target.size and target.min() <= 0.0:
        pulls = target <= 0.0
        share = np.where(pulls, force / np.where(pulls, force - target, 1.0), np.inf)
        force = force + share.min() * (target - force)
        keep = ~(pulls & (share <= share.min() * (1.0 + 1e-12)))
        picked = [i for i, kept in zip(picked, keep, strict=True) if kept]
        columns, force = columns[:, keep], force[keep]
        target = _solve(columns[picked], need[picked])
    return picked, columns, target


def _solve(square: Array, right: Array) -> Array:
    return np.asarray(np.linalg.solve(square, right), dtype=np.float64)


def _still_through(
    beam: SlowBeam, grid: _Grid, pressed: Array, force: Array, gap: Array, fine: Fineness
) -> Flags:
    """Intervals where the outline rises above its chord by more than the gap beside it."""
    bulge = grid.need_middle - 0.5 * (grid.need[1:] + grid.need[:-1])
    through = bulge > fine.bulge_mm
    middle = grid.middle[through]
    sums, pressed_sums = beam.sums_to(middle), beam.sums_to(pressed)
    lift = beam.flexibility_columns(middle, sums, pressed, pressed_sums) @ force
    ends = np.minimum(gap[1:], gap[:-1])[through]
    through[through] = np.minimum(ends, lift - grid.need_middle[through]) < bulge[through]
    return through


def _describe(
    beam: SlowBeam, tang: TurnedTang, face: WorkingFace, pressed: Array, force: Array, grid: Array
) -> Pressing:
    """The contact's slope is the spring's, but at an end of the pad it is the tang's."""
    lift = beam.flexibility(pressed[:, None], pressed[None, :]) @ force
    bent = face.slope + beam.slope_per_force(pressed[:, None], pressed[None, :]) @ force
    height, tang_slope = tang.top(pressed)
    at_end = (pressed <= face.start_mm) | (pressed >= face.stop_mm)
    slope = np.where(at_end, tang_slope, bent)
    return Pressing(pressed, force, height, slope, float(0.5 * force @ lift), grid)
