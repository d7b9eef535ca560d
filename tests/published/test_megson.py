"""T. H. G. Megson, Structural and Stress Analysis, example 13.14: inertia growing evenly to twice.

Read in a stored solution (edition not stated there) and recomputed: the tip of a cantilever with
I = I0 (1 + u), u from the tip, sinks by 0.19 W L^3/(E I0), exactly ln 2 - 1/2.

The other figures are derived, in the form of W. C. Young's tapered-beam table in Roark's Formulas
for Stress and Strain (the table itself was not seen): I = I_tip (1 + K u)^n, with
I_root/I_tip = (1 + K)^n and c = delta E I_tip/(W L^3). For n = 3 the depth is a straight taper and
the figures hold to the 6 digits evaluated. For the others a constant width needs a curved outline,
here 400 straight pieces: 1e-6 of chord error, which falls as 1/pieces^2, on top of up to 5e-6 of
rounding in the figures.
"""

import pytest

from agreement import Agree
from published.beam import cantilever, tip_deflection

LENGTH, WIDTH, MODULUS, TIP_DEPTH = 50.0, 2.0, 2e5, 1.5
PIECES = 400

COEFFICIENT = [
    (1, 0.25, 0.841587),
    (1, 0.5, 0.545177),
    (1, 2.0, 0.193147),
    (1, 4.0, 0.106900),
    (1, 8.0, 0.0570829),
    (2, 0.25, 0.909645),
    (2, 0.5, 0.555578),
    (2, 2.0, 0.196426),
    (2, 4.0, 0.113706),
    (2, 8.0, 0.0646903),
    (3, 0.25, 0.931869),
    (3, 0.5, 0.558939),
    (3, 2.0, 0.197600),
    (3, 4.0, 0.116412),
    (3, 8.0, 0.0681472),
    (4, 0.25, 0.942809),
    (4, 0.5, 0.560598),
    (4, 2.0, 0.198201),
    (4, 4.0, 0.117851),
    (4, 8.0, 0.0700747),
]


def _coefficient(power: int, inertia_ratio: float, pieces: int) -> float:
    gain = inertia_ratio ** (1.0 / power) - 1.0

    def depth(u: float) -> float:
        return TIP_DEPTH * (1.0 + gain * u) ** (power / 3.0)

    thickness = [(LENGTH * i / pieces, depth(1.0 - i / pieces)) for i in range(pieces + 1)]
    tip_inertia = WIDTH * TIP_DEPTH**3 / 12.0
    sinks = tip_deflection(cantilever(thickness, WIDTH, MODULUS), 1.0)
    return sinks * MODULUS * tip_inertia / LENGTH**3


def test_example_13_14(agree: Agree) -> None:
    agree(
        "example 13.14, coefficient of the tip's deflection",
        _coefficient(1, 2.0, PIECES),
        0.19,
        abs=0.005,
    )


@pytest.mark.parametrize(("power", "inertia_ratio", "coefficient"), COEFFICIENT)
def test_inertia_rising_with_a_power(
    agree: Agree, power: int, inertia_ratio: float, coefficient: float
) -> None:
    pieces, tolerance = (1, 3e-6) if power == 3 else (PIECES, 6e-6)
    found = _coefficient(power, inertia_ratio, pieces)
    agree(
        f"inertia to the power {power}, ratio {inertia_ratio:g}, coefficient",
        found,
        coefficient,
        rel=tolerance,
    )
