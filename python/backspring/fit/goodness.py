"""How good one measurement is: common practice, no source."""

from __future__ import annotations

import math

from backspring.fit.log_entry import PULLS, FigureEntry

PULL_SHARE, START_SHARE = 0.02, 0.05
CALIPER_MM, HARDNESS_HRC, BEST_HARDNESS_HRC = 0.01, 1.0, 0.5
# Of a depth gauge and a feeler, with what the blade's own outline differs from the drawing.
TIP_MM, GAP_MM = 0.2, 0.1


def figure_sd(entry: FigureEntry, dial_mm: float, alike: int) -> float:
    """Say the deviation of one of so many that are alike; `dial_mm` is the dial's."""
    if entry.kind in PULLS:
        return (START_SHARE if entry.kind == "start_pull_n" else PULL_SHARE) * entry.value
    if entry.kind == "hardness_hrc":
        # However often: no tester is better than half a degree.
        return max(HARDNESS_HRC, BEST_HARDNESS_HRC * math.sqrt(alike))
    return {"moved_mm": dial_mm, "tip_mm": TIP_MM, "gap_mm": GAP_MM}.get(entry.kind, CALIPER_MM)
