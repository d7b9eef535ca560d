"""JCGM 100:2008 (GUM), example H.1: the end gauge (figures from memory).

Length at 20 C of a gauge block compared with a known standard:
l = l_s + d - l_s (delta_alpha theta + alpha_s delta_theta). Figures of H.1.2 to H.1.4, cited from
memory of the document. There u_c = 32 nm (31.7 before rounding) and l = 50.000838 mm.
"""

from __future__ import annotations

import numpy as np
import pytest

from agreement import Agree
from backspring import _core

NM = 1e-6
STANDARD_MM, DIFFERENCE_MM = 50.000623, 215 * NM
# Value and standard uncertainty of what is not observed but expected: difference and mean of the
# coefficients of expansion [1/C], difference and deviation of the temperatures [C].
EXPECTED = {
    "delta_alpha": (0.0, 0.58e-6),
    "alpha_s": (11.5e-6, 1.2e-6),
    "delta_theta": (0.0, 0.029),
    "theta": (-0.1, 0.41),
}
OBSERVED = ((STANDARD_MM, 25 * NM), (DIFFERENCE_MM, 9.7 * NM))


def length_mm(x: np.ndarray) -> float:
    standard, difference, delta_alpha, alpha_s, delta_theta, theta = x
    return float(standard + difference - standard * (delta_alpha * theta + alpha_s * delta_theta))


def slopes(x: np.ndarray) -> np.ndarray:
    standard, _, delta_alpha, alpha_s, delta_theta, theta = x
    own = 1.0 - (delta_alpha * theta + alpha_s * delta_theta)
    changes = (-theta, -delta_theta, -alpha_s, -delta_alpha)
    return np.array([own, 1.0, *(standard * each for each in changes)])


def residuals(x: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    rows = np.array([(x[i] - value) / sd for i, (value, sd) in enumerate(OBSERVED)])
    jacobian = np.zeros((2, 6))
    for i, (_, sd) in enumerate(OBSERVED):
        jacobian[i, i] = 1.0 / sd
    return rows, jacobian


def test_the_end_gauge_has_the_uncertainty_that_the_guide_works_out(agree: Agree) -> None:
    unknowns = [_core.Unknown(start=50.0), _core.Unknown(start=0.0)]
    unknowns += [
        _core.Unknown(start=value, expected=value, expected_sd=sd)
        for value, sd in EXPECTED.values()
    ]
    found = _core.least_squares(residuals, unknowns)
    x, g = np.asarray(found.x), slopes(np.asarray(found.x))
    agree("example H.1, length [mm]", length_mm(x), 50.000838, abs=0.5 * NM)
    sd_nm = float(np.sqrt(g @ found.covariance @ g)) / NM
    # The guide prints two digits; the root of its printed terms is 31.7.
    agree("example H.1, uncertainty of the length [nm]", sd_nm, 31.7, abs=0.1)
    assert round(sd_nm) == 32
    # Coefficient and temperature themselves do not count to first order: their slopes are nothing.
    assert g[3] == pytest.approx(0.0, abs=1e-12)
    assert g[5] == pytest.approx(0.0, abs=1e-12)
