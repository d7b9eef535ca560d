"""The worked example that fixes the conventions, and the figures of its first slow solution.

That solution allowed pressure on an even fine grid, found rests by energy minimum and torque by
differencing the energy. Its stated error: forces and torques 0.1 %, angles 0.01 deg, readings
0.0003 mm, worst-of-travel figures 0.1 %.
"""

from __future__ import annotations

from typing import Any

DESIGN: dict[str, Any] = {
    "spring": {
        "youngs_modulus": 205000.0,
        "poisson": 0.29,
        "width": 2.3,
        "thickness": [[-38, 3.2], [-4, 3.8], [0, 3.8], [7, 3.1], [25, 2.4], [36.5, 2.5]],
        "support": "two-pins",
        "rear_pin": 34.0,
        "pin_hole": 2.0,
        "pad": [27.0, 36.5],
    },
    "tang": {
        "pivot": 32.0,
        "open": 4.5,
        "half_stop": 4.62,
        "closed": 4.60,
        "corner_radius": 0.7,
        "front": 5.0,
    },
    "fit": {"preload": 0.9, "dial": 33.5},
}

STIFFNESS_N_PER_MM = 64.928
ROOT_ROTATION_RAD_PER_NMM = 5.78286e-6

REST_DEG = {"open": 180.0, "half_stop": 91.022, "closed": 0.970}
FORCE_N = {"open": 74.42, "half_stop": 66.52, "closed": 65.20}
RESULTANT_FROM_PIVOT_MM = {"open": -3.93, "half_stop": -0.08, "closed": -0.08}
PEAK_STRESS_MPA = {"open": 442.2, "half_stop": 450.0, "closed": 441.1}
PEAK_STRESS_STATION_MM = {"open": 0.0, "half_stop": 7.0, "closed": 7.0}
OPEN_ENERGY_NMM = 29.368
READING_LOADED_MM = {"half_stop": 0.0869, "closed": 0.0655}
READING_UNLOADED_MM = {"half_stop": 0.1257, "closed": 0.1047}

TORQUE_NMM = {
    10.0: 285.5,
    20.0: 307.4,
    45.0: 87.6,
    60.0: -172.8,
    75.0: -377.0,
    105.0: 292.6,
    120.0: 246.1,
    135.0: 66.1,
    150.0: -186.2,
    165.0: -367.4,
}

WORST_STRESS_MPA = 1178.7
WORST_STRESS_ANGLE_DEG = 52.0
LARGEST_FORCE_N = 179.36
LARGEST_FORCE_ANGLE_DEG = 57.0
