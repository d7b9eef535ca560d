"""Lines, arcs and circles through the edge of a part in a picture, and how sure they are."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from backspring.outline.chain import Chain
from backspring.outline.scan_corners import chain_of_fits, smoothed
from backspring.outline.traced import Fit, Points, circle_of, line_of, stretches

_Column = npt.NDArray[np.float64]
_ROUNDS = 3
# More lines and arcs than a part's outline is drawn with.
_FEW = 60
# Points so near to a corner are rounded by the blur [standard deviations of it].
_BLURRED = 2.0
_FEWEST = 6
# What is shorter is a corner's blur [standard deviations of it].
_CORNER = 4.5
# A square corner's middle lies so far off both sides, and a little more [likewise].
_ROUNDED = 0.7
# An arc that bulges less than this share of the tolerance is a line.
_FLAT_SHARE = 1.0
# Neighbouring places of an edge share pixels over so many of them.
_ALIKE_PX = 6
# What following an edge between pixels leaves, as scans of drawn parts show.
_GRID_PX = 0.003


@dataclass(frozen=True, slots=True)
class EdgeNoise:
    """How an edge strays: rms and most [mm], and its strength over long stretches [mm^3].

    `grid_mm` is what no length of edge evens out.
    """

    rms_mm: float
    largest_mm: float
    density_mm3: float
    grid_mm: float

    def mean_sd_mm(self, length_mm: float) -> float:
        """Tell how sure the mean place over a length of edge is."""
        return math.hypot(math.sqrt(self.density_mm3 / max(length_mm, 1e-6)), self.grid_mm)


@dataclass(frozen=True, slots=True)
class Fitted:
    """An outline of lines and arcs, and how far the edge's points lie off it [mm].

    `fits` are the lines and arcs through the points between two of `borders`.
    """

    chain: Chain
    points: Points
    fits: tuple[Fit, ...]
    borders: tuple[int, ...]
    off_mm: tuple[_Column, ...]
    step_mm: float


@dataclass(frozen=True, slots=True)
class Circle:
    """A circle through points, and how far they lie off it [mm]."""

    center_mm: complex
    radius_mm: float
    off_mm: _Column


def circle_through(points: Points) -> Circle | None:
    """Fit a circle by the distances themselves, which no choice of coordinates favours."""
    first = circle_of(points)
    if first is None:
        return None
    center, radius = first.at, first.radius
    for _ in range(20):
        away = points - center
        size = np.abs(away)
        table = np.stack([-away.real / size, -away.imag / size, -np.ones(len(size))], axis=1)
        step = np.linalg.lstsq(table, radius - size, rcond=None)[0]
        center += complex(step[0], step[1])
        radius += float(step[2])
        if np.abs(step).max() < 1e-10:
            break
    if not (math.isfinite(radius) and radius > 0.0):
        return None
    return Circle(center, radius, np.abs(points - center) - radius)


def fit_outline(points: Points, within_mm: float, most_mm: float, blur_mm: float) -> Fitted:
    """Fit lines and arcs within a tolerance, or wider until they are few."""
    if float((points.conj() * np.roll(points, -1)).imag.sum()) < 0.0:
        points = points[::-1]
    fitted = _fit(points, within_mm, blur_mm)
    while len(fitted.chain.vertices) > _FEW and within_mm < most_mm:
        within_mm = min(2.0 * within_mm, most_mm)
        fitted = _fit(points, within_mm, blur_mm)
    return fitted


def _fit(points: Points, within_mm: float, blur_mm: float) -> Fitted:
    """Fit lines and arcs, their borders where both neighbours fit best."""
    points, fits, borders = stretches(points, within_mm)
    step = float(np.abs(np.diff(points)).mean())
    trim = max(2, round(_BLURRED * blur_mm / step))
    for _ in range(2):
        for _ in range(_ROUNDS):
            fits = [*_again(points, fits, borders, trim, within_mm)]
            borders = _tuned(points, fits, borders)
        fits, borders = _joined(points, fits, borders, trim, within_mm)
        fits, borders = _sharp(points, fits, borders, blur_mm)
        # Where the points begin no border moves: begin at another.
        points, fits, borders = _begun_at(len(fits) // 2, points, fits, borders)
    off = tuple(
        _signed(fit, points[a + trim : b + 1 - trim])
        for fit, a, b in zip(fits, borders, borders[1:], strict=False)
        if b - a > 2 * trim + _FEWEST
    )
    smooth = smoothed(points, fits, borders, blur_mm)
    chain = chain_of_fits(points, smooth, borders)
    return Fitted(chain, points, tuple(smooth), tuple(borders), off, step)


def _again(
    points: Points, fits: Sequence[Fit], borders: Sequence[int], trim: int, within: float
) -> Iterator[Fit]:
    """Fit every stretch again, without what lies near its corners."""
    for fit, a, b in zip(fits, borders, borders[1:], strict=False):
        inner = points[a + trim : b + 1 - trim]
        yield _best(inner, within, bool(fit.radius)) if len(inner) >= _FEWEST else fit


def _best(inner: Points, within: float, is_round: bool) -> Fit:
    """Fit a line, or an arc that is none."""
    line = line_of(inner)
    if not is_round:
        return line
    circle = circle_through(inner)
    if circle is None:
        return line
    half = 0.5 * abs(inner[-1] - inner[0])
    is_flat = circle.radius_mm > half and (
        circle.radius_mm - math.sqrt(circle.radius_mm**2 - half**2) < _FLAT_SHARE * within
    )
    return line if is_flat else Fit(circle.center_mm, 1.0 + 0j, circle.radius_mm)


def _tuned(points: Points, fits: Sequence[Fit], borders: Sequence[int]) -> list[int]:
    """Move each border to where the squares on both sides come to the least."""
    moved = list(borders)
    for i in range(1, len(fits)):
        low = (moved[i - 1] + borders[i]) // 2 + 1
        high = (borders[i] + borders[i + 1]) // 2
        if high <= low:
            continue
        some = points[low:high]
        before, after = fits[i - 1].off(some) ** 2, fits[i].off(some) ** 2
        cost = np.cumsum(before - after)
        moved[i] = low + 1 + int(cost.argmin()) if cost.min() < 0.0 else low
    return moved


def _begun_at(
    first: int, points: Points, fits: list[Fit], borders: list[int]
) -> tuple[Points, list[Fit], list[int]]:
    """Begin a round of stretches at one of them."""
    count, start = len(points) - 1, borders[first]
    turned = np.roll(points[:-1], -start)
    later = [(border - start) % count for border in borders[first:-1] + borders[:first]]
    return np.append(turned, turned[0]), fits[first:] + fits[:first], [*later, count]


def _joined(
    points: Points, fits: list[Fit], borders: list[int], trim: int, within: float
) -> tuple[list[Fit], list[int]]:
    """Join neighbours that one line fits as well."""
    i = 1
    while i < len(fits):
        a, b = borders[i - 1], borders[i + 1]
        inner = points[a + trim : b + 1 - trim]
        if not fits[i - 1].radius and not fits[i].radius and len(inner) >= _FEWEST:
            line = line_of(inner)
            if float(line.off(inner).max()) <= 0.5 * within:
                fits[i - 1 : i + 1] = [line]
                del borders[i]
                continue
        i += 1
    return fits, borders


def _sharp(
    points: Points, fits: list[Fit], borders: list[int], blur_mm: float
) -> tuple[list[Fit], list[int]]:
    """Take out what the blur of a sharp corner made: its neighbours meet half-way along it."""
    steps = np.append(0.0, np.cumsum(np.abs(np.diff(points))))
    kept = set[int]()
    while True:
        lengths = steps[borders[1:]] - steps[borders[:-1]]
        some = [i for i in range(1, len(fits) - 1) if borders[i] not in kept]
        some = [i for i in some if lengths[i] < _CORNER * blur_mm]
        if not some:
            return fits, borders
        i = min(some, key=lambda i: lengths[i])
        stretch = points[borders[i] : borders[i + 1] + 1]
        off = np.minimum(fits[i - 1].off(stretch), fits[i + 1].off(stretch))
        if float(off.max()) > _ROUNDED * blur_mm:
            kept.add(borders[i])
            continue
        middle = (borders[i] + borders[i + 1]) // 2
        del fits[i]
        borders[i : i + 2] = [middle]


def _signed(fit: Fit, points: Points) -> _Column:
    if fit.radius:
        return np.asarray(np.abs(points - fit.at) - fit.radius)
    return np.asarray(((points - fit.at) / fit.way).imag)


def noise_of(off_mm: Sequence[_Column], step_mm: float, px_mm: float) -> EdgeNoise:
    """Tell how an edge strays: what neighbouring places share is counted once."""
    every = np.concatenate(off_mm)
    lags = max(1, round(_ALIKE_PX * px_mm / step_mm))
    sums, counts = np.zeros(lags + 1), np.zeros(lags + 1)
    for each in off_mm:
        for lag in range(min(lags + 1, len(each))):
            sums[lag] += float((each[: len(each) - lag] * each[lag:]).sum())
            counts[lag] += len(each) - lag
    shares = sums / np.maximum(counts, 1.0)
    density = step_mm * (shares[0] + 2.0 * float(shares[1:].sum()))
    least = step_mm * shares[0]
    return EdgeNoise(
        math.sqrt(float((every**2).mean())),
        float(np.abs(every).max()),
        max(density, least),
        _GRID_PX * px_mm,
    )
