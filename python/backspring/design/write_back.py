"""Writes what the core made of a design back as a design, to the last bit."""

from __future__ import annotations

from typing import Any

from backspring import _core
from backspring.design.design import Design
from backspring.design.spring_rows import mid_line_rows, width_rows


def with_core(design: Design, core: _core.Design) -> Design:
    """Return the design with what a grind or a size changed in its core, whichever blade's it is.

    `core` is seen from the blade that `design` is seen from.
    """
    new, old = design.as_in_file(core), design.as_in_file(design.core)
    changes: dict[str, Any] = {}
    if [*new.spring.thickness] != [*old.spring.thickness]:
        rows = [[each.x_mm, each.thickness_mm] for each in new.spring.thickness]
        changes["spring.thickness"] = rows
    if [*new.spring.holes] != [*old.spring.holes]:
        changes["spring.pin_hole_offset"] = _offsets(new.spring)
    if width_rows(new.spring) != width_rows(old.spring):
        changes["spring.width"] = width_rows(new.spring)
    if mid_line_rows(new.spring) != mid_line_rows(old.spring):
        changes["spring.mid_line"] = mid_line_rows(new.spring)
    for blade, was in zip(new.blades, old.blades, strict=True):
        if blade.pad != was.pad:
            pad = [blade.pad.start_mm, blade.pad.end_mm]
            changes[_key(design, blade, "spring.pad")] = pad
        if blade.tang.pivot_mm != was.tang.pivot_mm:
            changes[_key(design, blade, "tang.pivot")] = blade.tang.pivot_mm
    return _with_fits(design.replace(**changes) if changes else design, new)


def _with_fits(design: Design, wanted: _core.Design) -> Design:
    """Make the fits as they are wanted, which follow pivots and pins where they are not stated."""
    made = design.as_in_file(design.core)
    changes: dict[str, Any] = {}
    for blade, now in zip(wanted.blades, made.blades, strict=True):
        if now.fit.preload_mm != blade.fit.preload_mm:
            changes[_key(design, blade, "fit.preload")] = blade.fit.preload_mm
        if now.fit.dial_mm != blade.fit.dial_mm:
            changes[_key(design, blade, "fit.dial")] = blade.fit.dial_mm
    return design.replace(**changes) if changes else design


def _key(design: Design, blade: _core.Blade, key: str) -> str:
    if len(design.blades) == 1:
        return key
    return f"blades.{blade.name}.{key.removeprefix('spring.')}"


def _offsets(spring: _core.Spring) -> list[float]:
    """Return the offsets at middle and rear pin; where there is no hole it means nothing."""
    places = (0.0, -spring.support.rear_pin_mm)
    held = {hole.center_mm: hole.offset_mm for hole in spring.holes}
    return [held.get(place, 0.0) for place in places]
