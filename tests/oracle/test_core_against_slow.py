"""The core against the slow reference: pressure allowed everywhere on the pad, energy differenced.

Four designs of every kind. The core puts one point force where shear spreads the pressure over
about half a thickness, and that is all the two may differ by.
"""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest

import backspring as bs
from oracle.designs import KINDS, Design, generated_designs
from oracle.slow_spring import SlowSpring, solve_rests, torque_nmm

DESIGNS = generated_designs(4 * len(KINDS), seed=20)
FORCE = 0.005
ANGLE_DEG = 0.03
READING_MM = 0.001


def as_design(slow: Design) -> bs.Design:
    """The same design for the core; its steel only matters for margins."""
    spring: dict[str, Any] = slow["spring"] | {"steel": "O1", "hardness": 45}
    if isinstance(spring["support"], dict):
        spring["support"] = spring["support"]["root_stiffness"]
    return bs.Design(name="generated", spring=spring, tang=slow["tang"], fit=slow["fit"])


@pytest.mark.parametrize(("label", "slow"), DESIGNS, ids=[label for label, _ in DESIGNS])
def test_core_agrees_with_the_slow_reference(label: str, slow: Design) -> None:
    design = as_design(slow)
    check = bs.check(design)
    rests = solve_rests(slow)
    assert set(check.positions) == set(rests)
    for name, rest in rests.items():
        position = check.positions[name]
        assert position.blade_angle_deg == pytest.approx(rest["blade_angle_deg"], abs=ANGLE_DEG)
        assert position.force_n == pytest.approx(rest["force_n"], rel=FORCE)
        assert position.peak_stress_mpa == pytest.approx(rest["peak_stress_mpa"], rel=FORCE)
        loaded, unloaded = rest["reading_loaded_mm"], rest["reading_unloaded_mm"]
        assert position.reading_loaded_mm == pytest.approx(loaded, abs=READING_MM)
        assert position.reading_unloaded_mm == pytest.approx(unloaded, abs=READING_MM)

    angles = np.linspace(4.0, 176.0, 15)
    torque = torque_nmm(slow, angles)
    core = [bs.contact_at(design, angle).torque_nmm for angle in angles]
    # Relative to the greatest torque: it passes through zero at crest and rest.
    assert core == pytest.approx(torque, abs=FORCE * np.abs(torque).max())


def test_the_kinds_number_fifty_designs_at_least() -> None:
    assert len(DESIGNS) >= 50
    assert len(KINDS) == len({label.rsplit(" ", 1)[0] for label, _ in DESIGNS})


@pytest.mark.parametrize("index", range(0, len(DESIGNS), len(KINDS) // 3))
def test_travel_agrees_with_the_slow_reference(index: int) -> None:
    label, slow = DESIGNS[index]
    spring = SlowSpring(slow)
    travel = bs.check(as_design(slow)).travel
    state = spring.state(travel.peak_stress_angle_deg)
    assert travel.peak_stress_mpa == pytest.approx(state["peak_stress_mpa"], rel=FORCE), label
    state = spring.state(travel.peak_force_angle_deg)
    assert travel.peak_force_n == pytest.approx(state["force_n"], rel=FORCE), label
