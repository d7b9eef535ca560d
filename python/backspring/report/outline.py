"""What was read from a drawing, as a report."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import replace
from typing import TYPE_CHECKING

from backspring.outline.file_text import assumed_lines
from backspring.outline.lean import STRAIGHT_MM
from backspring.outline.loops import place_text
from backspring.outline.named_parts import chains_of
from backspring.report.display import text
from backspring.report.scan import scan_lines
from backspring.report.tables import Block, Lines, Report, TextTable
from backspring.report.wrapping import COLUMNS
from backspring.unit_table import MM_PER

if TYPE_CHECKING:
    from backspring.outline.reading import OutlineReading
    from backspring.units import System

CAUTION = (
    "Measure what was read against the steel before anything is ground away: a drawing is as good "
    "as the hand or the scan that made it."
)


def reading_report(reading: OutlineReading, units: System | None = None) -> Report:
    """Lay out a reading in its own units, or in others."""
    return outline_report(replace(reading, units=units or reading.units), None)


def outline_report(reading: OutlineReading, written: str | None) -> Report:
    """Lay out what was taken for what, then the file."""
    joint = reading.joint

    def length(value_mm: float) -> str:
        return text(value_mm, "length", reading.units)

    start, end = map(length, joint.pad_mm)
    headline = (
        f"pad {start} to {end}, pivot at {length(joint.pivot_mm)}, "
        f"preload {length(joint.preload_mm)}"
    )
    if reading.several:
        each = (
            f"{blade.name}: pivot at {length(blade.joint.pivot_mm)}, preload "
            f"{length(blade.joint.preload_mm)}"
            for blade in reading.several.joint.blades
        )
        headline = "; ".join(each)
    if written:
        headline += f": written to {written}"
    return Report(headline, tuple(_blocks(reading, written)), COLUMNS)


def _blocks(reading: OutlineReading, written: str | None) -> Iterator[Block]:
    units = reading.units
    unit_mm, digits = MM_PER[units], 4 if units == "in" else 2
    yield TextTable(
        "Taken for",
        ("part", "by", f"area [{units}2]", f"round [{units}]"),
        tuple(
            (
                name,
                reading.found.known_by[name],
                f"{chain.area_mm2 / unit_mm**2:.{digits}f}",
                f"{chain.length_mm / unit_mm:.{digits}f}",
            )
            for name, chain in chains_of(reading.found, reading.several)
        ),
    )
    notes = [
        f"gap of {text(width, 'length', units)} at {place_text(place)} mm closed"
        for place, width in reading.found.gaps
    ]
    notes += reading.notes
    notes += [f"{count} {kind} left out" for kind, count in reading.left_out.items()]
    tilt = math.degrees(reading.joint.tilt_rad)
    if abs(tilt) > 1e-3:
        notes.append(f"the pad lies {tilt:.3f} deg off the open face")
    lean = reading.joint.lean
    if lean.counts:
        notes.append(
            f"mid-line written: it leans up to {math.degrees(lean.lean_rad):.1f} deg, and the "
            f"spring gives {100.0 * lean.compliance_share:.1f} % more than a straight one"
        )
    elif lean.belly_off_mm >= STRAIGHT_MM:
        off = text(lean.belly_off_mm, "length", units)
        notes.append(
            f"no mid-line written: the belly is up to {off} off the pad's line, which "
            f"changes stiffness by {100.0 * lean.compliance_share:.2f} %"
        )
    if notes:
        yield Lines("Noted", tuple(notes))
    if reading.scan:
        yield Lines("How sure", tuple(scan_lines(reading.scan, units)))
    if written and (assumed := assumed_lines(reading.text)):
        yield Lines("Assumed", assumed)
    if not written:
        yield Lines("Design file", tuple(reading.text.splitlines()))
    yield Lines("Caution", (CAUTION,))
