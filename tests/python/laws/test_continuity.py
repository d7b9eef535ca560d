"""A small change of a dimension is a small change, whatever touch comes or goes.

Energy is the greatest that pushing forces can give, so it is continuous everywhere, also where the
tang lets go of one place and takes another. Torque is, too, but where a corner slips off an end of
the pad: there the face's way past the corner bends at once, and energy with it.

Where it is least smooth is sought: the sharpest bend of a row of points, again and again.
"""

from __future__ import annotations

import math
from collections.abc import Callable

from hypothesis import assume, given
from hypothesis import strategies as st

import backspring as bs
from backspring import _core
from law_designs import ENDS, KINDS, ONE, designs
from law_figures import STANDS, Stand, stand_of, turned

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


@given(designs(kinds=KINDS), STANDS, st.sampled_from(KEYS), st.integers(-40, 40))
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


def at_edge(core: _core.Design, angles: list[float], blade: int) -> bool:
    """Whether a blade bears on an end of its pad, where a sharp corner slips off at once."""
    contact = _core.contacts_at(core, angles[: len(core.blades)])[blade].contact
    pad = core.blades[blade].pad
    places = [touch.x_mm for touch in contact.touches[: contact.count]]
    return any(x in (pad.start_mm, pad.end_mm) for x in places)


@given(designs(kinds=(ONE, ENDS)), STANDS, st.integers(0, 3))
def test_torque_in_every_angle(design: bs.Design, angles: list[float], blade: int) -> None:
    core = design.core
    blade %= len(core.blades)

    def at(more_deg: float) -> Stand:
        return stand_of(core, turned(angles, blade, more_deg))

    start, end = sharpest(lambda more: at(more).torques[blade], -4.0, 4.0)
    one, other = at(start), at(end)
    if any(at_edge(core, turned(angles, blade, more), blade) for more in (start, end)):
        return
    length = core.blades[blade].tang.pivot_mm
    force = max(sum(one.forces), sum(other.forces))
    bent = 2.0 * max(one.energy, other.energy) / force if force > 0.0 else length
    # A turn moves the face by no more than its arc at the pivot's distance.
    share = STEEPEST * math.radians(end - start) * (1.0 + length / bent)
    allowed = share * force * length + 1e-9 * one.scale
    assert abs(other.torques[blade] - one.torques[blade]) <= allowed
