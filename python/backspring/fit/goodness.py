"""How good one measurement is: common practice, no source."""

from __future__ import annotations

import math
from collections.abc import Iterable

from backspring.fit.log_entry import PULLS, Entry, FigureEntry, MeasuredEntry

# Half of what a half-thou dial rounds to and a hand repeats.
DIAL_MM = 0.004
PULL_SHARE, START_SHARE = 0.02, 0.05
CALIPER_MM, HARDNESS_HRC, BEST_HARDNESS_HRC = 0.01, 1.0, 0.5
# Of a depth gauge and a feeler, with what the blade's own outline differs from the drawing.
TIP_MM, GAP_MM = 0.2, 0.1


def dial_sd_mm(entries: Iterable[Entry], scatter_mm: float) -> float:
    """Say how good a log's dial is: as stated of its readings, or their scatter where that is more.

    A weight alone, with no reading beside it, is read as the dial of any bench.
    """
    stated = [each.repeatability_mm for each in entries if isinstance(each, MeasuredEntry)]
    return max([scatter_mm, *(stated or [DIAL_MM])])


def figure_sd(entry: FigureEntry, dial_mm: float, alike: int) -> float:
    """Say the deviation of one of so many that are alike; `dial_mm` is the dial's."""
    if entry.kind in PULLS:
        return (START_SHARE if entry.kind == "start_pull_n" else PULL_SHARE) * entry.value
    if entry.kind == "hardness_hrc":
        # However often: no tester is better than half a degree.
        return max(HARDNESS_HRC, BEST_HARDNESS_HRC * math.sqrt(alike))
    return {"moved_mm": dial_mm, "tip_mm": TIP_MM, "gap_mm": GAP_MM}.get(entry.kind, CALIPER_MM)
