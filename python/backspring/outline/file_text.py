"""The design file that a pair of outlines makes, with a comment on each thing it could not tell."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Literal

from backspring.outline.assemble import Assembled
from backspring.outline.tang_of import TangFaces
from backspring.outline.thickness import Row

_MM_PER_INCH = 25.4
# What an outline does not show, as a file states it, with what to put there.
ASSUMED: Mapping[str, tuple[str, str]] = {
    "spring.steel": ('"O1"', "not in an outline: put your own"),
    "spring.hardness": ('"45 HRC"', "not in an outline: put what was measured"),
    "spring.width": ("2.3", "stock across the liners, not in an outline"),
}


@dataclass(frozen=True, slots=True)
class Given:
    """What was said beside the drawing, as a file states it: by key."""

    name: str
    units: Literal["mm", "in"]
    values: Mapping[str, str] = field(default_factory=dict)
    notes: Sequence[str] = ()


def design_text(joint: Assembled, faces: TangFaces, given: Given) -> str:
    """Write the design file of a joint put together from its outlines."""
    return "\n".join(_lines(joint, faces, given)) + "\n"


def _lines(joint: Assembled, faces: TangFaces, given: Given) -> Iterator[str]:
    def length(value_mm: float) -> str:
        return number_text(value_mm / (_MM_PER_INCH if given.units == "in" else 1.0))

    def both(values_mm: Sequence[float]) -> str:
        same = abs(values_mm[0] - values_mm[-1]) < 5e-7
        return length(values_mm[0]) if same else f"[{', '.join(map(length, values_mm))}]"

    def rows(each: Sequence[Row]) -> str:
        return f"[{', '.join(f'[{length(x)}, {length(value)}]' for x, value in each)}]"

    yield f"# {given.name}: read from outlines; what stands behind # was not in them."
    yield from (f"# {note}" for note in given.notes)
    yield ""
    yield "format = 1"
    yield f'name = "{given.name}"'
    yield f'units = "{given.units}"'
    yield ""
    yield "[spring]"
    for key in ("steel", "hardness", "width"):
        yield _stated(f"spring.{key}", given, length)
    yield f"thickness = {rows(joint.thickness_mm)}"
    if joint.lean.counts:
        lean, share = math.degrees(joint.lean.lean_rad), 100.0 * joint.lean.compliance_share
        yield f"# leans up to {lean:.1f} deg, which gives {share:.1f} % more under the tang"
        yield f"mid_line = {rows(joint.mid_line_mm)}"
    yield f"rear_pin = {length(joint.rear_pin_mm)}"
    yield f"pin_hole = {both(joint.pin_hole_mm)}"
    if max(map(abs, joint.pin_hole_offset_mm)) > 5e-7:
        yield f"pin_hole_offset = {both(joint.pin_hole_offset_mm)}"
    yield f"pad = [{', '.join(map(length, joint.pad_mm))}]"
    if joint.kink_radius_mm is not None:
        yield f"kink_radius = {length(joint.kink_radius_mm)}"
    if joint.curve_radius_mm is not None and not joint.lean.counts:
        yield f"curve_radius = {length(joint.curve_radius_mm)}"
    yield ""
    yield "[tang]"
    yield f"pivot = {length(joint.pivot_mm)}"
    yield f"open = {length(faces.open_mm)}"
    if faces.half_stop_mm is not None:
        yield f"half_stop = {length(faces.half_stop_mm)}"
    yield f"closed = {length(faces.closed_mm)}"
    if faces.round_end_mm is not None:
        yield f"round_end = {length(faces.round_end_mm)}"
    yield f"corner_radius = {both((faces.corner_open_mm, faces.corner_closed_mm))}"
    yield f"front = {length(faces.front_mm)}"
    if faces.kick:
        distance, height, radius = map(length, faces.kick)
        yield f"kick = {{ distance = {distance}, height = {height}, radius = {radius} }}"
    yield ""
    yield "[fit]"
    yield f"preload = {length(joint.preload_mm)}"
    if "fit.dial" in given.values:
        yield f"dial = {given.values['fit.dial']}"


def _stated(key: str, given: Given, length: object) -> str:
    name = key.rpartition(".")[2]
    if key in given.values:
        return f"{name} = {given.values[key]}"
    value, why = ASSUMED[key]
    if key == "spring.width" and given.units == "in":
        value = '"2.3 mm"'
    return f"{name} = {value}  # {why}"


def number_text(value: float) -> str:
    """Write a number with what a millionth of a millimetre asks for, and no more."""
    text = f"{value:.8f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text
