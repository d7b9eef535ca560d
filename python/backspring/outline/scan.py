"""A joint out of a scan or photograph of its parts, side by side on the glass."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Literal

import numpy as np

from backspring.outline.assemble import Assembled
from backspring.outline.loops import place_text
from backspring.outline.part_outlines import Hole, Outlines
from backspring.outline.parts import Found, in_order, pins_of
from backspring.outline.scan_accuracy import EDGE_SHARE, Known, ScanAccuracy, accuracy_of
from backspring.outline.scan_contours import View, view_of
from backspring.outline.scan_lay import assemble_scanned
from backspring.outline.scan_part import HOLES, Part, part_of
from backspring.outline.scan_picture import read_picture
from backspring.outline.scan_scale import ScanGiven

_LEAST_PX_PER_MM = 8.0
_MOST_PX_PER_MM = 400.0
# A grey edge is blurred at least so much where it is drawn without any [px].
_SMOOTHED_PX = 1.0
_LEAST_BLUR_PX = 0.3
# Steel ends no farther from the middle of its edge [px]; a hole is drilled so true [mm].
_MOST_MOVED_PX = 2.0
_DRILLED_MM = 0.01


@dataclass(frozen=True, slots=True)
class ScanReading:
    """What a picture says of a joint."""

    found: Found
    joint: Assembled
    accuracy: ScanAccuracy
    notes: tuple[str, ...]


def read_scan(path: Path, given: ScanGiven) -> ScanReading:
    """Read spring, tang and liner from a picture, of its own scale where none is given.

    Raises ValueError with every fault and its place.
    """
    picture = read_picture(path)
    scale: Literal["given", "file"] = "file" if given.mm_per_px is None else "given"
    mm_per_px = given.mm_per_px or picture.mm_per_px
    if mm_per_px is None:
        raise ValueError(
            'the picture does not say its scale: give --scale "50 mm = 1181 px", or --dpi 600'
        )
    _require_sharp(1.0 / mm_per_px, scale)
    view = view_of(picture.grey, 1.0 / mm_per_px)
    notes = [*picture.notes]
    parts = _parts(view, mm_per_px, given.fit_mm, notes)
    if view.specks:
        notes.append(f"picture: {view.specks} speck{'s' * (view.specks > 1)} of dust left out")
    notes += [*_fit_notes(parts.values())]
    moved = 0.0
    if given.hole_mm is not None:
        moved = _moved(parts["spring"], given.hole_mm, mm_per_px)
        parts = {kind: part.moved_out(moved) for kind, part in parts.items()}
    outlines, liner = _outlines(parts["spring"], parts["tang"], parts["liner"])
    joint, laid = assemble_scanned(outlines)
    edges = {kind: each.noise for kind, each in parts.items()}
    edge = EDGE_SHARE * _own_blur(view) * mm_per_px if given.hole_mm is None else 0.5 * _DRILLED_MM
    known = Known(1.0 / mm_per_px, scale, edges, liner, edge, moved)
    by = {kind: f"{count} hole{'s' * (count > 1)}" for count, kind in HOLES.items()}
    found = Found(outlines, by, (), tuple(notes))
    return ScanReading(found, joint, accuracy_of(joint, laid, known), tuple(notes))


def _parts(view: View, mm_per_px: float, fit_mm: float | None, notes: list[str]) -> dict[str, Part]:
    """Find one part of each kind; ValueError with every fault."""
    parts: dict[str, Part] = {}
    faults: list[str] = []
    for seen in view.parts:
        part = part_of(seen, mm_per_px, fit_mm, notes, faults)
        if part is None:
            continue
        if part.kind in parts:
            at = place_text(part.fitted.chain.vertices[0].at_mm)
            faults.append(f"{part.kind}: a second outline at {at}")
        parts[part.kind] = part
    faults += [
        f"{kind}: no outline with {count} round hole{'s' * (count > 1)}"
        for count, kind in HOLES.items()
        if kind not in parts
    ]
    if faults:
        raise ValueError("; ".join(faults))
    return parts


def _moved(spring: Part, hole_mm: float, mm_per_px: float) -> float:
    """Find how far steel goes on beyond the middle of its edge, by holes of a known width."""
    read = [hole.diameter_mm for hole in spring.holes]
    moved = 0.5 * (sum(read) / len(read) - hole_mm)
    if abs(moved) > _MOST_MOVED_PX * mm_per_px:
        raise ValueError(
            f"the spring's holes are seen as {read[0]:.3f} and {read[1]:.3f} mm, not as "
            f"{hole_mm:.3f} mm: is the scale right?"
        )
    return moved


def _own_blur(view: View) -> float:
    """Tell how wide the picture's own edges are blurred [px]."""
    blur = max(float(np.median([seen.blur_px for seen in view.parts])), _SMOOTHED_PX)
    return max(math.sqrt(blur**2 - _SMOOTHED_PX**2), _LEAST_BLUR_PX)


def _require_sharp(px_per_mm: float, scale: str) -> None:
    if px_per_mm < _LEAST_PX_PER_MM:
        whose = "the picture's own tag says" if scale == "file" else "the scale comes to"
        raise ValueError(
            f"{whose} {px_per_mm:.2f} px/mm ({25.4 * px_per_mm:.0f} dpi): a face needs "
            f"{_LEAST_PX_PER_MM:g} px/mm at least, scan at 600 dpi"
            + (", or give --scale" if scale == "file" else "")
        )
    if px_per_mm > _MOST_PX_PER_MM:
        raise ValueError(f"the scale comes to {px_per_mm:.0f} px/mm: is it the right way round?")


def _fit_notes(parts: Iterable[Part]) -> Iterator[str]:
    for part in parts:
        if part.kind == "liner":
            continue
        count = len(part.fitted.chain.vertices)
        yield (
            f"{part.kind}: {count} lines and arcs, the edge {part.noise.rms_mm:.4f} mm off them "
            f"(rms), {part.noise.largest_mm:.3f} mm at most"
        )


def _outlines(spring: Part, tang: Part, liner: Part) -> tuple[Outlines, tuple[Hole, Hole, Hole]]:
    holes = in_order(spring.fitted.chain, spring.holes)
    places = [hole.center_mm for hole in liner.holes]
    pivot, middle, rear = pins_of(places, abs(holes[0].center_mm - holes[1].center_mm))
    widths = {hole.center_mm: hole for hole in liner.holes}
    outlines = Outlines(
        spring.fitted.chain, holes, tang.fitted.chain, tang.holes[0], pivot, middle, rear
    )
    return outlines, (widths[pivot], widths[middle], widths[rear])
