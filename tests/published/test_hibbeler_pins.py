"""R. C. Hibbeler, Mechanics of Materials, 10th ed. (SI), example 1.9: a pin in double shear
(answer from memory).

A beam carries 30 kN at 2 m; it is held at A by a pin of 20 mm in double shear and at B, at 6 m, by
a bar that slopes 4 to 3. Inputs read in a worked program that follows the book; its answer, 34.0
MPa at A, from memory and recomputed; tolerance half of the last digit.
"""

from math import hypot

from agreement import Agree
from backspring import _core as core


def test_example_1_9_pin_in_double_shear(agree: Agree) -> None:
    bar_n = 30_000.0 * 2.0 / (6.0 * 0.8)
    force_n = hypot(bar_n * 0.6, 30_000.0 - bar_n * 0.8)
    pin = core.PinInput(force_n=force_n, pin_mm=20.0, spring_width_mm=20.0, spring_yield_mpa=250.0)
    agree(
        "example 1.9, shear stress of the pin [MPa]",
        core.pin_stress(pin).shear.stress_mpa,
        34.0,
        abs=0.05,
    )
