"""T. H. Wentzell, Machine Design, ch. 5, pp. 95-102: repeated loading.

Read in worked notebooks that follow the book and recomputed. A round bar of 12 in carries 1000 lb
that comes and goes at its end; Su 90, Sy 37, Sn 0.85 x 34 ksi, factor of safety 1.6: its diameter
is 1.82 in by Soderberg's line, 1.65 in by Goodman's. Soderberg's line is Goodman's with the yield
stress in the place of the tensile strength. In 5.6 a twisted shaft lasts 10^5 cycles, Sn grows as
(10^6/N)^0.09, the notch counts on the amplitude alone, and half the yield stress bears the mean:
factor 2.80. Units as printed; tolerance half of the last digit.
"""

from math import pi

import pytest

from agreement import Agree
from backspring import _core as core


def _factor(amplitude: float, mean: float, endurance: float, limit: float) -> float:
    cycle = core.StressCycle(amplitude_mpa=amplitude, mean_mpa=mean)
    strength = core.FatigueStrength(reversed_mpa=endurance, tensile_mpa=limit)
    factor = core.safety_factor(core.Criterion.goodman, cycle, strength)
    assert factor is not None
    return factor


@pytest.mark.parametrize(("limit", "printed_in"), [(37_000.0, 1.82), (90_000.0, 1.65)])
def test_pulsating_cantilever_diameter(agree: Agree, limit: float, printed_in: float) -> None:
    mean = 0.5 * 1000.0 * 12.0 * 32.0 / pi
    diameter_in: float = (1.6 / _factor(mean, mean, 0.85 * 34_000.0, limit)) ** (1.0 / 3.0)
    agree(
        f"diameter of a pulsating cantilever, limit {limit:g} psi [in]",
        diameter_in,
        printed_in,
        abs=5e-3,
    )


def test_example_5_6_factor_for_a_life(agree: Agree) -> None:
    """The line has the book's exponent where f Su = 10^(3 x 0.09) Sn; Su of 5.5 is 80 000 psi."""
    line = core.make_sn_line(80_000.0, 18_000.0 * 10.0**0.27 / 80_000.0, 18_000.0)
    for_the_life = core.fatigue_strength_mpa(line, 1e5)
    agree("example 5.6: strength for a life [psi]", for_the_life, 18_000.0 * 10.0**0.09, rel=1e-12)
    half = 0.5 * 8148.7331
    factor = _factor(1.32 * half, half, for_the_life, 0.5 * 71_000.0)
    agree("example 5.6: factor of safety", factor, 2.80, abs=5e-3)
