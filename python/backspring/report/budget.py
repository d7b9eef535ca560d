"""What an answer leaves out, sized for its design, and what would settle it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING, Any

from backspring import _core
from backspring.report.display import Shown, number, text, unit_of
from backspring.report.tables import Block, Lines
from backspring.units import System

if TYPE_CHECKING:
    from backspring.question.check import Check
    from backspring.report.page_parts import Part

SHOWN_FIRST = 3
EFFECTS = {
    "stop": "how the stop bears on the spring's end",
    "liners": "liners that give under the pins",
    "pin-clearance": "play of the spring's pins in their holes",
    "pivot-clearance": "play of the blade on its pivot",
    "bow": "a spring that is bowed a little",
    "modulus": "how stiff this bar of steel is",
    "preload": "preload off the drawing",
    "stick": "friction that keeps the blade from seating",
    "friction-couple": "friction's own bending of the spring",
    "large-slopes": "slopes taken as small",
    "solver": "what solving leaves",
}
SETTLED_BY = {
    "blue-end": "blue the spring's end, open under load, see where it bears; then fit.stop",
    "stop-face": "measure pivot to the stop's face: fit.stop_face; oil the end",
    "frame": "measure the liners: frame.liner_metal, liner_thickness, liner_height",
    "gauge-pins": "gauge pins and holes: spring.pin_clearance; or peen the pins tight, state 0",
    "gauge-pivot": "gauge pivot and hole: tang.pivot_clearance",
    "height-gauge": "lay the pad on a flat, gauge the spring's height: spring.mid_line",
    "weight": "hang a weight on the spring, read the dial, work out spring.youngs_modulus",
    "rear-pin-out": "dial the open blade with the rear pin out, then in: fit.preload",
    "rock-blade": "rock the blade in its rest before reading; oil",
    "friction-bending": "friction.bending = true counts it",
    "nothing": "nothing at the bench; small",
}


def budget_blocks(check: Check, units: System, everything: bool = False) -> Iterator[Block]:
    """Lay out what is left out; nothing for a blade that does not snap."""
    if check.strokes:
        yield budget_lines(check.error_budget, units, everything)


def budget_lines(budget: _core.ErrorBudget, units: System, everything: bool = False) -> Lines:
    """Tell first a band that is wider than its target, then the sum, then the greatest effects."""
    rows = budget.rows if everything else budget.rows[:SHOWN_FIRST]
    lines = [*beyond_target(budget, units), *sum_lines(budget.sum, units)]
    lines += [_line(row, units) for row in rows]
    if more := len(budget.rows) - len(rows):
        lines.append(f"{more} smaller {'one' if more == 1 else 'ones'}: see check --all")
    return Lines("Left out", tuple(lines))


def budget_parts(check: Check, units: System) -> Iterator[Part]:
    """Lay out the whole budget of a blade for a page."""
    budget = check.error_budget
    yield Lines("", (*beyond_target(budget, units), *sum_lines(budget.sum, units)))

    def bare(low: float | None, high: float | None, kind: Shown) -> str:
        return _range(low, high, kind, units).removesuffix(f" {unit_of(kind, units)}")

    rows = tuple(
        (
            EFFECTS[row.effect],
            bare(row.reading_low_mm, row.reading_high_mm, "reading"),
            bare(row.pull_low_share, row.pull_high_share, "change"),
            SETTLED_BY[row.settled_by],
        )
        for row in budget.rows
    )
    heads = (f"loaded readings {unit_of('reading', units)}", f"pull {unit_of('change', units)}")
    # A page is asked for by few of those who are told this.
    from backspring.report.page_parts import Words

    yield Words("Greatest first", ("effect", *heads, "what settles it"), rows)


def budget_data(budget: _core.ErrorBudget) -> dict[str, Any]:
    """Write a budget for JSON."""
    found = budget.sum
    return {
        "budget": [_row_data(row) for row in budget.rows],
        "budget_sum": {
            "reading_mm": _ends(found.reading_mm),
            "reading_worst_mm": _ends(found.reading_worst_mm),
            "pull_share": _ends(found.pull_share),
            "pull_worst_share": _ends(found.pull_worst_share),
            "reading_target_mm": found.reading_target_mm,
            "beyond_target": found.beyond_target,
            "closes_most": _test_of(budget),
        },
    }


def beyond_target(budget: _core.ErrorBudget, units: System) -> Iterator[str]:
    """Say that readings are not known to their target, and the one test that helps most."""
    found = budget.sum
    if found.beyond_target:
        band = _range(found.reading_mm.low, found.reading_mm.high, "reading", units)
        target = text(found.reading_target_mm, "reading", units)
        test = _test_of(budget)
        most = f"; what closes most of it: {test}" if test else ""
        yield f"readings are not known to their target of {target}: {band} is left out{most}"


def sum_lines(found: _core.BudgetSum, units: System) -> Iterator[str]:
    """Say what all effects come to, independent of each other and all at their worst."""
    for name, reading, pull in (
        ("all together, by the root of their squares", found.reading_mm, found.pull_share),
        ("all at their worst at once", found.reading_worst_mm, found.pull_worst_share),
    ):
        readings = _range(reading.low, reading.high, "reading", units)
        pulls = _range(pull.low, pull.high, "change", units)
        yield f"{name}: loaded readings {readings}, pull {pulls}"


def _row_data(row: _core.BudgetRow) -> dict[str, Any]:
    return {
        "effect": row.effect,
        "reading_low_mm": row.reading_low_mm,
        "reading_high_mm": row.reading_high_mm,
        "pull_share": _core.pull_share(row),
        "pull_low_share": row.pull_low_share,
        "pull_high_share": row.pull_high_share,
        "settled_by": SETTLED_BY[row.settled_by],
    }


def _ends(ends: _core.Ends) -> list[float]:
    return [ends.low, ends.high]


def _test_of(budget: _core.ErrorBudget) -> str | None:
    rows: Sequence[_core.BudgetRow] = budget.rows
    name = budget.sum.closes_most
    return next((SETTLED_BY[row.settled_by] for row in rows if row.effect == name), None)


def _line(row: _core.BudgetRow, units: System) -> str:
    sizes = []
    if row.reading_low_mm is not None:
        low, high = row.reading_low_mm, row.reading_high_mm
        sizes.append(f"loaded readings {_range(low, high, 'reading', units)}")
    if row.pull_low_share is not None:
        low, high = row.pull_low_share, row.pull_high_share
        sizes.append(f"pull {_range(low, high, 'change', units)}")
    return f"{EFFECTS[row.effect]}: {', '.join(sizes)} ({SETTLED_BY[row.settled_by]})"


def _range(low: float | None, high: float | None, kind: Shown, units: System) -> str:
    """Write both ends, or one where they show alike; what does not show is nothing."""
    if low is None or high is None:
        return "-"
    ends = [_signed(each, number(each, kind, units)) for each in (low, high)]
    shown = text(high, kind, units).replace(number(high, kind, units), ends[1], 1)
    if all(float(each) == 0.0 for each in ends):
        return "none that shows"
    return shown if ends[0] == ends[1] else f"{ends[0]} to {shown}"


def _signed(value: float, written: str) -> str:
    return f"+{written}" if value > 0.0 and float(written) != 0.0 else written
