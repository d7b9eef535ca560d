"""What a fitting log holds, and within what limits."""

from __future__ import annotations

from dataclasses import dataclass

from backspring import _core
from backspring.fit.result import FACES
from backspring.report.display import text
from backspring.units import System

# Column, least and greatest [mm]; the same where a value is given and where it is read.
LIMITS = {
    "half_stop_mm": (-3.0, 3.0),
    "closed_mm": (-3.0, 3.0),
    "repeatability_mm": (0.0, 0.2),
    "depth_mm": (0.0, 3.0),
}


@dataclass(frozen=True, slots=True)
class MeasuredEntry:
    """What the dial showed [mm]."""

    state: str
    half_stop_mm: float | None
    closed_mm: float
    repeatability_mm: float


@dataclass(frozen=True, slots=True)
class GroundEntry:
    """What came off a face [mm]."""

    face: str
    depth_mm: float


Entry = MeasuredEntry | GroundEntry


def broken_limit(column: str, value_mm: float) -> str | None:
    """Return the rule that a value breaks, or None."""
    low, high = LIMITS[column]
    if low <= value_mm <= high:
        return None
    return f"must be from {low:g} mm to {high:g} mm, got {value_mm:.10g} mm"


def faces_of(tang: _core.Tang) -> list[str]:
    """Name the faces that this tang has."""
    without = {"half_stop": tang.half_stop_mm is None, "kick": tang.kick is None}
    return [face for face in FACES if not without.get(face, False)]


def describe(entry: Entry, units: System) -> str:
    """Say what an entry holds."""
    if isinstance(entry, GroundEntry):
        return f"ground {entry.face.replace('_', '-')} {text(entry.depth_mm, 'reading', units)}"
    closed = f"closed {text(entry.closed_mm, 'reading', units)}"
    if entry.half_stop_mm is None:
        return f"measured {entry.state}, {closed}"
    half = f"half-stop {text(entry.half_stop_mm, 'reading', units)}"
    return f"measured {entry.state}, {half}, {closed}"
