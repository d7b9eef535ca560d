"""Lever torque equals dU/dtheta on every demo design, over the whole travel.

The energy is differenced with a step that halves until two Richardson values agree, so no step is
chosen to suit. Left out are only angles whose stencil holds a change of the contact set (number of
contacts); how many is part of the claim.
"""

from pathlib import Path

import numpy as np
import pytest

import backspring as bs

EVERY = sorted((Path(__file__).parents[2] / "data" / "designs").glob("*.toml"))
DESIGNS = [path for path in EVERY if len(bs.load(path).blades) == 1]
FIRST_STEP_DEG = 0.02
LEAST_STEP_DEG = 1e-4


def differenced_torque(design: bs.Design, angle_deg: float, scale_nmm: float) -> float | None:
    """dU/dtheta [N mm]; nothing where the number of contacts changes within the least step."""
    step = FIRST_STEP_DEG
    last = np.inf
    while step >= LEAST_STEP_DEG:
        places = angle_deg + step * np.array([-2.0, -1.0, 1.0, 2.0])
        contacts = [bs.contact_at(design, place) for place in places]
        energy = [contact.energy_nmm for contact in contacts]
        slope = (8 * (energy[2] - energy[1]) - (energy[3] - energy[0])) / (12 * np.radians(step))
        steady = len({contact.count for contact in contacts}) == 1
        if steady and abs(slope - last) < 1e-7 * scale_nmm:
            return float(slope)
        last = slope if steady else np.inf
        step *= 0.5
    return None


@pytest.mark.parametrize("path", DESIGNS, ids=lambda path: path.stem)
def test_torque_is_the_slope_of_energy(path: Path) -> None:
    design = bs.load(path)
    start = bs.check(design).positions["closed"].blade_angle_deg
    angles = np.arange(start + 0.05, 179.9, 0.5)
    torque = np.array([bs.contact_at(design, angle).torque_nmm for angle in angles])
    peak = np.abs(torque).max()
    left_out = 0
    for angle, lever in zip(angles, torque, strict=True):
        slope = differenced_torque(design, angle, peak)
        if slope is None:
            left_out += 1
            continue
        assert lever == pytest.approx(slope, abs=1e-6 * peak), f"at {angle} deg"
    print(f"{path.stem}: {left_out} of {len(angles)} angles left out")
    assert left_out <= 2
