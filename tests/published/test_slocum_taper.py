"""A. Slocum and X. Yang, Beam_Tapered_Thickness, MIT spreadsheet, 2003: depth tapering 2 to 1.

Inputs and results read and recomputed; tolerance half of the last digit printed.

The same closed form for other tapers is derived: with n = tip depth / root depth,
delta = (P L^3/(3 E I_root)) K(n), K(n) = [3/(1-n)^3] [-ln n - (1-n)(3-n)/2], and the slope of the
tip is P L^2/(2 n E I_root). K was evaluated to 10 digits, hence 1e-9; near n = 1 the form cancels,
so there it is evaluated with 30 digits and held to 1e-12. Below n = 1/2 the stress is greatest
where the depth is twice the tip's: 1.5 P L/[b h_tip (h_root - h_tip)].
"""

import mpmath
import pytest

from agreement import Agree
from backspring import _core as core
from published.beam import (
    belly_stress,
    cantilever,
    peak_stress,
    tip_deflection,
    tip_slope,
    uniform,
)

LENGTH, WIDTH, MODULUS, FORCE = 5.0, 0.5, 2e5, 0.5
ROOT_DEPTH = 0.2
SHEET = cantilever([(0.0, ROOT_DEPTH), (LENGTH, 0.1)], WIDTH, MODULUS)
STRAIGHT = cantilever(uniform(LENGTH, ROOT_DEPTH), WIDTH, MODULUS)

FACTOR_BY_RATIO = [
    (0.2, 2.867800268),
    (0.25, 2.524759901),
    (0.3, 2.265068259),
    (0.4, 1.892926832),
    (0.5, 1.635532333),
    (0.6, 1.444951114),
    (0.7, 1.297215993),
    (0.75, 1.234957911),
    (0.8, 1.178831743),
    (0.9, 1.081546973),
]


def _tapered(ratio: float) -> core.Spring:
    return cantilever([(0.0, ROOT_DEPTH), (LENGTH, ratio * ROOT_DEPTH)], WIDTH, MODULUS)


def test_sheet_stress(agree: Agree) -> None:
    agree("sheet, stress at the root [MPa]", belly_stress(SHEET, 0.0, FORCE), 750.0, abs=0.5)
    agree("sheet, greatest stress [MPa]", peak_stress(SHEET, FORCE).stress_mpa, 750.0, abs=0.5)


def test_sheet_tip_slope(agree: Agree) -> None:
    agree("sheet, slope at the tip [rad]", tip_slope(SHEET, FORCE), 0.1875, abs=5e-5)


def test_sheet_deflection_and_spring_constant(agree: Agree) -> None:
    tapered = tip_deflection(SHEET, FORCE)
    agree("sheet, deflection at the tip [mm]", tapered, 0.511, abs=5e-4)
    agree("sheet, spring constant [N/mm]", FORCE / tapered, 0.978, abs=5e-4)


def test_sheet_straight_beam_and_ratio(agree: Agree) -> None:
    straight = tip_deflection(STRAIGHT, FORCE)
    # The sheet prints 0.313 for 0.3125: half a unit of its last digit, on the edge.
    agree("sheet, deflection of the even beam [mm]", straight, 0.3125, rel=1e-10)
    agree("sheet, tapered over even", tip_deflection(SHEET, FORCE) / straight, 1.636, abs=5e-4)


@pytest.mark.parametrize(("ratio", "factor"), FACTOR_BY_RATIO)
def test_deflection_of_a_taper(agree: Agree, ratio: float, factor: float) -> None:
    straight = tip_deflection(STRAIGHT, FORCE)
    agree(
        f"taper to {ratio:g}, deflection at the tip [mm]",
        tip_deflection(_tapered(ratio), FORCE),
        factor * straight,
        rel=1e-9,
    )


@pytest.mark.parametrize("ratio", [0.85, 0.9, 0.909, 0.92, 0.99, 0.999, 1.01, 1.09, 1.11, 1.5, 3.0])
def test_deflection_of_a_slight_or_growing_taper(agree: Agree, ratio: float) -> None:
    with mpmath.workdps(30):
        n = mpmath.mpf(ratio)
        factor = float(3 / (1 - n) ** 3 * (-mpmath.log(n) - (1 - n) * (3 - n) / 2))
    straight = tip_deflection(STRAIGHT, FORCE)
    agree(
        f"slight or growing taper to {ratio:g}, deflection [mm]",
        tip_deflection(_tapered(ratio), FORCE),
        factor * straight,
        rel=1e-12,
    )


@pytest.mark.parametrize("ratio", [0.2, 0.5, 0.9, 0.99, 1.01, 2.0])
def test_tip_slope_of_a_taper(agree: Agree, ratio: float) -> None:
    straight = tip_slope(STRAIGHT, FORCE)
    agree(
        f"taper to {ratio:g}, slope at the tip [rad]",
        tip_slope(_tapered(ratio), FORCE),
        straight / ratio,
        rel=1e-10,
    )


def test_peak_stress_of_a_steep_taper_lies_where_depth_is_twice_the_tips(agree: Agree) -> None:
    beam = cantilever([(0.0, 4.0), (40.0, 1.0)], 2.5, 207e3)
    agree("steep taper, stress at the root [MPa]", belly_stress(beam, 0.0, 20.0), 120.0, rel=1e-10)
    peak = peak_stress(beam, 20.0)
    agree("steep taper, greatest stress [MPa]", peak.stress_mpa, 160.0, rel=1e-10)
    agree(
        "steep taper, its distance from the tip [mm]", 40.0 - peak.station_mm, 40.0 / 3.0, rel=1e-10
    )
