"""R. K. Bansal, A Textbook of Strength of Materials, ch. 13, examples 13.1 and 13.2, p. 557.

Read in worked notebooks that follow the book (edition not stated there) and recomputed.
Tolerance: half of the last digit printed. Inertia is given, not the sides, so the depth is free.
"""

from agreement import Agree
from backspring import _core as core
from published.beam import (
    cantilever,
    deflection,
    slope,
    tip_deflection,
    tip_slope,
    uniform,
    width_for,
)

LENGTH_MM = 3000.0
INERTIA_MM4 = 1e8
DEPTH_MM = 250.0


def _beam(modulus_mpa: float) -> core.Spring:
    width = width_for(INERTIA_MM4, DEPTH_MM)
    return cantilever(uniform(LENGTH_MM, DEPTH_MM), width, modulus_mpa)


def test_example_13_1_load_at_the_tip(agree: Agree) -> None:
    beam = _beam(2.1e5)
    agree("example 13.1, slope at the tip [rad]", tip_slope(beam, 25e3), 0.005357, abs=5e-7)
    agree("example 13.1, deflection at the tip [mm]", tip_deflection(beam, 25e3), 10.71, abs=0.005)


def test_example_13_2_load_short_of_the_tip(agree: Agree) -> None:
    beam = _beam(2e5)
    agree(
        "example 13.2, slope at the tip [rad]",
        slope(beam, LENGTH_MM, 2000.0, 50e3),
        0.005,
        abs=5e-6,
    )
    agree(
        "example 13.2, deflection at the tip [mm]",
        deflection(beam, LENGTH_MM, 2000.0, 50e3),
        11.67,
        abs=0.005,
    )
