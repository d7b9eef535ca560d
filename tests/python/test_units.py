"""Values with units become the core's units: mm, N, MPa, deg, C, HRC, g, kg mm2, N mm/rad, h."""

from __future__ import annotations

import math
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from backspring import InvalidInput
from backspring.units import Kind, System, parse

# NIST SP 811, appendix B.8, as printed there to seven figures: pound-force, ounce-force,
# kilogram-force and ounce read in copies of its table, the others from memory.
NIST_SP_811: list[tuple[str, Kind, float]] = [
    ("1 in", "length", 25.4),
    ("1 mil", "length", 2.54e-2),
    ("1 lbf", "force", 4.448222),
    ("1 ozf", "force", 2.780139e-1),
    ("1 kgf", "force", 9.80665),
    ("1 psi", "stress", 6.894757e-3),
    ("1 ksi", "stress", 6.894757),
    ("1 oz", "mass", 28.34952),
    ("1 rad", "angle", 57.29578),
    ("1 lbf in/rad", "root stiffness", 112.9848),
]
# The rest follows from SI prefixes, from the inch, and from the Fahrenheit scale's fixed points.
DEFINED: list[tuple[str, Kind, float]] = [
    ("2.9 mm", "length", 2.9),
    ("1.2 cm", "length", 12.0),
    ("0.08 m", "length", 80.0),
    ("250 um", "length", 0.25),
    ("250 µm", "length", 0.25),
    ("115 thou", "length", 2.921),
    ("115 mil", "length", 2.921),
    ('0.115"', "length", 2.921),
    ("0.115 inch", "length", 2.921),
    ("3/32 in", "length", 2.38125),
    ("2 15/16 in", "length", 74.6125),
    ("2-15/16 in", "length", 74.6125),
    ('1/8"', "length", 3.175),
    ("-1 1/2 in", "length", -38.1),
    (".5 mm", "length", 0.5),
    ("1e-2 mm", "length", 0.01),
    ("0.02 kN", "force", 20.0),
    ("20 N", "force", 20.0),
    ("205 GPa", "stress", 205000.0),
    ("1200 N/mm2", "stress", 1200.0),
    ("90 deg", "angle", 90.0),
    ("90°", "angle", 90.0),
    ("515 C", "temperature", 515.0),
    ("620 °F", "temperature", 326.6666666666667),
    ("32 F", "temperature", 0.0),
    ("212 F", "temperature", 100.0),
    ("273.15 K", "temperature", 0.0),
    ("45 HRC", "hardness", 45.0),
    ("28 g", "mass", 28.0),
    ("0.028 kg", "mass", 28.0),
    ("5.2e-5 kg m2", "inertia", 52.0),
    ("5.2e-5 kg·m²", "inertia", 52.0),
    ("52 kg mm2", "inertia", 52.0),
    ("520 g cm2", "inertia", 52.0),
    ("1 oz in2", "inertia", 0.028349523125 * 645.16),
    ("2e6 N mm/rad", "root stiffness", 2e6),
    ("2000 N m/rad", "root stiffness", 2e6),
    ("90 min", "time", 1.5),
    ("5400 s", "time", 1.5),
    ("0.12", "number", 0.12),
]


@pytest.mark.parametrize(("text", "kind", "expected"), NIST_SP_811)
def test_a_factor_is_that_of_the_standard(text: str, kind: Kind, expected: float) -> None:
    assert f"{parse(text, kind):.6e}" == f"{expected:.6e}"


@pytest.mark.parametrize(("text", "kind", "expected"), DEFINED)
def test_a_unit_by_definition(text: str, kind: Kind, expected: float) -> None:
    assert parse(text, kind) == pytest.approx(expected, rel=1e-15, abs=1e-13)


