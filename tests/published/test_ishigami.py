"""Shares of variance of Ishigami's function, with the shares known in closed form.

Source: SciPy's documentation of scipy.stats.sobol_indices (SciPy 1.17), example "Ishigami":
y = sin x1 + 7 sin^2 x2 + 0.1 x3^4 sin x1, each x uniform from -pi to pi. There from T. Ishigami and
T. Homma, 1990. The shares in closed form follow from the variances

    V1 = (1 + b pi^4 / 5)^2 / 2,  V2 = a^2 / 8,  V13 = 8 b^2 pi^8 / 225,  V = V1 + V2 + V13.
"""

from __future__ import annotations

import math

import numpy as np
import pytest

from agreement import Agree
from backspring import _core

A, B = 7.0, 0.1
ROWS = 2**13


def ishigami(x: np.ndarray) -> np.ndarray:
    return np.sin(x[0]) + A * np.sin(x[1]) ** 2 + B * x[2] ** 4 * np.sin(x[0])


def sample(first_dimension: int) -> np.ndarray:
    points = [
        [_core.quasi_random(row, first_dimension + k, 1) for row in range(ROWS)] for k in range(3)
    ]
    return math.pi * (2.0 * np.array(points) - 1.0)


def known_shares() -> tuple[list[float], list[float]]:
    v1 = (1.0 + B * math.pi**4 / 5.0) ** 2 / 2.0
    v2 = A**2 / 8.0
    v13 = 8.0 * B**2 * math.pi**8 / 225.0
    variance = v1 + v2 + v13
    first = [v1 / variance, v2 / variance, 0.0]
    return first, [(v1 + v13) / variance, v2 / variance, v13 / variance]


def test_the_known_shares_are_those_that_scipy_prints() -> None:
    first, total = known_shares()
    # SciPy's page: first order [0.314, 0.442, 0], total order [0.558, 0.442, 0.244].
    assert first == pytest.approx([0.314, 0.442, 0.0], abs=6e-4)
    assert total == pytest.approx([0.558, 0.442, 0.244], abs=6e-4)


def test_shares_of_variance_of_ishigamis_function(agree: Agree) -> None:
    one, two = sample(0), sample(3)
    mixed = []
    for k in range(3):
        both = one.copy()
        both[k] = two[k]
        mixed.append(ishigami(both))
    shares = _core.variance_shares(ishigami(one), ishigami(two), mixed)
    assert shares is not None
    first, total = known_shares()
    # 8192 rows of a scrambled net: about 1/sqrt(n) for the mixed part, less for the rest.
    for k, share in enumerate(shares):
        agree(f"input {k + 1}, first order", share.first, first[k], abs=0.01)
        agree(f"input {k + 1}, total order", share.total, total[k], abs=0.01)
