"""What a check leaves out, sized for its design, and what would settle it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING, Any

from backspring import _core
from backspring.report.display import number, text
from backspring.report.tables import Block, Lines
from backspring.units import System

if TYPE_CHECKING:
    from backspring.design.design import Design
    from backspring.question.check import Check

EFFECTS = {
    "stop": "how the stop bears on the spring's end",
    "stick": "friction that keeps the blade from seating",
    "friction-couple": "friction's own bending of the spring",
    "large-slopes": "slopes taken as small",
}
SETTLED_BY = {
    "blue-end": "blue the spring's end, open under load, see where it bears; then fit.stop",
    "stop-face": "measure pivot to the stop's face: fit.stop_face; oil the end",
    "rock-blade": "rock the blade in its rest before reading; oil",
    "friction-bending": "friction.bending = true counts it",
    "nothing": "nothing at the bench; small",
}


def budget_blocks(check: Check, units: System) -> Iterator[Block]:
    """Lay out what is left out; nothing for a blade that does not snap."""
    if check.strokes:
        yield Lines("Left out", tuple(_line(row, units) for row in check.budget))


def readings_budget_lines(design: Design, units: System) -> Lines:
    """Tell what of the budget can change a loaded reading."""
    rows = _core.contact_budget(design.core)
    lines = tuple(_line(row, units) for row in rows if row.reading_low_mm is not None)
    return Lines("Left out", lines)


def budget_data(row: _core.BudgetRow) -> dict[str, Any]:
    """Write a row for JSON."""
    return {
        "effect": row.effect,
        "reading_low_mm": row.reading_low_mm,
        "reading_high_mm": row.reading_high_mm,
        "pull_share": row.pull_share,
        "settled_by": SETTLED_BY[row.settled_by],
    }


def _line(row: _core.BudgetRow, units: System) -> str:
    sizes = []
    if row.reading_low_mm is not None and row.reading_high_mm is not None:
        low, high = number(row.reading_low_mm, "reading", units), row.reading_high_mm
        sizes.append(f"loaded readings {low} to {_signed(high, units)}")
    if row.pull_share is not None:
        sign = "+" if row.pull_share > 0.0 else ""
        sizes.append(f"pull {sign}{text(row.pull_share, 'change', units)}")
    return f"{EFFECTS[row.effect]}: {', '.join(sizes)} ({SETTLED_BY[row.settled_by]})"


def _signed(value: float, units: System) -> str:
    return ("+" if value > 0.0 else "") + text(value, "reading", units)
