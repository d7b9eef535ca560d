"""A small change is a small change: in angle and in every dimension, whatever touch comes or goes.

Energy is the greatest that pushing forces can give, so it is continuous everywhere, also where the
tang lets go of one place and takes another. Torque and force jump only there, and there the two
places store alike: so a jump is a touch's own if the touch has moved and energy has not. Turning a
blade, the place that stores more takes over, so that torque jumps up and never down.

Where it is least smooth is sought: the sharpest bend of a row of points, again and again.
"""

from __future__ import annotations

import math
from collections.abc import Callable

from hypothesis import assume, given
from hypothesis import strategies as st

import backspring as bs
from backspring import _core
from law_designs import ENDS, ONE, designs
from law_figures import STANDS, Stand, stand, stand_of, turned

ROW, NARROWINGS = 8, 10
# A sensitivity, as a power of the number that changes: thickness has 3.
STEEPEST = 30.0
KEYS = [
    each.key
    for each in _core.dimensions()
    if each.key.split(".")[0] in ("spring", "tang", "fit", "frame")
]


class Outside(Exception):
    """A value that a joint cannot have."""


def sharpest(value: Callable[[float], float], start: float, end: float) -> tuple[float, float]:
    """Narrow an interval down on its sharpest bend."""
    for _ in range(NARROWINGS):
        step = (end - start) / ROW
        row = [value(start + i * step) for i in range(ROW + 1)]
        bends = [abs(row[i + 1] - 2 * row[i] + row[i - 1]) for i in range(1, ROW)]
        place = 1 + max(range(ROW - 1), key=bends.__getitem__)
        start, end = start + (place - 1) * step, start + (place + 1) * step
    return start, end


def has_moved(one: Stand, other: Stand, blade: int) -> bool:
    """Whether a blade's touches are other ones, not the same a little on."""
    here, there = one.stations[blade], other.stations[blade]
    if len(here) != len(there):
        return True
    return any(abs(a - b) > 1e-4 for a, b in zip(here, there, strict=True))


@given(designs(kinds=(ONE, ENDS)), STANDS, st.integers(0, 1))
def test_energy_and_torque_in_angle(design: bs.Design, angles: list[float], which: int) -> None:
    blade = which % len(design.blades)

    def at(by: float) -> Stand:
        return stand(design, turned(angles, blade, by))

    for value in (lambda by: at(by).energy, lambda by: at(by).torques[blade]):
        start, end = sharpest(value, -5.0, 5.0)
        one, other = at(start), at(end)
        arc = math.radians(end - start)
        steepest = max(map(abs, one.torques + other.torques)) + 1e-9 * one.scale
        rounding = 1e-12 * max(one.energy, other.energy)
        assert abs(other.energy - one.energy) <= 1.5 * steepest * arc + rounding
        jump = other.torques[blade] - one.torques[blade]
        # A corner's arc turns the torque by its force times its radius, twice over.
        reach = design.core.blades[blade].tang.pivot_mm
        smooth = STEEPEST * (one.scale + other.scale) * reach * arc
        if abs(jump) > smooth + 1e-7 * one.scale:
            assert jump > 0.0 and has_moved(one, other, blade), (start, one, other)


@given(designs(kinds=(ONE, ENDS)), STANDS, st.sampled_from(KEYS), st.integers(-40, 40))
def test_energy_and_force_in_every_dimension(
    design: bs.Design, angles: list[float], key: str, thousandths: int
) -> None:
    core = design.core
    now = _core.dimension_value(core, key) if _core.has_dimension(core, key) else None
    assume(now)
    middle = now * (1.0 + thousandths / 1000)

    def at(share: float) -> Stand:
        changed = _core.with_dimension(core, key, middle * (1.0 + share))
        if _core.faults(changed):
            raise Outside
        return stand_of(changed, angles)

    for value in (lambda share: at(share).energy, lambda share: sum(at(share).forces)):
        try:
            start, end = sharpest(value, -0.01, 0.01)
            one, other = at(start), at(end)
        except Outside:
            return
        change = STEEPEST * (end - start)
        length = core.tang.pivot_mm
        force = max(sum(one.forces), sum(other.forces))
        energy = max(one.energy, other.energy)
        assert abs(other.energy - one.energy) <= change * (energy + force * length) + 1e-12 * energy
