"""Outlines and holes of the parts in a picture, between its pixels.

Needs scikit-image: `pip install backspring[scan]`.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, field
from typing import Any

import numpy as np
import numpy.typing as npt

from backspring.outline.scan_levels import Levels, levels_of, linear_light

Points = npt.NDArray[np.complex128]
# A part is larger, a hole too; what is smaller is dust.
_LEAST_PART_MM2 = 20.0
_LEAST_HOLE_MM2 = 0.4
_MARGIN_MM = 1.5
_SMOOTH_PX = 1.0
_MOST_IN_CROP = 30_000_000
_MOST_PARTS = 40
_MOST_SPECKS = 20_000
# Rows cross all edges of a part so often at most.
_MOST_CROSSINGS = 200_000
# Shares of steel at which an edge is followed: the middle, and two that tell how wide it is.
_MIDDLE, _LOW, _HIGH = 0.5, 0.25, 0.75
# Between those two shares a blurred edge is so many of its standard deviations wide.
_QUARTILES = 1.349
# Straight lines between pixels carry a round edge out as much as this blur carries it in [px^2].
_BETWEEN_PX2 = 1.0 / 12.0


@dataclass(frozen=True, slots=True)
class Ring:
    """A closed line round a part or a hole [px, y outward], and whether the picture cuts it off."""

    points: Points
    at_border: npt.NDArray[np.bool_]

    @property
    def area_px2(self) -> float:
        """Area, + where it runs counterclockwise."""
        following = np.roll(self.points, -1)
        return 0.5 * float((self.points.conj() * following).imag.sum())

    @property
    def length_px(self) -> float:
        """Length all round."""
        return float(np.abs(np.roll(self.points, -1) - self.points).sum())


@dataclass(slots=True)
class Seen:
    """A part: its outline, what lies inside it, and how wide its edges are blurred [px]."""

    outline: Ring
    inside: list[Ring] = field(default_factory=list)
    blur_px: float = 0.0


@dataclass(slots=True)
class View:
    """All parts of a picture, how much dust was passed over, and the grey's noise."""

    parts: list[Seen]
    specks: int
    noise: float


def view_of(grey: npt.NDArray[np.uint8], px_per_mm: float) -> View:
    """Follow every part's outline and holes; ValueError where there is none, or too much."""
    from skimage.measure import label, regionprops

    levels = levels_of(grey, px_per_mm)
    labels = label(levels.parts, connectivity=1)  # type: ignore[no-untyped-call]
    least = _LEAST_PART_MM2 * (px_per_mm / levels.shrunk) ** 2
    found = regionprops(labels)  # type: ignore[no-untyped-call]
    large = [each for each in found if each.area >= least]
    if len(found) - len(large) > _MOST_SPECKS:
        raise ValueError("the picture is full of specks: clean the glass, lay the parts on paper")
    if not large:
        raise ValueError(
            f"no part found: nothing larger than {_LEAST_PART_MM2:g} mm2 stands out from the "
            "ground; is the scale right?"
        )
    if len(large) > _MOST_PARTS:
        raise ValueError(f"{len(large)} parts: crop the picture to one spring, tang and liner")
    view = View([], len(found) - len(large), levels.noise)
    curve = linear_light()
    for region in large:
        share, left, top = _share(grey, curve, levels, labels, region, px_per_mm)
        view.parts.append(_seen(share, complex(left, -top), px_per_mm, view))
    return view


def _share(
    grey: npt.NDArray[np.uint8],
    curve: npt.NDArray[np.float32],
    levels: Levels,
    labels: npt.NDArray[np.integer],
    region: Any,
    px_per_mm: float,
) -> tuple[npt.NDArray[np.float32], int, int]:
    """Cut a part out of the picture, without its neighbours, a pixel of ground all round."""
    from skimage.filters import gaussian

    by, margin = levels.shrunk, 1 + int(_MARGIN_MM * px_per_mm / levels.shrunk)
    top, left, bottom, right = region.bbox
    top, left = max(top - margin, 0), max(left - margin, 0)
    bottom = min(bottom + margin, labels.shape[0])
    right = min(right + margin, labels.shape[1])
    if (bottom - top) * (right - left) * by * by > _MOST_IN_CROP:
        raise ValueError(
            f"a part covers more than {_MOST_IN_CROP // 1_000_000} million pixels: scan at 600 dpi"
        )
    ends = (
        grey.shape[0] if bottom == labels.shape[0] else bottom * by,
        grey.shape[1] if right == labels.shape[1] else right * by,
    )
    crop = curve[grey[top * by : ends[0], left * by : ends[1]]]
    share = levels.share(crop, left * by, top * by)
    beside = labels[top:bottom, left:right]
    others = _grown((beside != 0) & (beside != region.label))
    others &= ~_grown(beside == region.label)
    away = np.repeat(np.repeat(others, by, axis=0), by, axis=1)
    share[: away.shape[0], : away.shape[1]][away] = 0.0
    smooth = gaussian(  # type: ignore[no-untyped-call]
        share, _SMOOTH_PX, mode="nearest", preserve_range=True
    )
    return np.pad(np.asarray(smooth, np.float32), 1), left * by - 1, top * by - 1


def _grown(mask: npt.NDArray[np.bool_]) -> npt.NDArray[np.bool_]:
    grown = mask.copy()
    grown[1:] |= mask[:-1]
    grown[:-1] |= mask[1:]
    grown[:, 1:] |= mask[:, :-1]
    grown[:, :-1] |= mask[:, 1:]
    return grown


def _seen(share: npt.NDArray[np.float32], corner: complex, px_per_mm: float, view: View) -> Seen:
    rings = _rings(share, _MIDDLE, corner)
    rings.sort(key=lambda ring: -abs(ring.area_px2))
    outline, rest = rings[0], rings[1:]
    seen = Seen(outline)
    for ring in rest:
        if abs(ring.area_px2) < _LEAST_HOLE_MM2 * px_per_mm**2:
            view.specks += 1
        elif ring.area_px2 * outline.area_px2 < 0.0:
            seen.inside.append(ring)
    # Steel within a higher share is smaller by the edge's width all round.
    areas = [
        abs(max(_rings(share, level, corner), key=lambda ring: abs(ring.area_px2)).area_px2)
        for level in (_LOW, _HIGH)
    ]
    wide = (areas[0] - areas[1]) / outline.length_px / _QUARTILES
    seen.blur_px = math.sqrt(max(wide**2 - _BETWEEN_PX2, 0.0))
    return seen


def _rings(share: npt.NDArray[np.float32], level: float, corner: complex) -> list[Ring]:
    from skimage.measure import find_contours

    rows, columns = share.shape
    inside = share > level
    if int((inside[:, 1:] != inside[:, :-1]).sum()) > _MOST_CROSSINGS:
        raise ValueError("a part has too ragged an edge, or is full of specks: clean the glass")
    rings = []
    for line in find_contours(share, level):  # type: ignore[no-untyped-call]
        y, x = line[:-1, 0], line[:-1, 1]
        border = (x < 1.0) | (y < 1.0) | (x > columns - 2.0) | (y > rows - 2.0)
        # Pixel centres lie half a pixel from the picture's corner.
        rings.append(Ring((x + 0.5) - 1j * (y + 0.5) + corner, border))
    return rings
