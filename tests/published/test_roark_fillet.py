"""W. C. Young, Roark's Formulas for Stress and Strain, table 17.1: shoulder with fillets, bending.

The polynomials were read. Their figures are evaluated apart to 5 decimals. Where the thin part is
vanishingly less than the thick one left over, at x = 2 h/D = 1, the printed coefficients of each
branch add up to 1 exactly; a mistyped one would show.
"""

import pytest

from agreement import Agree
from backspring import _core as core


def factor(sharpness: float, x: float) -> float:
    """By h/r and 2 h/D, as the table has it."""
    large, height = 1.0, 0.5 * x
    return core.shoulder_factor(large, large - 2.0 * height, height / sharpness)


@pytest.mark.parametrize(
    ("sharpness", "x", "expected"),
    [
        (0.5, 0.2, 1.41954),
        (1.0, 0.2, 1.62758),
        (1.0, 1.0 / 3.0, 1.43659),
        (1.0, 0.5, 1.245375),
        (2.0, 0.5, 1.43381),
        (5.0, 0.5, 1.91746),
        (5.0, 1.0 / 3.0, 2.30021),
        (10.0, 0.5, 2.38460),
    ],
)
def test_shoulder_with_fillets(agree: Agree, sharpness: float, x: float, expected: float) -> None:
    agree(f"factor at h/r {sharpness:g}, 2h/D {x:.3g}", factor(sharpness, x), expected, abs=5e-6)


@pytest.mark.parametrize("sharpness", [0.1, 0.5, 1.0, 1.9, 2.1, 5.0, 10.0, 20.0])
def test_coefficients_add_up(agree: Agree, sharpness: float) -> None:
    agree(f"coefficients at h/r {sharpness:g} add up to", factor(sharpness, 1.0), 1.0, abs=1e-12)


@pytest.mark.parametrize("x", [0.1, 0.2, 0.3, 0.5])
def test_branches_meet(x: float) -> None:
    """They do within 0.002 on the way to x = 1, where both are 1."""
    assert factor(2.0, x) == pytest.approx(factor(2.0 + 1e-9, x), abs=2e-3)


@pytest.mark.parametrize("sharpness", [0.09, 20.1])
def test_outside_the_printed_range(sharpness: float) -> None:
    with pytest.raises(core.OutOfRange, match=r"over fillet radius: must be from 0\.1 to 20"):
        factor(sharpness, 0.3)