@pytest.mark.parametrize(
    ("kind", "system", "unit"),
    [
        ("length", "mm", "mm"),
        ("length", "in", "in"),
        ("force", "mm", "N"),
        ("force", "in", "lbf"),
        ("stress", "mm", "MPa"),
        ("stress", "in", "ksi"),
        ("temperature", "mm", "C"),
        ("temperature", "in", "F"),
        ("mass", "mm", "g"),
        ("mass", "in", "oz"),
        ("inertia", "mm", "kg mm2"),
        ("inertia", "in", "oz in2"),
        ("root stiffness", "mm", "N mm/rad"),
        ("root stiffness", "in", "lbf in/rad"),
        ("hardness", "mm", "HRC"),
        ("hardness", "in", "HRC"),
        ("time", "in", "h"),
        ("angle", "in", "deg"),
    ],
)
def test_what_a_bare_number_means(kind: Kind, system: System, unit: str) -> None:
    assert parse(3, kind, system) == parse("3", kind, system) == parse(f"3 {unit}", kind)


@given(st.integers(1, 64), st.integers(0, 12), st.integers(1, 63))
def test_fractions_of_an_inch_are_exact(bottom: int, whole: int, top: int) -> None:
    exact = (whole + Fraction(top, bottom)) * Fraction("25.4")
    assert parse(f"{whole} {top}/{bottom} in", "length") == float(exact)


@given(st.floats(-1e6, 1e6))
def test_a_number_in_the_cores_own_unit_is_kept(number: float) -> None:
    assert parse(number, "length") == number


REFUSED: list[tuple[Any, Kind, str]] = [
    ("2,92 mm", "length", '"2,92 mm" has a comma: write a decimal point, nothing between '
     'thousands'),
    ("30,000 psi", "stress", '"30,000 psi" has a comma: write a decimal point, nothing between '
     'thousands'),
    ("5 lb", "force", 'unit "lb" in "5 lb" can be a force or a mass: write lbf for a force, oz or g'
     " for a mass"),
    ("5 kg", "force", 'must be a force, got "5 kg", which is a mass: did you mean kgf?'),
    ("5 mm", "force", 'must be a force, got "5 mm", which is a length'),
    ("5 Mpa", "stress", 'unknown unit "Mpa" in "5 Mpa": did you mean "MPa"?'),
    ("5 furlong", "length", 'unknown unit "furlong" in "5 furlong": known are mm, cm, m, um, in, '
     'inch, ", thou, mil'),
    ("3 %", "number", 'unknown unit "%" in "3 %": write a plain number'),
    ("3/32", "length", '"3/32" has no unit: write a fraction with its unit, as "3/32 in"'),
    ("3/0 in", "length", '"3/0 in" divides by 0'),
    ("thin", "length", 'must be a length, got "thin"'),
    ("1_000 mm", "length", 'unknown unit "_000 mm" in "1_000 mm": known are mm, cm, m, um, in, '
     'inch, ", thou, mil'),
    ("1e999999999 mm", "length", 'must be a finite number, got "1e999999999 mm"'),
    ("9" * 61, "length", "must be a length, got a text of 61 characters"),
    (math.nan, "length", "must be a finite number, got nan"),
    (math.inf, "force", "must be a finite number, got inf"),
    (10**400, "force", "must be a finite number, got inf"),
    (True, "length", "must be a length, got true"),
    (None, "inertia", "must be an inertia, got None"),
    ([1, 2], "length", "must be a length, got a list of 2"),
    ({}, "length", "must be a length, got a table"),
]  # fmt: skip


@pytest.mark.parametrize(("value", "kind", "message"), REFUSED)
def test_what_is_refused(value: Any, kind: Kind, message: str) -> None:
    with pytest.raises(InvalidInput) as refused:
        parse(value, kind)
    assert str(refused.value) == message


@dataclass
class Quantity:
    """Converts as the quantities of unit libraries do; `held` names where the number is."""

    millimetres: float
    held: str

    def to(self, unit: str) -> Any:
        if unit != "mm":
            raise ValueError(unit)
        return type("Converted", (), {self.held: self.millimetres})()

    def __str__(self) -> str:
        return "a quantity"


@pytest.mark.parametrize("held", ["magnitude", "value"])
def test_a_quantity_of_a_unit_library_is_asked_to_convert_itself(held: str) -> None:
    assert parse(Quantity(2.5, held), "length", "in") == 2.5


def test_a_quantity_of_the_wrong_kind_is_refused() -> None:
    with pytest.raises(InvalidInput, match=r"^must be a force, got a quantity$"):
        parse(Quantity(2.5, "value"), "force")
