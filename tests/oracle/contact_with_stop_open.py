"""The open blade of contact_with_stop_solid.py at rest on its stop: force and turn by iteration.

What is missed is nearly a straight function of both, so Broyden's method needs two solutions or
three.
"""

from __future__ import annotations

from dataclasses import replace

import numpy as np
from scipy.optimize import broyden1

from .contact_with_stop_mesh import SolidJoint
from .contact_with_stop_solid import Solved, Stop, solve
from .plane_stress_mesh import Floats

N_PER_RAD = 1000.0  # a thousandth of a radian is sought as a newton is
NEAR_N = 0.01
MOST_SOLUTIONS = 10


def open_on_stop(
    joint: SolidJoint, stop: Stop, solved: Solved, *, square: bool
) -> tuple[Stop, Solved]:
    """Open with its stop bearing: standing at 180 deg, or where the end as fitted met the face.

    Sought from what a stop somewhat off leaves.
    """
    lever, ahead = joint.seat_mm + stop.height_mm, joint.pad_mm[1] - joint.spring.pivot_mm
    count = 1 if square else 2
    found = stop, solved

    def missed() -> Floats:
        """Of force and of turn; alone, a newton more turns back and a turn clears the end."""
        at, seen = found
        deep = -at.square @ seen.bears_mm - ahead
        return np.array([-seen.left_nmm, deep * N_PER_RAD])[:count] / lever

    def missed_by(sought: Floats) -> Floats:
        nonlocal found
        force, turn = *sought, *([0.0] * (2 - count))
        at = replace(stop, force_n=float(force), turn_rad=float(turn) / N_PER_RAD)
        found = at, solve(joint, at)
        return missed()

    start = np.array([stop.force_n, stop.turn_rad * N_PER_RAD])[:count] - missed()
    options = {"f_tol": NEAR_N, "line_search": None, "maxiter": MOST_SOLUTIONS}
    broyden1(missed_by, start, alpha=-1.0, **options)
    return found
