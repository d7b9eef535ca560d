"""What comes to bear beside another blade comes with no force: torque adds up to the energy there.

The joints are drawn ones in which a touch once came at once: two kicks nearly level, one of them of
a blade free to seat, and a corner beside a flat.
"""

from __future__ import annotations

import math
from itertools import pairwise
from typing import Any

import pytest

from backspring import _core
from law_designs import made

KICK = {"distance": 5.704, "height": 0.869, "radius": 0.419}
PAD = [32.057, 51.51]
TWO_KICKS: dict[str, Any] = {
    "spring": {
        "steel": "O1", "youngs_modulus": 201000.0, "poisson": 0.352, "yield": 950.0,
        "width": [[-37.823, 1.5], [0.0, 1.5], [51.51, 0.75]],
        "thickness": [[-37.823, 1.934], [0.0, 4.999], [11.021, 4.999], [11.021, 2.499],
                      [51.51, 2.694]],
        "support": "middle-pin", "pad": PAD,
    },
    "tang": {"pivot": 41.835, "open": 5.518, "half_stop": 5.373, "closed": 5.848,
             "corner_radius": [0.0, 0.93], "front": 3.976, "kick": KICK},
    "fit": {"preload": 0.563},
    "blade": {"nail_nick": 25.811, "inertia": 0.014},
    "friction": {"spring": 0.132, "pivot": 0.238, "pivot_pin": 2.657},
    "blades": [
        {"name": "sheep", "end": "front", "pad": PAD,
         "tang": {"pivot": 41.835, "open": 5.52, "closed": 5.862, "corner_radius": 0.0,
                  "front": 3.976, "kick": KICK},
         "fit": {"preload": 0.565}, "blade": {"nail_nick": 25.811, "inertia": 0.014}},
        {"name": "pen", "end": "rear", "pad": [27.72, 37.823],
         "tang": {"pivot": 32.219, "open": 3.385, "half_stop": 3.378, "closed": 3.378,
                  "corner_radius": [0.0, 0.93], "front": 2.339},
         "fit": {"preload": 0.604, "dial": 35.674},
         "blade": {"nail_nick": 41.884, "inertia": 0.096}},
    ],
}  # fmt: skip
SIDE_KICK = {"distance": 1.553, "height": 0.397, "radius": 0.449}
CORNER_BESIDE_FLAT: dict[str, Any] = {
    "spring": {
        "steel": "O1", "youngs_modulus": 209000.0, "poisson": 0.311, "yield": 1290.0, "width": 4.0,
        "thickness": [[0.0, 2.712], [3.455, 2.712], [18.453, 1.616], [24.401, 1.616]],
        "support": "clamped", "pad": [18.453, 24.401],
    },
    "tang": {"pivot": 21.319, "open": 2.178, "half_stop": 2.245, "closed": 2.245,
             "corner_radius": 0.313, "front": 1.669, "kick": SIDE_KICK},
    "fit": {"preload": 0.289},
    "blade": {"nail_nick": 22.416, "inertia": 0.092},
    "friction": {"spring": 0.175, "pivot": 0.208, "pivot_pin": 3.098},
    "blades": [
        {"name": "sheep", "end": "front", "pad": [18.453, 24.401],
         "tang": {"pivot": 21.319, "open": 2.156, "half_stop": 2.273, "closed": 2.273,
                  "corner_radius": 0.065, "front": 1.669, "kick": SIDE_KICK},
         "fit": {"preload": 0.267}, "blade": {"nail_nick": 22.416, "inertia": 0.092}},
    ],
}  # fmt: skip


@pytest.mark.parametrize(
    ("content", "case", "middle_deg", "span_deg"),
    [
        (TWO_KICKS, 0, 7.0484, 0.02),
        (TWO_KICKS, 2, 7.0484, 0.02),
        (CORNER_BESIDE_FLAT, 1, 91.98, 0.1),
    ],
)
def test_torque_adds_up_to_energy_where_a_touch_comes_beside(
    content: dict[str, Any], case: int, middle_deg: float, span_deg: float
) -> None:
    joint = _core.cases(made(content).core)[case]
    steps = 50
    angles = [middle_deg + span_deg * (i / steps - 0.5) for i in range(steps + 1)]
    contacts = [_core.contact_at(joint, angle) for angle in angles]
    step = math.radians(span_deg / steps)
    torques = [contact.torque_nmm for contact in contacts]
    for before, after in pairwise(contacts):
        added = 0.5 * step * (before.torque_nmm + after.torque_nmm)
        gained = after.energy_nmm - before.energy_nmm
        # The trapezium lacks up to this where torque bends within the step.
        bend = step * abs(after.torque_nmm - before.torque_nmm)
        assert gained == pytest.approx(added, abs=0.5 * bend + 1e-9 * before.energy_nmm)
    rise = max(abs(after - before) for before, after in pairwise(torques))
    assert rise < 0.2 * max(map(abs, torques))
