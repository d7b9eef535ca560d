"""W. C. Young, Roark's Formulas for Stress and Strain, table 17.1: two U-notches, bending.

The polynomials were read; figures evaluated apart to 5 decimals. At x = 2 h/D = 1 the printed
coefficients add up to 1, in the blunt branch to 1.001 less 0.001 sqrt(h/r): the table's rounding.
"""

import pytest

from backspring import _core as core


def factor(sharpness: float, x: float) -> float:
    """By h/r and 2 h/D, as the table has it."""
    return core.groove_factor(1.0, 0.5 * x, 0.5 * x / sharpness)


@pytest.mark.parametrize(
    ("sharpness", "x", "expected"),
    [
        (0.5, 0.2, 1.68020),
        (1.0, 0.2, 2.06851),
        (1.0, 1.0 / 3.0, 1.65000),
        (2.0, 1.0 / 3.0, 2.04766),
        (5.0, 0.2, 3.59663),
        (5.0, 0.5, 2.16834),
    ],
)
def test_two_u_notches(sharpness: float, x: float, expected: float) -> None:
    assert factor(sharpness, x) == pytest.approx(expected, abs=5e-6)


@pytest.mark.parametrize("sharpness", [0.25, 0.5, 1.0, 2.0, 2.1, 5.0, 20.0, 50.0])
def test_coefficients_add_up(sharpness: float) -> None:
    rounding = 0.001 * (1.0 - sharpness**0.5) if sharpness <= 2.0 else 0.0
    assert factor(sharpness, 1.0) == pytest.approx(max(1.0, 1.0 + rounding), abs=1e-9)


@pytest.mark.parametrize("sharpness", [0.24, 50.1])
def test_outside_the_printed_range(sharpness: float) -> None:
    with pytest.raises(core.OutOfRange, match=r"must be from 0\.25 to 50"):
        factor(sharpness, 0.3)
