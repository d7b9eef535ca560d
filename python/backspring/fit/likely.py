"""Writes the likely knife back as a design."""

from __future__ import annotations

from typing import Any

from backspring import _core
from backspring.design.design import Design
from backspring.design.write_back import with_core


def likely_design(drawn: Design, now: _core.Design) -> Design:
    """Return the drawing with what the log tells of its sizes; tilt, play and root are left out."""
    tang, was = now.tang, drawn.core
    changes: dict[str, Any] = {
        "spring.width": now.spring.width_mm,
        "spring.youngs_modulus": now.spring.elastic.youngs_modulus_mpa,
        "fit.preload": now.fit.preload_mm,
        "tang.open": tang.open_mm,
        "tang.closed": tang.closed_mm,
        "friction.spring": now.friction.spring,
        "friction.pivot": now.friction.pivot,
        "tang.corner_radius": _corners(tang),
    }
    if tang.half_stop_mm is not None:
        changes["tang.half_stop"] = tang.half_stop_mm
    if was.tang.kick is not None:
        if tang.kick is None:
            changes["tang.kick"] = None
        else:
            changes["tang.kick.height"] = tang.kick.height_mm
    return with_core(drawn.replace(**changes), now)


def _corners(tang: _core.Tang) -> float | list[float]:
    if tang.corner_open_mm == tang.corner_closed_mm:
        return tang.corner_open_mm
    return [tang.corner_open_mm, tang.corner_closed_mm]
