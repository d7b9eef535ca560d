"""Derived; J. M. Gere, Mechanics of Materials, 7th ed., problem 9.7-2, p. 755; S. S. Bhavikatti,
Strength of Materials, ch. 4: cantilevers with a step, and of the same stress everywhere.

Derived (steps): tip part of length c and inertia I1, rest I2, end load P: delta = (P/(3 E)) [c^3/I1
+ (L^3 - c^3)/I2]. Evaluated to 10 digits, hence 1e-9.

Gere (p. 755 of the solutions): half the length with I2, spread load, ratio to the even beam for
I2/I1 = 1 to 5. Read and recomputed; tolerance half of the last digit printed, and the exact form (1
+ 15 I1/I2)/16 to 1e-10.

Bhavikatti, beam of uniform strength: simply supported over 6 m, 20 kN in the middle, 8 MPa. Read in
a worked notebook and recomputed; half of the beam is a cantilever of 3 m under 10 kN. The depth is
printed to 0.005 mm in 335.41, so stress to 3e-5.

Derived (constant strength): depth h0 sqrt(u), u from the tip, sinks 2 P L^3/(3 E I0) and stores
sigma^2 V/(6 E). Outlines are made of straight pieces between u = (i/n)^2, so the depth is h0 i/n at
the stations; the piece at the tip keeps its thicker end's depth. Between stations the chord is
thinner than the curve: the stress there peaks at (2 i + 1)^2/(4 i (i + 1)) times sigma, at u = i (i
+ 1)/n^2. The error in deflection falls as 1/n^2.
"""

from math import sqrt

import pytest

from agreement import Agree
from backspring import _core as core
from published.beam import (
    belly_stress,
    cantilever,
    peak_stress,
    spread_load_deflection,
    tip_deflection,
    uniform,
)

LENGTH_MM, WIDTH_MM, MODULUS_MPA, FORCE_N, ROOT_DEPTH_MM = 60.0, 2.5, 207e3, 20.0, 3.0
STRESS_MPA = 320.0


def _stepped(length: float, tip_part: float, root_depth: float, tip_depth: float) -> core.Spring:
    step = length - tip_part
    thickness = [(0.0, root_depth), (step, root_depth), (step, tip_depth), (length, tip_depth)]
    return cantilever(thickness, WIDTH_MM, MODULUS_MPA)


def _constant_strength(length: float, root_depth: float, width: float, pieces: int) -> core.Spring:
    places = [
        (length * (1.0 - (i / pieces) ** 2), root_depth * i / pieces) for i in range(1, pieces + 1)
    ]
    return cantilever([*reversed(places), (length, root_depth / pieces)], width, MODULUS_MPA)


def test_step_deflection(agree: Agree) -> None:
    beam = _stepped(LENGTH_MM, 25.0, 3.0, 2.0)
    agree("step, deflection at the tip [mm]", tip_deflection(beam, FORCE_N), 1.4491859009, rel=1e-9)


def test_step_stress_on_its_thin_side_and_at_the_wall(agree: Agree) -> None:
    beam = _stepped(LENGTH_MM, 25.0, 3.0, 2.0)
    agree(
        "step, stress on its thin side [MPa]", belly_stress(beam, 35.0, FORCE_N), 300.0, rel=1e-12
    )
    peak = peak_stress(beam, FORCE_N)
    assert (peak.stress_mpa, peak.station_mm) == pytest.approx((320.0, 0.0), rel=1e-12)


def test_step_at_half_length_with_twice_the_inertia(agree: Agree) -> None:
    beam = _stepped(LENGTH_MM, 30.0, 2.0 * 2.0 ** (1 / 3), 2.0)
    tip_inertia = WIDTH_MM * 2.0**3 / 12.0
    expected = 0.1875 * FORCE_N * LENGTH_MM**3 / (MODULUS_MPA * tip_inertia)
    agree(
        "step at half length, deflection at the tip [mm]",
        tip_deflection(beam, FORCE_N),
        expected,
        rel=1e-10,
    )


