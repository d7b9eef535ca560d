"""Writes the likely knife back as a design."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any

from backspring import _core
from backspring.design.design import Design
from backspring.design.spring_rows import width_rows
from backspring.design.write_back import with_core

if TYPE_CHECKING:
    from backspring.fit.estimate import FitEstimate


def likely_design(drawn: Design, now: _core.Design) -> Design:
    """Return the drawing with what the log tells of its sizes; tilt, play and root are left out."""
    changes: dict[str, Any] = {
        "spring.width": width_rows(now.spring),
        "spring.youngs_modulus": now.spring.elastic.youngs_modulus_mpa,
        "friction.spring": now.friction.spring,
        "friction.pivot": now.friction.pivot,
    }
    return with_core(drawn.replace(**changes, **_of_blade(drawn, now)), now)


def likely_among(drawn: Design, others: Mapping[str, FitEstimate]) -> Design:
    """Return the drawing with what the log tells of the other blades' tangs."""
    for name, found in others.items():
        seen = drawn.seen_from(name)
        drawn = seen.replace(**_of_blade(seen, found.now)).seen_from(drawn.blade)
    return drawn


def _of_blade(drawn: Design, now: _core.Design) -> dict[str, Any]:
    tang = now.tang
    changes: dict[str, Any] = {
        "fit.preload": now.fit.preload_mm,
        "tang.open": tang.open_mm,
        "tang.closed": tang.closed_mm,
    }
    if not tang.outline:
        changes["tang.corner_radius"] = _corners(tang)
    if tang.round_end_mm is not None:
        # Not left to follow from the faces: grinding one does not touch it.
        changes["tang.round_end"] = tang.round_end_mm
    if tang.half_stop_mm is not None:
        changes["tang.half_stop"] = tang.half_stop_mm
    if drawn.core.tang.kick is not None:
        if tang.kick is None:
            changes["tang.kick"] = None
        else:
            changes["tang.kick.height"] = tang.kick.height_mm
    return changes


def _corners(tang: _core.Tang) -> float | list[float]:
    if tang.corner_open_mm == tang.corner_closed_mm:
        return tang.corner_open_mm
    return [tang.corner_open_mm, tang.corner_closed_mm]
