"""R. C. Hibbeler, Mechanics of Materials, example 12.12, p. 612: a beam that overhangs two pins.

Read in a worked notebook that follows the book (edition not stated there) and recomputed. Units
as printed: in, kip, ksi. Tolerance: half of the last digit printed; reactions are exact.
"""

from agreement import Agree
from backspring import _core as core
from published.beam import overhang, tip_deflection, uniform, width_for

SPAN_IN = 144.0
OVERHANG_IN = 144.0
FORCE_KIP = 5.0
DEPTH_IN = 10.0
BEAM = overhang(
    [(-SPAN_IN, DEPTH_IN), *uniform(OVERHANG_IN, DEPTH_IN)],
    width_for(125.0, DEPTH_IN),
    29e3,
    SPAN_IN,
)


def test_example_12_12_displacement_of_the_overhanging_end(agree: Agree) -> None:
    agree(
        "example 12.12, deflection at the tip [in]",
        tip_deflection(BEAM, FORCE_KIP),
        2.75,
        abs=0.005,
    )


def test_example_12_12_reactions(agree: Agree) -> None:
    pins = core.pin_forces(BEAM, [core.Load(x_mm=OVERHANG_IN, force_n=FORCE_KIP)])
    agree("example 12.12, force on the far pin [kip]", pins.rear_n, 5.0, rel=1e-12)
    agree("example 12.12, force on the near pin [kip]", pins.middle_n, 10.0, rel=1e-12)