@pytest.mark.parametrize(
    ("inertia_ratio", "printed"), [(1, 1.00), (2, 0.53), (3, 0.38), (4, 0.30), (5, 0.25)]
)
def test_gere_9_7_2_spread_load_on_a_stepped_cantilever(
    agree: Agree, inertia_ratio: int, printed: float
) -> None:
    tip_depth = 2.0
    beam = _stepped(LENGTH_MM, 30.0, tip_depth * inertia_ratio ** (1 / 3), tip_depth)
    even = cantilever(uniform(LENGTH_MM, tip_depth), WIDTH_MM, MODULUS_MPA)

    def sinks(spring: core.Spring) -> float:
        halves = [(0.0, 30.0), (30.0, LENGTH_MM)]
        return sum(spread_load_deflection(spring, LENGTH_MM, 1.0, *half) for half in halves)

    ratio = sinks(beam) / sinks(even)
    # 0.375 is printed as 0.38: half a unit of the last digit, on the edge.
    agree(f"Gere 9.7-2, I2/I1 = {inertia_ratio}, as printed", ratio, printed, abs=0.005 + 1e-9)
    agree(
        f"Gere 9.7-2, I2/I1 = {inertia_ratio}",
        ratio,
        (1.0 + 15.0 / inertia_ratio) / 16.0,
        rel=1e-10,
    )


def test_bhavikatti_uniform_strength_by_width(agree: Agree) -> None:
    beam = cantilever(uniform(3000.0, 300.0), 250.0, MODULUS_MPA)
    agree(
        "Bhavikatti, uniform strength by width [MPa]", belly_stress(beam, 0.0, 10e3), 8.0, rel=1e-12
    )


@pytest.mark.parametrize("from_support_mm", [300.0, 1000.0, 2000.0, 3000.0])
def test_bhavikatti_uniform_strength_by_depth(agree: Agree, from_support_mm: float) -> None:
    depth_mm = 335.41 * sqrt(from_support_mm / 3000.0)
    beam = cantilever(uniform(3000.0, depth_mm), 200.0, MODULUS_MPA)
    stress = belly_stress(beam, 3000.0 - from_support_mm, 10e3)
    agree(
        f"Bhavikatti, by depth, {from_support_mm:g} mm from the support [MPa]",
        stress,
        8.0,
        rel=3e-5,
    )


def test_constant_strength_at_every_station() -> None:
    beam = _constant_strength(LENGTH_MM, ROOT_DEPTH_MM, WIDTH_MM, 20)
    stresses = [belly_stress(beam, s.x_mm, FORCE_N) for s in beam.thickness[:-2]]
    assert stresses == pytest.approx([STRESS_MPA] * 19, rel=1e-10)


def test_constant_strength_peaks_on_the_chord_next_to_the_tip(agree: Agree) -> None:
    pieces = 20
    beam = _constant_strength(LENGTH_MM, ROOT_DEPTH_MM, WIDTH_MM, pieces)
    peak = peak_stress(beam, FORCE_N)
    agree(
        "constant strength, greatest stress between stations [MPa]",
        peak.stress_mpa,
        9.0 / 8.0 * STRESS_MPA,
        rel=1e-10,
    )
    agree(
        "constant strength, its distance from the tip [mm]",
        LENGTH_MM - peak.station_mm,
        2.0 * LENGTH_MM / pieces**2,
        rel=1e-9,
    )


def test_constant_strength_deflection(agree: Agree) -> None:
    def sinks(pieces: int) -> float:
        return tip_deflection(
            _constant_strength(LENGTH_MM, ROOT_DEPTH_MM, WIDTH_MM, pieces), FORCE_N
        )

    coarse, fine = sinks(200), sinks(400)
    exact = 2.4734299517
    assert (coarse - exact) / (fine - exact) == pytest.approx(4.0, rel=0.02)
    agree(
        "constant strength, deflection at the tip [mm]",
        (4.0 * fine - coarse) / 3.0,
        exact,
        rel=1e-7,
    )


def test_constant_strength_energy(agree: Agree) -> None:
    volume_mm3 = 2.0 / 3.0 * LENGTH_MM * WIDTH_MM * ROOT_DEPTH_MM
    beam = _constant_strength(LENGTH_MM, ROOT_DEPTH_MM, WIDTH_MM, 400)
    energy_nmm = 0.5 * FORCE_N * tip_deflection(beam, FORCE_N)
    agree(
        "constant strength, energy [N mm]",
        energy_nmm,
        STRESS_MPA**2 * volume_mm3 / (6.0 * MODULUS_MPA),
        rel=1e-5,
    )
