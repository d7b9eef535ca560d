"""The work of the lever is the energy of the spring.

Torque is the slope of energy, so that its integral over any arc is the energy gained, whatever is
met on the way: kinks and jumps of torque are in the integral as in the energy.
"""

from __future__ import annotations

import warnings
from collections.abc import Callable

import numpy as np
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy.integrate import IntegrationWarning, quad

import backspring as bs
from law_designs import BENDING, SEVERAL, STOP, designs
from law_figures import ANGLE, STANDS, Stand, stand, turned

WHICH = st.integers(0, 3)
# An adaptive rule halves about every kink of the torque; with these the rest is below 1e-7.
HALVINGS = 40


def work(torque: Callable[[float], float], start: float, end: float) -> tuple[float, float]:
    """Integral of a torque over an arc in degrees [N mm], and what the rule says it may miss."""
    with warnings.catch_warnings():
        # Where it does not settle its own estimate says by how much.
        warnings.simplefilter("ignore", IntegrationWarning)
        found, missed = quad(torque, start, end, epsabs=1e-9, epsrel=1e-9, limit=HALVINGS)
    return float(np.radians(found)), float(np.radians(missed))


class Turning:
    """A blade that turns from a stand of all, and who bears meanwhile."""

    def __init__(self, design: bs.Design, angles: list[float], blade: int) -> None:
        self.design, self.angles, self.blade = design, angles, blade
        names = [each.end for each in design.core.blades]
        self.pairs = [i for i, end in enumerate(names) if names.count(end) > 1]
        self.bore: set[tuple[int, ...]] = set()

    def __call__(self, by: float) -> Stand:
        found = stand(self.design, turned(self.angles, self.blade, by))
        self.bore.add(tuple(len(found.stations[i]) for i in self.pairs))
        return found

    def torque(self, by: float) -> float:
        return self(by).torques[self.blade]

    @property
    def steady(self) -> bool:
        return len(self.bore) <= 1


@given(designs(without=(STOP, BENDING)), STANDS, WHICH, st.integers(1, 300))
def test_over_any_arc(design: bs.Design, angles: list[float], which: int, tenths: int) -> None:
    blade = which % len(design.blades)
    angles[blade] = min(angles[blade], 150.0)
    arc = Turning(design, angles, blade)
    first, last = arc(0.0), arc(tenths / 10)
    done, missed = work(arc.torque, 0.0, tenths / 10)
    assume(arc.steady)
    gained = last.energy - first.energy
    scale = max(1.0, first.energy, last.energy)
    assert abs(done - gained) <= 1e-7 * scale + missed, f"{done} is not {gained}"
    assert missed <= 1e-4 * scale


@given(designs(), STANDS, WHICH)
def test_at_any_angle(design: bs.Design, angles: list[float], which: int) -> None:
    """Simpson's rule over 0.02 deg misses 1e-12; over a kink the mean is between the ends."""
    blade = which % len(design.blades)
    arc, step = Turning(design, angles, blade), 0.01
    while True:
        arc.bore.clear()
        rear, here, ahead = (arc(by) for by in (-step, 0.0, step))
        torques = [each.torques[blade] for each in (rear, here, ahead)]
        mean = (ahead.energy - rear.energy) / np.radians(2 * step)
        smooth = (torques[0] + 4 * torques[1] + torques[2]) / 6
        rounding = 1e-15 * max(1.0, here.energy) / np.radians(step)
        if abs(mean - smooth) <= 1e-7 * here.scale + rounding:
            return
        step /= 4
        if step < 1e-5:
            break
    assume(arc.steady)
    # Energy's rounding over so small a step is 1e-6 of it.
    slack = 1e-6 * here.scale + rounding
    assert min(torques) - slack <= mean <= max(torques) + slack, f"{mean} is not in {torques}"


@given(
    designs(kinds=SEVERAL, without=(STOP, BENDING)),
    STANDS,
    st.integers(1, 150),
    st.integers(1, 150),
)
def test_of_two_blades_round_a_loop_is_nothing(
    design: bs.Design, angles: list[float], one: int, other: int
) -> None:
    """Maxwell's law of two blades on one spring: dT1/dtheta2 = dT2/dtheta1, over any rectangle."""
    first = [min(each, 165.0) for each in angles]
    legs = (
        (first, 0, one, 1), (turned(first, 0, one / 10), 1, other, 1),
        (turned(first, 1, other / 10), 0, one, -1), (first, 1, other, -1),
    )  # fmt: skip
    total = missed = 0.0
    bore = set()
    for held, blade, tenths, sign in legs:
        arc = Turning(design, held, blade)
        done, miss = work(arc.torque, 0.0, tenths / 10)
        total, missed, bore = total + sign * done, missed + miss, bore | arc.bore
    assume(len(bore) <= 1)
    scale = max(1.0, stand(design, first).energy)
    assert abs(total) <= 1e-7 * scale + missed
    assert missed <= 1e-4 * scale


@given(designs(kinds=("one",), without=(BENDING,)), ANGLE)
def test_without_friction_there_and_back_costs_nothing(design: bs.Design, start: float) -> None:
    smooth = design.replace(**{"friction.spring": 0, "friction.pivot": 0})
    there = bs.sweep(smooth, 1.0, start / 2, start / 2 + 30.0)
    assert np.array_equal(there.opening_torque_nmm, there.closing_torque_nmm)
