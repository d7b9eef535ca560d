"""A part of a picture: told by its holes, its outline fitted."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace

import numpy as np

from backspring.outline.loops import place_text
from backspring.outline.part_outlines import Hole
from backspring.outline.scan_contours import Seen
from backspring.outline.scan_corners import moved_out
from backspring.outline.scan_fit import (
    Circle,
    EdgeNoise,
    Fitted,
    circle_through,
    fit_outline,
    noise_of,
)
from backspring.outline.tidy import faults_of

HOLES = {2: "spring", 1: "tang", 3: "liner"}
# Lines and arcs keep within this many times what a hole's edge strays off a circle, and within
# these [px]; an edge that few do not keep to so near is given more, up to the last.
_STRAYS = 6.0
_LEAST_PX, _MOST_PX = 0.1, 1.0
_MOST_MM = 0.05
# A hole is round within this share of its radius, or so many pixels.
_ROUND_SHARE = 0.05
_ROUND_PX = 1.0
# What the inside of a drawn line encloses, and a part's holes do not.
_LINE_SHARE = 0.5


@dataclass(frozen=True, slots=True)
class Part:
    """A part with its holes, and how its edges stray."""

    kind: str
    fitted: Fitted
    circles: tuple[Circle, ...]
    noise: EdgeNoise

    @property
    def holes(self) -> list[Hole]:
        """Holes as a drawing has them."""
        return [Hole(each.center_mm, 2.0 * each.radius_mm) for each in self.circles]

    def moved_out(self, by_mm: float) -> Part:
        """Move all edges: outlines out, and into the holes."""
        fitted = self.fitted
        chain = moved_out(fitted.points, fitted.fits, fitted.borders, by_mm)
        circles = tuple(replace(c, radius_mm=c.radius_mm - by_mm) for c in self.circles)
        return replace(self, fitted=replace(fitted, chain=chain), circles=circles)


def part_of(
    seen: Seen, mm_per_px: float, fit_mm: float | None, notes: list[str], faults: list[str]
) -> Part | None:
    """Tell a part by its holes, and fit its outline; None of what is none."""
    outline = seen.outline
    where = place_text(mm_per_px * complex(outline.points.mean()))
    circles = [*_circles(seen, mm_per_px, where, notes)]
    area = abs(outline.area_px2)
    if any(abs(ring.area_px2) > _LINE_SHARE * area for ring in seen.inside):
        faults.append(f"a part at {where} is drawn as a line: fill it in, or cut it out of paper")
        return None
    kind = HOLES.get(len(circles))
    if kind is None:
        size = f"{area * mm_per_px**2:.0f} mm2"
        if circles:
            faults.append(f"a part of {len(circles)} holes at {where}: do two parts touch?")
        else:
            notes.append(f"picture: what has no round hole, {size} at {where}, left out")
        return None
    if kind == "spring" and outline.at_border.any():
        faults.append(f"spring: cut off by the picture's border, at {where}")
        return None
    fitted = _fitted(seen, circles, mm_per_px, fit_mm)
    faults += [] if kind == "liner" else [*faults_of(kind, fitted.chain)]
    off = [*fitted.off_mm, *(each.off_mm for each in circles)]
    return Part(kind, fitted, tuple(circles), noise_of(off, fitted.step_mm, mm_per_px))


def _fitted(seen: Seen, circles: list[Circle], mm_per_px: float, fit_mm: float | None) -> Fitted:
    """Fit an outline as near as the holes' edges keep to circles."""
    strays = math.sqrt(float(np.mean(np.concatenate([each.off_mm for each in circles]) ** 2)))
    within = max(_STRAYS * strays, _LEAST_PX * mm_per_px)
    most = max(within, _MOST_PX * mm_per_px, _MOST_MM)
    points = mm_per_px * seen.outline.points
    return fit_outline(points, fit_mm or within, fit_mm or most, mm_per_px * seen.blur_px)


def _circles(seen: Seen, mm_per_px: float, where: str, notes: list[str]) -> Iterator[Circle]:
    for ring in seen.inside:
        circle = circle_through(mm_per_px * ring.points)
        at = place_text(mm_per_px * complex(ring.points.mean()))
        if circle is None or ring.at_border.any():
            continue
        most = max(_ROUND_PX * mm_per_px, _ROUND_SHARE * circle.radius_mm)
        if float(np.abs(circle.off_mm).max()) > most:
            notes.append(f"picture: what is no round hole at {at} left out")
            continue
        # A blurred circle shrinks by the square of the blur over twice its radius.
        blur = seen.blur_px * mm_per_px
        yield Circle(
            circle.center_mm, circle.radius_mm + 0.5 * blur**2 / circle.radius_mm, circle.off_mm
        )
