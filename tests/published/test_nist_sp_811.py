"""NIST Special Publication 811, Guide for the Use of the International System of Units, app. B
(factors from memory).

Factors from memory of the document: exact where it says so (inch, pound force by way of
0.45359237 kg and 9.80665 m/s2, ounce, degree Fahrenheit), elsewhere its seven printed digits.
Exact factors are held to the last bit or two of a double, the others to half of the last digit.
"""

import pytest

from agreement import Agree
from backspring.units import Kind, parse

POUND_KG, GRAVITY_M_PER_S2, INCH_M = 0.45359237, 9.80665, 0.0254
POUND_FORCE_N = POUND_KG * GRAVITY_M_PER_S2

EXACT: list[tuple[str, Kind, float]] = [
    ("1 in", "length", 1000.0 * INCH_M),
    ("1 thou", "length", INCH_M),
    ("3/32 in", "length", 2.38125),
    ("1 lbf", "force", POUND_FORCE_N),
    ("1 ozf", "force", POUND_FORCE_N / 16.0),
    ("1 kgf", "force", GRAVITY_M_PER_S2),
    ("1 psi", "stress", POUND_FORCE_N / INCH_M**2 / 1e6),
    ("1 ksi", "stress", POUND_FORCE_N / INCH_M**2 / 1e3),
    ("1 oz", "mass", 1000.0 * POUND_KG / 16.0),
    ("1 oz in2", "inertia", POUND_KG / 16.0 * (1000.0 * INCH_M) ** 2),
    ("1 lbf in/rad", "root stiffness", POUND_FORCE_N * INCH_M * 1000.0),
    ("32 F", "temperature", 0.0),
    ("212 F", "temperature", 100.0),
    ("620 F", "temperature", (620.0 - 32.0) / 1.8),
    ("300 K", "temperature", 26.85),
]
PRINTED: list[tuple[str, Kind, float]] = [
    ("1 lbf", "force", 4.448222),
    ("1 ozf", "force", 0.2780139),
    ("1 ksi", "stress", 6.894757),
    ("1 oz", "mass", 28.34952),
    ("1 lbf in/rad", "root stiffness", 112.9848),
]


@pytest.mark.parametrize(("text", "kind", "value"), EXACT)
def test_exact_factor(agree: Agree, text: str, kind: Kind, value: float) -> None:
    agree(f"{text} as {kind} in mm, N, MPa, g or C", parse(text, kind), value, rel=1e-15, abs=1e-15)


@pytest.mark.parametrize(("text", "kind", "printed"), PRINTED)
def test_printed_factor(text: str, kind: Kind, printed: float) -> None:
    assert float(f"{parse(text, kind):.7g}") == printed
