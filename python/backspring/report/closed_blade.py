"""Tip and edge of the closed blade, as lines for people."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from backspring.report.display import text
from backspring.report.tables import Lines
from backspring.units import System

if TYPE_CHECKING:
    from backspring.question.check import Check


def closed_blade_blocks(check: Check, units: System) -> Iterator[Lines]:
    """Lay out what is known of it; nothing where the design tells neither."""
    closed = check.closed_blade
    lines = []
    if closed.tip_mm is not None:
        side = "stands out of the handle by" if closed.tip_mm > 0.0 else "lies below the rim by"
        lines.append(f"the tip {side} {text(abs(closed.tip_mm), 'length', units)}")
    if closed.edge_gap_mm is not None:
        at = text(closed.edge_gap_at_mm, "length", units)
        gap = text(abs(closed.edge_gap_mm), "length", units)
        lines.append(
            f"the edge clears the spring by {gap} at station {at}, where they are closest"
            if closed.edge_gap_mm > 0.0
            else f"the edge runs into the spring: {gap} too deep at station {at}"
        )
    if lines:
        yield Lines("Blade closed", tuple(lines))
