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
SPLITS = 4


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


def press(beam: SlowBeam, tang: TurnedTang, face: WorkingFace, fine: Fineness) -> Pressing:
    """Gap >= 0, force >= 0, gap x force = 0 on the pad."""
    x = _first_stations(tang, face, fine)
    pressed = np.zeros(0)
    force = np.zeros(0)
    for _ in range(12):
        need = _interference(tang, face, x)
        on, force = _balance(beam, x, need, np.searchsorted(x, pressed), force)
        pressed = x[on]
        split = _still_through(beam, tang, face, x, pressed, force, fine)
        if not split.any():
            break
        steps = np.arange(1, SPLITS) / SPLITS
        gaps = np.diff(x)[split]
        extra = (x[:-1][split][:, None] + gaps[:, None] * steps).ravel()
        x = np.unique(np.concatenate([x, extra]))
    return _describe(beam, tang, face, pressed, force)


def _first_stations(tang: TurnedTang, face: WorkingFace, fine: Fineness) -> Array:
    count = int(np.ceil((face.stop_mm - face.start_mm) / fine.station_mm)) + 1
    even = np.linspace(face.start_mm, face.stop_mm, count)
    edges = np.array([e for e in tang.edges_mm() if face.start_mm < e < face.stop_mm])
    return np.unique(np.concatenate([even, edges]))


def _interference(tang: TurnedTang, face: WorkingFace, x: Array) -> Array:
    return np.maximum(tang.top(x)[0] - face.at(x), -CLEARANCE_MM)


def _balance(
    beam: SlowBeam, x: Array, need: Array, on: Places, force: Array
) -> tuple[Places, Array]:
    """Active set after Lawson and Hanson: press the worst station, let go of those that pull."""
    picked = [int(i) for i in on]
    columns = beam.flexibility(x[:, None], x[None, picked])
    sums = beam.sums_to(x)
    barred: set[int] = set()
    for _ in range(20 * x.size):
        lack = need - columns @ force
        lack[picked + sorted(barred)] = -np.inf
        worst = int(np.argmax(lack))
        if lack[worst] <= FITS_MM:
            break
        picked.append(worst)
        column = beam.flexibility_column(x, sums, worst)
        columns = np.concatenate([columns, column[:, None]], axis=1)
        force = np.append(force, 0.0)
        target = _solve(columns[picked], need[picked])
        if target[-1] <= 0.0:  # only rounding can do this
            barred.add(worst)
            picked, columns, force = picked[:-1], columns[:, :-1], force[:-1]
            continue
        barred.clear()
        while target.min() <= 0.0:
            pulls = target <= 0.0
            share = np.where(pulls, force / np.where(pulls, force - target, 1.0), np.inf)
            force = force + share.min() * (target - force)
            keep = ~(pulls & (share <= share.min() * (1.0 + 1e-12)))
            picked = [i for i, kept in zip(picked, keep, strict=True) if kept]
            columns, force = columns[:, keep], force[keep]
            target = _solve(columns[picked], need[picked])
        force = target
    else:
        raise RuntimeError("the contact did not settle")
    order = np.argsort(picked)
    return np.array(picked, dtype=int)[order], force[order]


def _solve(square: Array, right: Array) -> Array:
    return np.asarray(np.linalg.solve(square, right), dtype=np.float64)


def _still_through(
    beam: SlowBeam,
    tang: TurnedTang,
    face: WorkingFace,
    x: Array,
    pressed: Array,
    force: Array,
    fine: Fineness,
) -> Flags:
    """Intervals where the outline rises above its chord by more than the gap beside it."""
    middle = 0.5 * (x[1:] + x[:-1])
    need, need_middle = _interference(tang, face, x), _interference(tang, face, middle)
    bulge = need_middle - 0.5 * (need[1:] + need[:-1])
    gap = beam.flexibility(x[:, None], pressed[None, :]) @ force - need
    gap_middle = beam.flexibility(middle[:, None], pressed[None, :]) @ force - need_middle
    least = np.minimum(np.minimum(gap[1:], gap[:-1]), gap_middle)
    return np.asarray((bulge > fine.bulge_mm) & (least < bulge))


def _describe(
    beam: SlowBeam, tang: TurnedTang, face: WorkingFace, pressed: Array, force: Array
) -> Pressing:
    """The contact's slope is the spring's, but at an end of the pad it is the tang's."""
    lift = beam.flexibility(pressed[:, None], pressed[None, :]) @ force
    bent = face.slope + beam.slope_per_force(pressed[:, None], pressed[None, :]) @ force
    height, tang_slope = tang.top(pressed)
    at_end = (pressed <= face.start_mm) | (pressed >= face.stop_mm)
    slope = np.where(at_end, tang_slope, bent)
    return Pressing(pressed, force, height, slope, float(0.5 * force @ lift))
