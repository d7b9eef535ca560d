"""Where a picture shows steel and where the ground, under light that need not be even."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

Grey = npt.NDArray[np.float32]
_Mask = npt.NDArray[np.bool_]
# The coarse picture's pixels a millimetre: enough to tell parts apart.
_COARSE_PER_MM = 4.0
_MOST_COARSE = 6_000_000
_LEAST_CONTRAST = 0.15
_MOST_NOISE = 0.15
_ROUNDS = 4
_LEAST_PIXELS = 50


@dataclass(frozen=True, slots=True)
class Levels:
    """Which pixels of the coarse picture are parts, and the light on either, as it varies.

    `shrunk` is how many pixels make a coarse one. Light is linear, 1 where the picture is white.
    """

    parts: _Mask
    shrunk: int
    ground: tuple[float, ...]
    steel: tuple[float, ...]
    noise: float

    def share(self, light: Grey, left: int, top: int) -> Grey:
        """Say how much of each pixel is steel: 1 on a part, 0 beside, in a crop of the picture."""
        rows, columns = light.shape
        x = (left + np.arange(columns, dtype=np.float32)) / (self.parts.shape[1] * self.shrunk)
        y = (top + np.arange(rows, dtype=np.float32)) / (self.parts.shape[0] * self.shrunk)
        ground = _surface(self.ground, x, y)
        between = _surface(self.steel, x, y) - ground
        return np.asarray((light - ground) / between, np.float32)


def linear_light() -> Grey:
    """Give the light of each of the 256 greys, after the curve that scanners and cameras store.

    Only in light itself does an edge's blur leave its middle half-way (IEC 61966-2-1, sRGB).
    """
    grey = np.arange(256) / 255.0
    light = np.where(grey <= 0.04045, grey / 12.92, ((grey + 0.055) / 1.055) ** 2.4)
    return np.asarray(light, np.float32)


def levels_of(grey: npt.NDArray[np.uint8], px_per_mm: float) -> Levels:
    """Part steel from ground: the ground is what most of the picture's border shows.

    Raises ValueError where both are too much alike.
    """
    from skimage.filters import threshold_otsu

    fewest = math.ceil(math.sqrt(grey.size / _MOST_COARSE))
    shrunk = max(1, int(px_per_mm / _COARSE_PER_MM), fewest)
    coarse = _shrunk(grey, shrunk)
    x = (np.arange(coarse.shape[1]) + 0.5) / coarse.shape[1]
    y = (np.arange(coarse.shape[0]) + 0.5) / coarse.shape[0]
    first = threshold_otsu(coarse)  # type: ignore[no-untyped-call]
    level: Grey = np.full(coarse.shape, first, np.float32)
    for _ in range(_ROUNDS):
        light = coarse > level
        border = np.concatenate([light[0], light[-1], light[:, 0], light[:, -1]])
        parts = ~light if border.mean() >= 0.5 else light
        inner, outer = _inside(parts), _inside(~parts)
        if min(inner.sum(), outer.sum()) < _LEAST_PIXELS:
            raise ValueError(_ALIKE)
        ground = _fitted(coarse, outer, x, y, 2)
        steel = _fitted(coarse, inner, x, y, 1)
        level = np.float32(0.5) * (_surface(ground, x, y) + _surface(steel, x, y))
    apart = np.abs(_surface(ground, x, y) - _surface(steel, x, y))
    if float(apart.min()) < _LEAST_CONTRAST * float(coarse.max()):
        raise ValueError(_ALIKE)
    off = np.concatenate(
        [
            ((coarse - _surface(ground, x, y)) / apart)[outer],
            ((coarse - _surface(steel, x, y)) / apart)[inner],
        ]
    )
    noise = 1.4826 * float(np.median(np.abs(off)))
    if noise > _MOST_NOISE:
        raise ValueError(_ALIKE)
    return Levels(parts, shrunk, ground, steel, noise)


_ALIKE = (
    "parts and ground are too much alike: lay dark parts on white paper, or bright ones on black, "
    "under even light"
)


def _shrunk(grey: npt.NDArray[np.uint8], by: int) -> npt.NDArray[np.float32]:
    """Average the light of squares of pixels, in strips to spare memory."""
    curve = linear_light()
    rows, columns = grey.shape[0] // by, grey.shape[1] // by
    if min(rows, columns) < 8:
        raise ValueError("the picture is too small to hold a knife's parts")
    coarse = np.empty((rows, columns), np.float32)
    for start in range(0, rows, 256):
        end = min(start + 256, rows)
        strip = curve[grey[start * by : end * by, : columns * by]]
        coarse[start:end] = strip.reshape(end - start, by, columns, by).mean(axis=(1, 3))
    return coarse


def _inside(mask: _Mask) -> _Mask:
    """Leave out pixels beside others, which an edge may cross."""
    inner = mask.copy()
    for axis in (0, 1):
        for way in (-1, 1):
            inner &= np.roll(mask, way, axis)
    return inner


def _fitted(
    coarse: Grey, mask: _Mask, x: npt.NDArray[np.float64], y: npt.NDArray[np.float64], degree: int
) -> tuple[float, ...]:
    """Fit a surface to some of the pixels, a few thousand of them."""
    rows, columns = np.nonzero(mask)
    step = 1 + len(rows) // 5000
    rows, columns = rows[::step], columns[::step]
    terms = _terms(degree)
    table = np.stack([x[columns] ** i * y[rows] ** j for i, j in terms], axis=1)
    values = coarse[rows, columns].astype(np.float64)
    weights: npt.NDArray[np.floating] = np.ones(len(values))
    found = np.zeros(len(terms))
    for _ in range(4):
        scaled = table * weights[:, None]
        found = np.linalg.lstsq(scaled, values * weights, rcond=1e-10)[0]
        off = np.abs(values - table @ found)
        strays = np.maximum(off / (1e-6 + 2.0 * np.median(off)), 1.0)
        weights = np.asarray(strays**-0.5, np.float64)
    return tuple(float(each) for each in found)


def _terms(degree: int) -> list[tuple[int, int]]:
    return [(i, j) for i in range(degree + 1) for j in range(degree + 1 - i)]


def _surface(
    numbers: tuple[float, ...], x: npt.NDArray[np.floating], y: npt.NDArray[np.floating]
) -> Grey:
    degree = {1: 0, 3: 1, 6: 2}[len(numbers)]
    total = np.zeros((len(y), len(x)), np.float32)
    for number, (i, j) in zip(numbers, _terms(degree), strict=True):
        total += np.outer((number * y**j).astype(np.float32), (x**i).astype(np.float32))
    return total
