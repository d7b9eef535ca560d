"""Sobol's sequence, point by point, against SciPy's.

Source: scipy.stats.qmc.Sobol (SciPy 1.17) without scrambling, after S. Joe and F. Y. Kuo, SIAM J.
Sci. Comput. 30 (2008), 2635-2654. SciPy gives the points in the order of their Gray code.
"""

from __future__ import annotations

import numpy as np
from scipy.stats import qmc

from agreement import Agree
from backspring import _core

DIMENSIONS, POWER = 48, 10


def test_every_point_is_scipys(agree: Agree) -> None:
    theirs = qmc.Sobol(DIMENSIONS, scramble=False).random_base2(POWER)
    ours = np.array(
        [
            [_core.sobol_bits(row ^ (row >> 1), k) / 2.0**32 for k in range(DIMENSIONS)]
            for row in range(2**POWER)
        ]
    )
    # Both are fractions of powers of two: equal, not near.
    agree("48 x 1024 points, farthest from SciPy's", np.abs(ours - theirs).max(), 0.0)


def test_a_scrambled_net_is_as_even_as_scipys() -> None:
    """Centred discrepancy of eight dimensions, against the mean of Owen-scrambled nets."""
    scipys = [
        qmc.discrepancy(qmc.Sobol(8, scramble=True, rng=seed).random_base2(9)) for seed in range(20)
    ]
    ours = [
        qmc.discrepancy(
            np.array([[_core.quasi_random(i, k, seed) for k in range(8)] for i in range(512)])
        )
        for seed in range(20)
    ]
    random = qmc.discrepancy(np.random.default_rng(1).random((512, 8)))
    # The same on average to its own scatter, and far from random points.
    assert abs(np.mean(ours) - np.mean(scipys)) < 3.0 * np.std(scipys)
    assert np.max(ours) < 0.5 * random
