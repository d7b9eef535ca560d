"""P. Koch, Plastic design, snap-fit calculation, course page of Penn State Behrend.

Its chart for a hook whose depth halves towards the tip reads 1.63 times the deflection of an
even hook. The constant was read; a chart is good to the last digit given.
"""

from agreement import Agree
from published.beam import cantilever, tip_deflection, uniform


def test_hook_tapering_to_half_depth(agree: Agree) -> None:
    even = cantilever(uniform(12.0, 2.0), 5.0, 2400.0)
    tapering = cantilever([(0.0, 2.0), (12.0, 1.0)], 5.0, 2400.0)
    ratio = tip_deflection(tapering, 1.0) / tip_deflection(even, 1.0)
    agree("taper to half depth, deflection over an even hook's", ratio, 1.63, abs=0.01)
