"""The nonlinear beam against closed forms, the slow linear solution and the table of effects."""

from __future__ import annotations

import math

import pytest

from oracle.nonlinear_beam import Force, Place, Spring, Steps
from oracle.nonlinear_beam_effects import (
    couple_effect,
    drawn,
    other_effect,
    stick_effect,
    stop_effect,
)
from oracle.nonlinear_beam_joint import Extras, NonlinearJoint, Stop
from oracle.worked_example import DESIGN, FORCE_N, READING_LOADED_MM, REST_DEG

# Each entry was stated to its last digit, so half of that, and a tenth of the entry.
TENTH = 0.1


def close(value: float, stated: float, digit: float) -> bool:
    return abs(value - stated) <= TENTH * abs(stated) + 0.5 * digit


def test_a_strip_under_an_end_couple_rolls_into_a_circle() -> None:
    """Pure bending: turn = M L/(E I), the end on a circle of radius E I/M."""
    strip = {
        "spring": {
            "youngs_modulus": 2e5, "poisson": 0.3, "width": 2.0, "thickness": 1.0,
            "rear_pin": 0.0, "pin_hole": 0.0, "pad": [0.0, 100.0],
        }
    }  # fmt: skip
    spring = Spring(strip)
    moment = 500.0
    radius = 2e5 * 2.0 / 12.0 / moment
    end = Steps(spring, 0.0, 100.0, 2.0).walk(
        Place(0.0, 0.0, 0.0, 0.0, moment), Force(0.0, 0.0), []
    )
    assert end.turn == pytest.approx(100.0 / radius, rel=1e-12)
    # Runge-Kutta steps of 0.03 rad.
    assert end.x == pytest.approx(radius * math.sin(end.turn), rel=1e-8)
    assert end.y == pytest.approx(radius * (1.0 - math.cos(end.turn)), rel=1e-8)


def test_an_end_loaded_cantilever_bends_as_its_elastica() -> None:
    """P L^2/(E I) = 1: tip at 0.3017 L across and 0.0564 L back.

    Source: K. E. Bisshopp and D. C. Drucker, Large deflection of cantilever beams, Quarterly of
    Applied Mathematics 3 (1945); figures from memory of the tables after it.
    """
    length = 200.0
    spring = Spring(
        {
            "spring": {
                "youngs_modulus": 2e5, "poisson": 0.3, "width": 2.0, "thickness": 1.0,
                "rear_pin": 0.0, "pin_hole": 0.0, "pad": [0.0, length],
            }
        }
    )  # fmt: skip
    push = 2e5 * 2.0 / 12.0 / length**2
    steps = Steps(spring, 0.0, length, 5.0)
    low, high = 0.0, push * length
    for _ in range(50):  # the root's moment that leaves none at the tip
        root = 0.5 * (low + high)
        end = steps.walk(Place(0.0, 0.0, 0.0, 0.0, root), Force(0.0, push), [])
        low, high = (root, high) if end.moment < 0.0 else (low, root)
    assert end.y / length == pytest.approx(0.3017, abs=1e-4)
    assert 1.0 - end.x / length == pytest.approx(0.0564, abs=1e-4)


def test_it_agrees_with_the_linear_solution_where_slopes_are_small() -> None:
    joint = NonlinearJoint(DESIGN)
    rests = {"open": joint.open(), **joint.closed_and_half_stop()}
    for name, rest in rests.items():
        assert rest.push.y == pytest.approx(FORCE_N[name], rel=0.002)
        assert rest.blade_angle_deg == pytest.approx(REST_DEG[name], abs=0.01)
    for name, reading in joint.readings_mm().items():
        assert reading == pytest.approx(READING_LOADED_MM[name], abs=0.0003)


@pytest.mark.parametrize(
    ("height_mm", "force", "thou"), [(2.5, -0.028, -0.22), (1.25, 0.007, -0.05), (0.0, 0.066, 0.25)]
)
def test_the_stop_changes_open_as_stated(height_mm: float, force: float, thou: float) -> None:
    share, reading = stop_effect(height_mm)
    assert close(share, force, 0.001)
    assert close(reading, thou, 0.01)


def test_friction_at_the_stop_widens_the_band_as_stated() -> None:
    assert close(stop_effect(2.5, 0.12)[1], -0.31, 0.01)
    assert close(stop_effect(0.0, -0.12)[1], 0.69, 0.01)


def test_a_stop_fitted_unloaded_lets_the_blade_turn_as_the_end_leans() -> None:
    """The end leans outward, so its back recedes from the stop and its belly comes against it."""
    angles = [
        NonlinearJoint(DESIGN, Extras(stop=Stop(height, 0.0, 4.5))).open().blade_angle_deg
        for height in (2.5, 1.25, 0.0)
    ]
    assert angles == pytest.approx([180.18, 180.07, 179.94], abs=0.01)


@pytest.mark.parametrize(
    ("extras", "pull", "thou"),
    [
        (Extras(seat_mm_per_n=(1e-4, 0.0, 0.0)), -0.024, 0.13),
        (Extras(seat_mm_per_n=(3e-4, 0.0, 0.0)), -0.068, 0.36),
        (Extras(clearance_mm=(0.02, 0.02, 0.0)), -0.015, 0.11),
        (Extras(clearance_mm=(0.05, 0.05, 0.0)), -0.038, 0.28),
        (Extras(clearance_mm=(0.0, 0.0, 0.03)), -0.008, 0.12),
    ],
)
def test_seats_and_clearances_cost_as_stated(extras: Extras, pull: float, thou: float) -> None:
    share, reading = other_effect(extras)
    assert close(share, pull, 0.001)
    assert close(reading, thou, 0.01)


def test_frictions_couple_adds_to_opening_and_takes_from_closing() -> None:
    assert 0.0105 <= couple_effect(opening=True) <= 0.0145
    assert -0.0145 <= couple_effect(opening=False) <= -0.0105


@pytest.mark.parametrize("position", ["half_stop", "closed"])
def test_friction_at_the_spring_keeps_readings_as_stated(position: str) -> None:
    for way in (1.0, -1.0):
        assert close(stick_effect(position, way, at_pivot=False), -way * 0.04, 0.01)


def test_the_table_is_about_a_joint_that_stands_as_drawn() -> None:
    force, torque, _ = drawn()
    assert force == pytest.approx(74.46, abs=0.02)
    assert torque == pytest.approx(410.7, abs=0.2)
