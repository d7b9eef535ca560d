"""SciPy's solve_bvp: the spring as a boundary-value problem of a beam that bends and shears.

Deflection, turn, moment and cross force of span and overhang are all unknown; what the supports and
the force at the pivot make of them stands in the boundary conditions, and no unit load is thought
of. Shear counts with 5/6 of the section. Collocation on a mesh that has every kink among its nodes;
SciPy holds the residual to 1e-9, and so both agree.
"""

from __future__ import annotations

import numpy as np
import pytest
from scipy.integrate import solve_bvp

from agreement import Agree
from backspring import _core as core
from stations import stations

WIDTH_MM, MODULUS_MPA, POISSON, FORCE_N = 2.3, 205000.0, 0.29, 50.0
SHEAR_MPA = 5.0 / 6.0 * MODULUS_MPA / (2.0 * (1.0 + POISSON))
# Profile, pivot, rear pin; a spring without one is clamped at its middle pin.
SPRINGS = {
    "tapered, two pins": (
        [(-38.0, 3.2), (-4.0, 3.8), (0.0, 3.8), (7.0, 3.1), (25.0, 2.4), (36.5, 2.5)], 32.0, 34.0,
    ),
    "long, two pins": (
        [(-51.0, 3.6), (-5.0, 4.4), (0.0, 4.4), (9.0, 3.6), (34.0, 2.8), (50.0, 2.9)], 44.0, 46.0,
    ),
    "tapered, clamped": ([(0.0, 3.8), (7.0, 3.1), (25.0, 2.4), (36.5, 2.5)], 32.0, 0.0),
}  # fmt: skip
DEFLECTION, TURN, MOMENT, CROSS = range(4)


def by_boundary_value(
    profile: list[tuple[float, float]], pivot: float, rear: float
) -> tuple[float, float, float]:
    """Deflection and turn at the pivot, turn at the middle pin; span and overhang side by side.

    Both run over 0 to 1; a clamped spring's span is as long as its overhang and bears nothing.
    """
    span, (x, depth) = rear or pivot, np.array(profile).T

    def grow(share: np.ndarray, unknown: np.ndarray) -> np.ndarray:
        rows = []
        for start, length, part in ((-span, span, unknown[:4]), (0.0, pivot, unknown[4:])):
            t = np.interp(start + share * length, x, depth)
            bend, shear = MODULUS_MPA * WIDTH_MM * t**3 / 12.0, SHEAR_MPA * WIDTH_MM * t
            slope = part[TURN] + part[CROSS] / shear
            rows += [slope, part[MOMENT] / bend, -part[CROSS], np.zeros_like(share)]
            rows[-4:] = [length * each for each in rows[-4:]]
        return np.array(rows)

    def ends(at_0: np.ndarray, at_1: np.ndarray) -> np.ndarray:
        behind, ahead = (at_0[:4], at_1[:4]), (at_0[4:], at_1[4:])
        free = [ahead[1][MOMENT], ahead[1][CROSS] - FORCE_N]
        pinned = [ahead[0][DEFLECTION], behind[1][DEFLECTION], behind[0][DEFLECTION]]
        if not rear:
            return np.array([*free, *pinned, ahead[0][TURN], behind[0][TURN], behind[0][MOMENT]])
        joined = [ahead[0][each] - behind[1][each] for each in (TURN, MOMENT)]
        return np.array([*free, *pinned, behind[0][MOMENT], *joined])

    nodes = np.linspace(0.0, 1.0, 401)
    kinks = [[(each + span) / span for each in x], [each / pivot for each in x]]
    inside = [each for part in kinks for each in part if 0.0 < each < 1.0]
    mesh = np.unique(np.concatenate((nodes, inside)))
    found = solve_bvp(grow, ends, mesh, np.zeros((8, mesh.size)), tol=1e-9, max_nodes=100_000)
    assert found.success
    return found.y[4 + DEFLECTION, -1], found.y[4 + TURN, -1], found.y[4 + TURN, 0]


@pytest.mark.parametrize("name", SPRINGS)
def test_a_spring_bends_as_its_boundary_value_problem(agree: Agree, name: str) -> None:
    profile, pivot, rear = SPRINGS[name]
    two_pins, clamped = core.SupportKind.two_pins, core.SupportKind.clamped
    spring = core.Spring(
        thickness=stations(profile),
        width_mm=WIDTH_MM,
        support=core.Support(kind=two_pins if rear else clamped, rear_pin_mm=rear),
        elastic=core.Elastic(youngs_modulus_mpa=MODULUS_MPA, poisson=POISSON),
    )
    give = core.make_flexibility(spring)
    deflection, turn, root = by_boundary_value(profile, pivot, rear)
    ours = FORCE_N * core.deflection_per_force(give, pivot, pivot)
    agree(f"{name}, deflection at the pivot [mm]", ours, deflection, rel=1e-9)
    # Beside the force, where its shear has not begun to lean the section.
    moments = core.bending_integrals(give, pivot)
    bent = FORCE_N * (pivot * moments.a0 - moments.a1)
    if rear:
        by_root = FORCE_N * pivot * give.root_rotation_rad_per_nmm
        agree(f"{name}, turn at the middle pin [rad]", by_root, root, rel=1e-9)
        bent += by_root
    agree(f"{name}, turn of the section at the pivot [rad]", bent, turn, rel=1e-9)
