"""S. S. Bhavikatti, Strength of Materials, ch. 5, example 5.4, p. 193.

Read in a worked notebook that follows the book (edition not stated there) and recomputed.
Tolerance: half of the last digit printed. The book's beam of uniform strength is in
test_stepped_and_constant_strength.py.
"""

from agreement import Agree
from published.beam import (
    cantilever,
    spread_load_deflection,
    tip_deflection,
    uniform,
    width_for,
)


def test_example_5_4_tip_load_and_spread_load_next_to_the_wall(agree: Agree) -> None:
    depth_mm = 300.0
    beam = cantilever(uniform(3000.0, depth_mm), width_for(180e6, depth_mm), 2e5)
    under_tip_load = tip_deflection(beam, 20e3)
    under_spread_load = spread_load_deflection(beam, 3000.0, 20.0, 0.0, 2000.0)
    agree(
        "example 5.4, deflection at the tip [mm]",
        under_tip_load + under_spread_load,
        6.85,
        abs=0.005,
    )
