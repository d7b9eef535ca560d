"""How sure a scan is of what a design takes from it."""

from __future__ import annotations

import cmath
import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any, Literal

from backspring.outline.assemble import Assembled, pad_of
from backspring.outline.chain import Chain, Piece
from backspring.outline.part_outlines import Hole, Outlines
from backspring.outline.scan_fit import EdgeNoise

_FACES = {"open": 0.5 * math.pi, "half_stop": math.pi, "closed": 1.5 * math.pi}
_OFF_RAD = math.radians(2.0)
_LEAST_LENGTH_MM = 0.3
# Where in a blurred edge the steel ends is known within half its blur: light, a bright bevel and
# what the scanner sharpens move it (common practice, no source).
EDGE_SHARE = 0.5


@dataclass(frozen=True, slots=True)
class ScanAccuracy:
    """Standard deviations of what was read, from how the edges stray off what was fitted.

    `edge_mm` is how far all edges together may lie too far out, or in; differences of faces, and so
    readings, are free of it. `moved_mm` is how far they were moved out to suit a known hole.
    """

    px_per_mm: float
    scale_from: Literal["given", "file"]
    edges: Mapping[str, EdgeNoise]
    holes: Mapping[str, tuple[float, float]]
    faces_mm: Mapping[str, float]
    reading_mm: float
    preload_mm: float
    thickness_mm: float
    edge_mm: float
    moved_mm: float

    def to_dict(self) -> dict[str, Any]:
        """Give what the command's JSON holds."""
        return {
            "px_per_mm": self.px_per_mm,
            "scale_from": self.scale_from,
            "edges": {
                name: {"rms_mm": each.rms_mm, "largest_mm": each.largest_mm}
                for name, each in self.edges.items()
            },
            "holes": {
                name: {"center_sd_mm": center, "diameter_sd_mm": diameter}
                for name, (center, diameter) in self.holes.items()
            },
            "faces_sd_mm": dict(self.faces_mm),
            "reading_sd_mm": self.reading_mm,
            "preload_sd_mm": self.preload_mm,
            "thickness_sd_mm": self.thickness_mm,
            "edge_mm": self.edge_mm,
            "moved_mm": self.moved_mm,
        }


@dataclass(frozen=True, slots=True)
class Known:
    """What a picture told beside the outlines."""

    px_per_mm: float
    scale_from: Literal["given", "file"]
    edges: Mapping[str, EdgeNoise]
    liner: tuple[Hole, Hole, Hole]
    edge_mm: float
    moved_mm: float


def accuracy_of(joint: Assembled, laid: Outlines, known: Known) -> ScanAccuracy:
    """Work out how sure faces, readings, preload and thickness are."""
    spring, tang = known.edges["spring"], known.edges["tang"]
    holes = dict(_holes(laid, known))
    pivot_sd = holes["pivot hole"][0]
    faces = {
        name: math.hypot(pivot_sd, _line_sd_mm(piece, tang, 0.0))
        for name, normal in _FACES.items()
        if (piece := _face(joint.laid.tang.moved(1.0, -joint.laid.pivot_mm), normal))
    }
    pad = _pad_sd_mm(joint, spring)
    ratio = joint.pivot_mm / joint.rear_pin_mm
    # Each hole's height counts as it turns the spring about the middle pin, seen at the pivot.
    preload = math.hypot(
        pad,
        faces.get("open", pivot_sd),
        holes["liner: pivot"][0],
        holes["liner: middle pin"][0] * (1.0 + ratio),
        holes["liner: rear pin"][0] * ratio,
        holes["middle hole"][0] * (1.0 + ratio),
        holes["rear hole"][0] * ratio,
    )
    return ScanAccuracy(
        px_per_mm=known.px_per_mm,
        scale_from=known.scale_from,
        edges=known.edges,
        holes=holes,
        faces_mm=faces,
        reading_mm=_difference_sd(faces, pivot_sd),
        preload_mm=preload,
        thickness_mm=math.sqrt(2.0) * pad,
        edge_mm=known.edge_mm,
        moved_mm=known.moved_mm,
    )


def _difference_sd(faces: Mapping[str, float], pivot_sd: float) -> float:
    """Bound a face's distance against the open face's: a pivot beside its place moves both."""
    rest = [each for name, each in faces.items() if name != "open"]
    return math.hypot(faces.get("open", pivot_sd), max(rest, default=pivot_sd))


def _holes(laid: Outlines, known: Known) -> Iterator[tuple[str, tuple[float, float]]]:
    noise = known.edges
    for name, hole in zip(("middle hole", "rear hole"), laid.spring_holes, strict=True):
        yield name, hole_sd_mm(hole, noise["spring"])
    yield "pivot hole", hole_sd_mm(laid.tang_hole, noise["tang"])
    for name, hole in zip(("pivot", "middle pin", "rear pin"), known.liner, strict=True):
        yield f"liner: {name}", hole_sd_mm(hole, noise["liner"])


def hole_sd_mm(hole: Hole, noise: EdgeNoise) -> tuple[float, float]:
    """Tell how sure a hole's centre, in any one direction, and its diameter are."""
    mean = noise.mean_sd_mm(math.pi * hole.diameter_mm)
    return math.sqrt(2.0) * mean, 2.0 * mean


def _face(tang: Chain, normal: float) -> Piece | None:
    """Find the longest straight piece that faces a direction, seen from the pivot."""
    near = [
        piece
        for piece in tang.pieces
        if not piece.bulge
        and abs(cmath.phase(-1j * piece.direction(0.0) * cmath.exp(-1j * normal))) < _OFF_RAD
    ]
    return max(near, key=lambda piece: piece.length_mm, default=None)


def _line_sd_mm(piece: Piece, noise: EdgeNoise, at_mm: float) -> float:
    """Tell how sure a fitted line's height is at a place along it."""
    way = piece.direction(0.0)
    length = max(piece.length_mm, _LEAST_LENGTH_MM)
    away = 0.5 * ((piece.start_mm + piece.end_mm) / way).real - at_mm
    return noise.mean_sd_mm(length) * math.sqrt(1.0 + 12.0 * (away / length) ** 2)


def _pad_sd_mm(joint: Assembled, noise: EdgeNoise) -> float:
    """Tell how sure the pad's height is at the pivot."""
    spring = joint.laid.spring
    pad = spring.pieces[pad_of(spring, -joint.laid.rear_hole_mm)]
    return _line_sd_mm(pad, noise, joint.pivot_mm)
