"""What a log changes in a plan: how short of the target it stops, and where the tip is to be."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from backspring.fit.doubts import MORE
from backspring.fit.log_entry import FigureEntry

if TYPE_CHECKING:
    from backspring.fit.estimate import FitEstimate

# The core aims at 0.75 standard deviations above the target, which is enough where one more reading
# tells. Readings that are worked out stay as they are however often they are read: two are kept.
_SHORT = 1.25


def stops_short_mm(found: FitEstimate, spread_mm: float) -> float:
    """Say how much farther off the target to stop while loaded readings are worked out."""
    unsure = found.widest_mm > MORE * max(found.leeway.dial * spread_mm, 0.001)
    return _SHORT * found.widest_mm if unsure else 0.0


def tip_wanted(found: FitEstimate, tip: Any, closed_by: str) -> Any:
    """Say where the tip is to go: level is where it stood when its height was first logged.

    Without a height what a trip took off closed face and kick is known as a sum only, and the tip
    of a knife that is ground is not: level is where it stands, then.
    """
    rows = found.rows
    if tip not in (None, "level") or closed_by != "level" or rows.drawn.tang.kick is None:
        return tip
    for row in rows.rows:
        if isinstance(row.entry, FigureEntry) and row.entry.kind == "tip_mm":
            then, now = (rows.said(row.ask, found.x, n) for n in (row.count, len(rows.ground)))
            return float(then[0] - now[0])
    return tip
