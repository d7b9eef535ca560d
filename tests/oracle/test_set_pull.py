"""The pull that a set leaves, held to the slow solution with its face moved by that set.

How far the face moves is held to fibres and segments in test_plastic_set.py. What that leaves of
the pull is found here without the package: energy of a contact on a grid at two angles, the torque
between them, and its greatest along the stroke.
"""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from scipy.optimize import minimize_scalar

import backspring as bs
from backspring import _core
from oracle.slow_contact import Fineness
from oracle.slow_spring import SlowSpring, contacts, friction_torque_nmm

HERON = bs.load(Path(__file__).resolve().parents[2] / "data" / "designs" / "heron.toml")
FINE = Fineness(cell_mm=0.002, station_mm=0.2, bulge_mm=2e-9)
FIRST_STROKE_DEG = (12.0, 45.0)


def peak_nmm(spring: SlowSpring, friction: dict[str, Any]) -> float:
    """Greatest torque that opens the blade out of closed, friction counted."""
    pin = friction["pivot_pin"]

    def opening(angle_deg: float) -> float:
        rows = contacts(spring.pressing(angle_deg), spring.pivot_mm)
        rubs = friction_torque_nmm(rows, friction["spring"], friction["pivot"], pin)
        return spring.torque_nmm(angle_deg) + rubs

    found = minimize_scalar(
        lambda angle: -opening(angle),
        bounds=FIRST_STROKE_DEG,
        method="bounded",
        options={"xatol": 0.05},
    )
    return -float(found.fun)


@pytest.mark.parametrize("yield_mpa", [1000.0, 850.0])
def test_what_a_set_leaves_of_the_pull(yield_mpa: float) -> None:
    yields = HERON.replace(**{"spring.yield": yield_mpa})
    left = _core.permanent_set(yields.core)
    assert left.yielded
    content, elastic = yields.to_dict(), yields.core.spring.elastic
    content["spring"] |= {"youngs_modulus": elastic.youngs_modulus_mpa, "poisson": elastic.poisson}
    new = SlowSpring(content, FINE)
    bent = SlowSpring(content, FINE)
    lost = (left.drop_pad_end_mm - left.drop_pad_start_mm) / (new.face.stop_mm - new.face.start_mm)
    bent.face = replace(
        new.face,
        height_mm=new.face.height_mm + left.drop_pad_start_mm - lost * new.face.start_mm,
        slope=new.face.slope + lost,
    )
    share = peak_nmm(bent, content["friction"]) / peak_nmm(new, content["friction"])
    (said,) = (each for each in bs.check(yields).verdict if each.name == "set")
    told = {each.name: each.value for each in said.parameters}["pull_left"]
    # They meet at 5e-7; what the grid leaves is in both peaks alike.
    assert told == pytest.approx(share, abs=1e-5)
    assert 0.8 < share < 0.995
