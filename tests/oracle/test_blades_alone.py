"""The dense solution for any number of blades, held to itself and to the solution for one blade."""

from __future__ import annotations

from functools import cache
from typing import Any

import numpy as np
import pytest

from oracle.blades import Joint, read
from oracle.blades_beam import ELEMENT_MM, ElementBeam
from oracle.blades_contact import NODE_MM, BladeContacts
from oracle.blades_rest import at_positions, reading_mm
from oracle.designs import KINDS as KINDS_OF_ONE
from oracle.designs import generated_designs
from oracle.drawn_joints import KINDS, drawn_joints
from oracle.slow_spring import SlowSpring, solve_rests


@cache
def contacts(kind: str, number: int) -> BladeContacts:
    return BladeContacts(joint(kind, number))


def joint(kind: str, number: int) -> Joint:
    return read(next(drawn_joints(kind, 1, number))[1])


@pytest.mark.parametrize("number", [0, 1])
@pytest.mark.parametrize("kind", KINDS)
def test_torque_of_each_blade_is_the_slope_of_the_energy(kind: str, number: int) -> None:
    dense = contacts(kind, number)
    rng = np.random.default_rng([number, len(kind)])
    angles = dict(zip(dense.joint.names, rng.uniform(5.0, 175.0, 3), strict=False))
    here, step = dense.pressed(angles), 0.02
    for name in dense.joint.names:
        ahead, behind = (
            dense.pressed(angles | {name: angles[name] + by}, here).energy_nmm
            for by in (step, -step)
        )
        slope = (ahead - behind) / np.radians(2.0 * step)
        assert here.torque_nmm(name) == pytest.approx(slope, abs=2e-3 * max(here.force_n.sum(), 1))


@pytest.mark.parametrize("kind", KINDS)
def test_halving_all_nodes_changes_next_to_nothing(kind: str) -> None:
    usual = contacts(kind, 3)
    fine = BladeContacts(usual.joint, 0.5 * NODE_MM, 0.5 * ELEMENT_MM)
    angles = dict(zip(usual.joint.names, (33.0, 1.0, 120.0), strict=False))
    one, two = usual.pressed(angles), fine.pressed(angles)
    for name in usual.joint.names:
        assert one.force(name) == pytest.approx(two.force(name), rel=1e-4, abs=1e-3)
        moved = [each.movement_mm(at, name) for each, at in ((usual, one), (fine, two))]
        assert moved[0] == pytest.approx(moved[1], abs=2e-5)


@pytest.mark.parametrize("kind", KINDS)
def test_at_rest_no_blade_gains_by_turning(kind: str) -> None:
    dense = contacts(kind, 5)
    rest = at_positions(dense, dict.fromkeys(dense.joint.names, "closed"))
    for name in dense.joint.names:
        for by in (-0.02, 0.02):
            turned = rest.angles_deg | {name: rest.angles_deg[name] + by}
            assert dense.pressed(turned, rest).energy_nmm > rest.energy_nmm - 1e-7


@pytest.mark.parametrize("kind", KINDS)
def test_twice_the_size_takes_four_times_the_force(kind: str) -> None:
    """At one Young's modulus all lengths grow alike, so angles stay, energy grows eightfold."""

    def twice(value: Any, key: str = "") -> Any:
        if isinstance(value, dict):
            return {k: twice(v, k) for k, v in value.items()}
        if isinstance(value, list):
            return [twice(v) for v in value]
        whole = isinstance(value, str) or key in ("youngs_modulus", "poisson", "hardness")
        return value if whole else 2.0 * value

    drawn = next(drawn_joints(kind, 1, 7))[1]
    small, large = BladeContacts(read(drawn)), BladeContacts(read(twice(drawn)))
    where = dict.fromkeys(small.joint.names, "closed")
    one, two = at_positions(small, where), at_positions(large, where)
    assert two.energy_nmm == pytest.approx(8.0 * one.energy_nmm, rel=1e-4)
    for name in small.joint.names:
        moved = small.movement_mm(one, name), large.movement_mm(two, name)
        assert moved[1] == pytest.approx(2.0 * moved[0], abs=4e-5)


@pytest.mark.parametrize("kind", ["kick", "round end", "eccentric holes", "pad ends behind corner"])
def test_one_blade_as_the_slow_reference_has_it(kind: str) -> None:
    designs = dict(generated_designs(2 * len(KINDS_OF_ONE), seed=5))
    design = designs[f"{kind} 2"]
    dense, slow = BladeContacts(read(design)), SlowSpring(design)
    for angle in (180.0, 121.0, 55.0, 3.0):
        pressed, state = dense.pressed({"main": angle}), slow.state(angle)
        assert pressed.force("main") == pytest.approx(state["force_n"], rel=2e-4)
        moved = dense.movement_mm(pressed, "main")
        assert moved == pytest.approx(state["dial_deflection_mm"], abs=5e-5)
    for name, rest in solve_rests(design).items():
        pressed = at_positions(dense, {"main": name})
        assert pressed.angles_deg["main"] == pytest.approx(rest["blade_angle_deg"], abs=1e-3)
        reading = reading_mm(dense, pressed, "main")
        assert reading == pytest.approx(rest["reading_loaded_mm"], abs=5e-5)


def test_each_place_moves_the_other_alike() -> None:
    """Maxwell's reciprocity, on tapers and holes."""
    beam = ElementBeam(joint("three", 1))
    x = np.concatenate([np.linspace(25.0, 38.0, 7), -np.linspace(40.0, 52.0, 7)])
    there = beam.flexibility(x, x)
    assert there == pytest.approx(there.T, rel=1e-7)
