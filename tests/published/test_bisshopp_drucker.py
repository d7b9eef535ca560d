"""K. E. Bisshopp and D. C. Drucker, Large deflection of cantilever beams, Quarterly of Applied
Mathematics 3 (1945) 272-275: the exact curve of a bent strip, to size what small slopes leave out.

The exact deflection is worked out here from the paper's elliptic integrals and first held to
K. Mattiasson, Int. J. Numerical Methods in Engineering 17 (1981) 145-153, table 1, rows
P L^2/(E I) = 1, 2, 5, 10, read and recomputed; tolerance half of the last digit printed.

The library's deflection is then too large by 0.46 of the square of the tip's slope (to 0.01 for
slopes up to 0.25): a tenth of a per cent at 0.05 rad, as a backspring bends.
"""

from math import asin, sqrt

import pytest
from scipy.optimize import brentq
from scipy.special import ellipe, ellipeinc, ellipk, ellipkinc

from agreement import Agree
from published.beam import cantilever, tip_deflection, uniform

LENGTH, WIDTH, DEPTH, MODULUS = 60.0, 2.5, 0.6, 207e3
BEAM = cantilever(uniform(LENGTH, DEPTH), WIDTH, MODULUS)


def _exact(load: float) -> tuple[float, float]:
    """Deflection over length and sine of the tip's slope, for load P L^2/(E I)."""

    def first_angle(m: float) -> float:
        return asin(1.0 / sqrt(2.0 * m))

    def miss(m: float) -> float:
        return float(ellipk(m) - ellipkinc(first_angle(m), m)) - sqrt(load)

    m = brentq(miss, 0.5 + 1e-14, 1.0 - 1e-12, xtol=1e-16, rtol=1e-14)
    rise = float(ellipe(m) - ellipeinc(first_angle(m), m))
    return 1.0 - 2.0 / sqrt(load) * rise, 2.0 * m - 1.0


@pytest.mark.parametrize(
    ("load", "printed"), [(1, 0.30172), (2, 0.49346), (5, 0.71379), (10, 0.81061)]
)
def test_exact_deflection_is_mattiassons(load: float, printed: float) -> None:
    assert _exact(load)[0] == pytest.approx(printed, abs=5e-6)


@pytest.mark.parametrize("load", [0.1, 0.2, 0.25, 0.3, 0.4, 0.5])
def test_small_slopes_overstate_deflection_by_a_share_of_slope_squared(
    agree: Agree, load: float
) -> None:
    exact, sine = _exact(load)
    force = load * MODULUS * WIDTH * DEPTH**3 / 12.0 / LENGTH**2
    excess = tip_deflection(BEAM, force) / LENGTH / exact - 1.0
    agree(
        f"excess of small slopes over slope squared, load {load:g}",
        excess / asin(sine) ** 2,
        0.46,
        abs=0.01,
    )
