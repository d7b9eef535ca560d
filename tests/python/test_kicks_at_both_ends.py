"""Kicks at both ends of a spring that narrows: each blade's seat is a search within a search."""

from __future__ import annotations

import pytest

import backspring as bs


def test_every_blade_rests_where_nothing_turns_it() -> None:
    design = bs.Design(
        name="Reed",
        spring={
            "steel": "5160",
            "hardness": 44,
            "pad": [36.709, 51.263],
            "support": "two-pins",
            "rear_pin": 18.0,
            "thickness": [[-70.027, 4.865], [-18.0, 6.012], [0.0, 6.012], [17.944, 6.162],
                          [36.709, 3.144], [51.263, 3.144]],
            "width": [[-70.027, 1.501], [0.0, 1.501], [51.263, 0.85]],
            "pin_hole": 2.655,
            "pin_clearance": 0.005,
        },
        tang={
            "pivot": 46.258,
            "open": 5.704,
            "closed": 5.825,
            "front": 3.616,
            "round_end": 6.974,
            "corner_radius": [0.0, 0.947],
            "kick": {"distance": 5.432, "height": 1.078, "radius": 1.387},
            "pivot_clearance": 0.046,
        },
        fit={"preload": 0.248, "dial": 48.788},
        blade={"nail_nick": 45.996, "inertia": 0.076},
        friction={"spring": 0.236, "pivot": 0.201, "pivot_pin": 3.6, "bending": True},
        blades=[
            {
                "name": "pen",
                "end": "rear",
                "pad": [36.963, 52.027],
                "tang": {
                    "pivot": 42.82,
                    "open": 5.151,
                    "closed": 5.151,
                    "front": 7.726,
                    "half_stop": 5.151,
                    "corner_radius": [0.0, 0.0],
                    "kick": {"distance": 4.865, "height": 1.05, "radius": 1.039},
                },
                "fit": {"preload": 0.197, "dial": 51.267},
                "blade": {"nail_nick": 52.139, "inertia": 0.029},
            }
        ],
    )  # fmt: skip
    found = bs.check(design)
    assert isinstance(found, bs.BladesCheck) and len(found.blades) == 2
    for check in found.blades.values():
        # Seated, a blade turns neither way by itself; open, its stop may hold it.
        most = max(stroke.peak_torque_nmm for stroke in check.strokes)
        seated = [rest for name, rest in check.positions.items() if name != "open"]
        assert [rest.torque_nmm for rest in seated] == pytest.approx(
            [0.0] * len(seated), abs=1e-6 * most
        )
        assert check.positions["open"].torque_nmm <= 1e-6 * most
