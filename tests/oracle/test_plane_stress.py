"""CalculiX, plane-stress finite elements, run here: two tapered springs on pins in their holes.

See plane_stress.py.
Source of the clamped strip: R. H. MacNeal and R. L. Harder, "A proposed standard set of problems
to test finite element accuracy", Finite Elements in Analysis and Design 1 (1985), straight
cantilever with in-plane tip load.
"""

from functools import lru_cache

import numpy as np
import pytest

from agreement import Agree
from backspring import _core
from stations import stations

from .plane_stress import PlaneSolution, solve
from .plane_stress_mesh import PlaneSpring, without_holes_ahead_of_middle_pin

NEEDS_CALCULIX = True
SMALL = PlaneSpring(
    width_mm=2.3,
    thickness_mm=((-38, 3.2), (-4, 3.8), (0, 3.8), (7, 3.1), (25, 2.4), (36.5, 2.5)),
    pivot_mm=32.0,
    youngs_modulus_mpa=205000.0,
    poisson=0.29,
    rear_pin_mm=34.0,
    hole_diameter_mm=2.0,
)
LARGE = PlaneSpring(
    width_mm=3.0,
    thickness_mm=((-51, 3.6), (-5, 4.4), (0, 4.4), (9, 3.6), (34, 2.8), (50, 2.9)),
    pivot_mm=44.0,
    youngs_modulus_mpa=205000.0,
    poisson=0.29,
    rear_pin_mm=46.0,
    hole_diameter_mm=2.4,
)
SPRINGS = pytest.mark.parametrize("spring", [SMALL, LARGE], ids=["small", "large"])
REFINE = 2


def as_beam(spring: PlaneSpring) -> _core.Spring:
    pinned = bool(spring.hole_centres_mm)
    kind = _core.SupportKind.two_pins if pinned else _core.SupportKind.clamped
    return _core.Spring(
        thickness=stations(spring.thickness_mm),
        width_mm=spring.width_mm,
        support=_core.Support(kind=kind, rear_pin_mm=spring.rear_pin_mm),
        holes=[
            _core.Hole(center_mm=center, diameter_mm=spring.hole_diameter_mm)
            for center in spring.hole_centres_mm
        ],
        elastic=_core.Elastic(youngs_modulus_mpa=spring.youngs_modulus_mpa, poisson=spring.poisson),
    )


def beam_stiffness_n_per_mm(spring: PlaneSpring) -> float:
    flexibility = _core.make_flexibility(as_beam(spring))
    return 1.0 / _core.deflection_per_force(flexibility, spring.pivot_mm, spring.pivot_mm)


def beam_back_stress_mpa(spring: PlaneSpring, at_mm: float) -> float:
    """Back stress for 1 N at the pivot, tension positive."""
    load = _core.Load(x_mm=spring.pivot_mm, force_n=1.0)
    return _core.fibre_stress(as_beam(spring), [load], at_mm).back_mpa


@lru_cache
def solved(spring: PlaneSpring, refine: int) -> PlaneSolution:
    return solve(spring, refine)


def stations_away_mm(spring: PlaneSpring) -> list[float]:
    """Whole millimetres farther than a thickness from any kink, hole edge and the load."""
    kinks = [float(station) for station in spring.stations_mm]
    radius = 0.5 * spring.hole_diameter_mm
    edges = [c + side for c in spring.hole_centres_mm for side in (-radius, radius)]
    disturbances = np.array([*kinks, *edges, spring.pivot_mm])
    first = -spring.rear_pin_mm
    return [
        float(x)
        for x in np.arange(first, spring.pivot_mm)
        if np.min(abs(disturbances - x)) > float(spring.thickness_at(x))
    ]


def test_clamped_strip_bends_as_published() -> None:
    strip = PlaneSpring(
        width_mm=0.1,
        thickness_mm=((0.0, 0.2), (6.1, 0.2)),
        pivot_mm=6.0,
        youngs_modulus_mpa=1e7,
        poisson=0.3,
    )
    # The published figure has four digits; holding the root's edge fully costs 0.1 %.
    assert solved(strip, REFINE).deflection_at_pivot_mm == pytest.approx(0.1081, rel=0.002)


@SPRINGS
def test_clamped_spring_without_holes_is_as_stiff_as_the_beam(
    agree: Agree, spring: PlaneSpring
) -> None:
    clamped = without_holes_ahead_of_middle_pin(spring)
    beam = beam_stiffness_n_per_mm(clamped)
    # The clamp blocks the root's sideways strain, which a beam does not know: about 0.2 %.
    solid = solved(clamped, REFINE).stiffness_n_per_mm
    agree(
        f"clamped, no holes, pivot at {spring.pivot_mm:g} mm, stiffness [N/mm]",
        beam,
        solid,
        rel=0.005,
    )


@SPRINGS
def test_halving_the_elements_leaves_the_stiffness(spring: PlaneSpring) -> None:
    """By 6e-5 at this step, so what the next one would change is less still."""
    coarse, fine = solved(spring, REFINE // 2), solved(spring, REFINE)
    assert fine.element_count == 4 * coarse.element_count
    assert coarse.stiffness_n_per_mm == pytest.approx(fine.stiffness_n_per_mm, rel=2e-4)


@SPRINGS
def test_stiffness_between_two_pins_is_the_beams(agree: Agree, spring: PlaneSpring) -> None:
    beam = beam_stiffness_n_per_mm(spring)
    solid = solved(spring, REFINE).stiffness_n_per_mm
    agree(
        f"two pins in holes, pivot at {spring.pivot_mm:g} mm, stiffness [N/mm]",
        beam,
        solid,
        rel=0.01,
    )


@SPRINGS
def test_back_stress_away_from_kinks_holes_and_load_is_the_beams(
    agree: Agree, spring: PlaneSpring
) -> None:
    stations = stations_away_mm(spring)
    # Both sides of the middle pin must be looked at.
    assert min(stations) < 0 < max(stations)
    for x in stations:
        solid = solved(spring, REFINE).back_stress_at(x)
        case = f"pivot at {spring.pivot_mm:g} mm, back at {x:g} mm, stress of 1 N [MPa]"
        agree(case, beam_back_stress_mpa(spring, x), solid, rel=0.01)
