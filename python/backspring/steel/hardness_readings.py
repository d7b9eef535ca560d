"""Several readings of one hardness as one figure with its standard deviation."""

from __future__ import annotations

import math
from typing import Any

# One reading of a bench tester, and the least that a mean of several is trusted to: common
# practice, no source.
ONE_READING_SD_HRC = 1.0
LEAST_SD_HRC = 0.5


def mean_hrc(readings: Any) -> float:
    """Return the mean of one reading or several."""
    several = _several(readings)
    return math.fsum(several) / len(several)


def sd_hrc(readings: Any) -> float:
    """Return how far that mean is known: 1 HRC for one reading, of several sd/sqrt(n).

    Never below 0.5 HRC: a tester's own error does not go away by reading again.
    """
    several = _several(readings)
    if len(several) < 2:
        return ONE_READING_SD_HRC
    from statistics import stdev

    return max(float(stdev(several)) / math.sqrt(len(several)), LEAST_SD_HRC)


def _several(readings: Any) -> list[float]:
    return readings if isinstance(readings, list) else [readings]
