"""R. H. MacNeal and R. L. Harder, A proposed standard set of problems to test finite element
accuracy, Finite Elements in Analysis and Design 1 (1985) 3-20: straight cantilever, unit tip load.

Read as quoted in three solver manuals and recomputed: 0.1081 in the plane, 0.4321 out of it, in
inches. Shear shows in the fourth digit, bending alone gives 0.1080 and 0.4320. Tolerance half of
the last digit printed; Timoshenko's closed form P L^3/(3 E I) + P L/(kappa G A), kappa 5/6, is
held to 1e-12.
"""

import pytest

from agreement import Agree
from backspring import _core as core
from published.beam import cantilever, tip_deflection, uniform

LENGTH, MODULUS, POISSON = 6.0, 1e7, 0.3
IN_PLANE = (0.2, 0.1)
OUT_OF_PLANE = (0.1, 0.2)


def _beam(depth: float, width: float) -> core.Spring:
    return cantilever(uniform(LENGTH, depth), width, MODULUS, POISSON)


@pytest.mark.parametrize(("sides", "printed"), [(IN_PLANE, 0.1081), (OUT_OF_PLANE, 0.4321)])
def test_straight_cantilever(agree: Agree, sides: tuple[float, float], printed: float) -> None:
    agree(
        f"depth {sides[0]:g} in, deflection at the tip, as printed [in]",
        tip_deflection(_beam(*sides), 1.0),
        printed,
        abs=5e-5,
    )


@pytest.mark.parametrize("sides", [IN_PLANE, OUT_OF_PLANE])
def test_straight_cantilever_by_timoshenko(agree: Agree, sides: tuple[float, float]) -> None:
    depth, width = sides
    shear_modulus = MODULUS / (2.0 * (1.0 + POISSON))
    bending = 4.0 * LENGTH**3 / (MODULUS * width * depth**3)
    shear = 1.2 * LENGTH / (shear_modulus * width * depth)
    agree(
        f"depth {depth:g} in, deflection at the tip, Timoshenko [in]",
        tip_deflection(_beam(depth, width), 1.0),
        bending + shear,
        rel=1e-12,
    )


def test_shear_is_visible_in_the_printed_digits(agree: Agree) -> None:
    depth, width = IN_PLANE
    bending_only = cantilever(uniform(LENGTH, depth), width, MODULUS)
    agree(
        "depth 0.2 in, deflection by bending alone [in]",
        tip_deflection(bending_only, 1.0),
        0.1080,
        rel=1e-10,
    )
