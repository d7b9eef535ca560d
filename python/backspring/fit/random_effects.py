"""Pools estimates that differ from one to the next by more than each is unsure."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np


@dataclass(frozen=True, slots=True)
class Pooled:
    """What estimates of one thing say together.

    `mean` is that of all there are and not of these alone, `spread` the standard deviation between
    them beyond what each is unsure, `variance_sd` that of the spread's square. `chi_squared` is of
    the estimates about the mean that no spread would give.
    """

    mean: float
    mean_sd: float
    spread: float
    variance_sd: float
    chi_squared: float


def pool(values: Sequence[float], sds: Sequence[float]) -> Pooled:
    """Pool two or more estimates, each with its standard deviation, as random effects.

    With w = 1/s^2, Q = sum w (y - sum w y/sum w)^2 and c = sum w - sum w^2/sum w the spread is
    t^2 = max(0, (Q - (k - 1))/c), and the mean that of weights 1/(s^2 + t^2). The deviation of t^2
    is sqrt(2 (k - 1))/c, with weights that know of the spread: R. DerSimonian and N. Laird,
    Controlled Clinical Trials 7 (1986), 177-188.
    """
    found, variances = np.asarray(values, float), np.asarray(sds, float) ** 2
    freedom, weights = len(found) - 1, 1.0 / variances
    chi_squared = float(weights @ (found - _mean(found, weights)) ** 2)
    between = max(0.0, (chi_squared - freedom) / _scale(weights))
    weights = 1.0 / (variances + between)
    return Pooled(
        mean=_mean(found, weights),
        mean_sd=1.0 / math.sqrt(weights.sum()),
        spread=math.sqrt(between),
        variance_sd=math.sqrt(2.0 * freedom) / _scale(weights),
        chi_squared=chi_squared,
    )


def _mean(values: np.typing.NDArray[np.float64], weights: np.typing.NDArray[np.float64]) -> float:
    return float(weights @ values / weights.sum())


def _scale(weights: np.typing.NDArray[np.float64]) -> float:
    total = weights.sum()
    return float(total - weights @ weights / total)
