"""A small change of a dimension is a small change, whatever touch comes or goes.

Energy is the greatest that pushing forces can give, so it is continuous everywhere, also where the
tang lets go of one place and takes another.

Where it is least smooth is sought: the sharpest bend of a row of points, again and again.
"""

from __future__ import annotations

from collections.abc import Callable

from hypothesis import assume, given
from hypothesis import strategies as st

import backspring as bs
from backspring import _core
from law_designs import ENDS, ONE, designs
from law_figures import STANDS, Stand, stand_of

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
