"""Machinery's Handbook, 31st ed., p. 345, table 19: flat spring of even section held at one end.

Formulas read: deflection 4 P L^3/(E b t^3), stress S = 6 P L/(b t^2), deflection from stress
2 S L^2/(3 E t). Held to 1e-10. The table's other springs taper in width, which a spring of
constant width does not. Lengths and loads are invented.
"""

import pytest

from agreement import Agree
from backspring import _core as core
from published.beam import belly_stress, cantilever, tip_deflection, uniform

SPRINGS = [(28.0, 2.3, 2.5, 40.0, 205e3), (45.0, 3.0, 2.8, 65.0, 196.5e3)]


def _beam(length: float, width: float, thickness: float, modulus: float) -> core.Spring:
    return cantilever(uniform(length, thickness), width, modulus)


@pytest.mark.parametrize(("length", "width", "thickness", "load", "modulus"), SPRINGS)
def test_deflection_from_load(
    agree: Agree, length: float, width: float, thickness: float, load: float, modulus: float
) -> None:
    handbook = 4.0 * load * length**3 / (modulus * width * thickness**3)
    beam = _beam(length, width, thickness, modulus)
    agree(
        f"strip of {length:g} mm, deflection from load [mm]",
        tip_deflection(beam, load),
        handbook,
        rel=1e-10,
    )


@pytest.mark.parametrize(("length", "width", "thickness", "load", "modulus"), SPRINGS)
def test_stress_from_load(
    agree: Agree, length: float, width: float, thickness: float, load: float, modulus: float
) -> None:
    handbook = 6.0 * load * length / (width * thickness**2)
    beam = _beam(length, width, thickness, modulus)
    agree(
        f"strip of {length:g} mm, stress from load [MPa]",
        belly_stress(beam, 0.0, load),
        handbook,
        rel=1e-10,
    )


@pytest.mark.parametrize(("length", "width", "thickness", "load", "modulus"), SPRINGS)
def test_deflection_from_stress(
    agree: Agree, length: float, width: float, thickness: float, load: float, modulus: float
) -> None:
    beam = _beam(length, width, thickness, modulus)
    stress = belly_stress(beam, 0.0, load)
    handbook = 2.0 * stress * length**2 / (3.0 * modulus * thickness)
    agree(
        f"strip of {length:g} mm, deflection from stress [mm]",
        tip_deflection(beam, load),
        handbook,
        rel=1e-10,
    )
