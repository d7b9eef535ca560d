"""Whether a log would show that the dial's zero moved before the last readings.

Faces that were all ground by an unknown depth since take it in: each depth is then found from the
very reading that is off. A face left alone, a depth that was measured, or how the tip lies tells.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

import numpy as np

from backspring.fit.log_entry import MeasuredEntry

if TYPE_CHECKING:
    from backspring.fit.estimate import FitEstimate

# What a dial that was knocked is off by: our choice, no source.
KNOCKED_MM = 0.03
# A log that is off by one number alone, by so many of its standard deviations, goes together less
# often than is refused (fit/misfit.py).
_REFUSED = 4.0


def hides_moved_zero(found: FitEstimate) -> bool:
    """Say whether a zero that moved would not be noticed."""
    return _REFUSED * zero_sd_mm(found) > KNOCKED_MM


def zero_sd_mm(found: FitEstimate) -> float:
    """Say how well a log tells by how much the zero moved [mm]; nothing of the first readings.

    A moved zero shifts all readings since the last trip alike. With the weighted slopes J of all
    measurements, the covariance C of the unknowns and a = 1/sd at those readings, else 0, it is
    known to 1/sqrt(a'a - a'J C J'a).
    """
    rows = found.rows
    trips = [each.row.count for each in rows.measured if isinstance(each.row.entry, MeasuredEntry)]
    if not trips or min(trips) == max(trips):
        return 0.0
    shifts = np.array(
        [
            isinstance(each.row.entry, MeasuredEntry) and each.row.count == max(trips)
            for each in rows.measured
        ]
    ) / np.array([each.sd for each in rows.measured])
    _, slopes = rows.residuals(found.x)
    taken_in = shifts @ slopes
    told = shifts @ shifts - taken_in @ found.covariance @ taken_in
    return math.inf if told <= 0.0 else 1.0 / math.sqrt(told)
