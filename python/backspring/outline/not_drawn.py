"""What of a joint's shape its outlines do not show."""

from __future__ import annotations

from collections.abc import Iterator

from backspring import _core
from backspring.design.design import Design
from backspring.outline.drawn import rounded_spring
from backspring.units import System, shown


def not_drawn(design: Design, units: System) -> Iterator[str]:
    """Say it key by key, so that a drawing read back holds no surprise."""
    surface = design.core.surface
    if surface.kink_radius_mm:
        places = sorted(corner.real for corner in rounded_spring(design.core).sharp_mm)
        if places:
            where = ", ".join(shown(place, _core.Quantity.length, units) for place in places)
            radius = shown(surface.kink_radius_mm, _core.Quantity.length, units)
            yield f"spring.kink_radius: the kink at {where} has no room for {radius}, drawn sharp"
    if surface.curve_radius_mm:
        yield "spring.curve_radius: not drawn; a hollow belly is drawn where mid_line says it"
