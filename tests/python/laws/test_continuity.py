"""A small change of a dimension is a small change, whatever touch comes or goes.

Energy is the greatest that pushing forces can give, so it is continuous everywhere, also where the
tang lets go of one place and takes another, and so is what bears. Torque is too, but for one thing:
a sharp corner of the tang that passes an edge of the pad presses square to the pad on one side of
it and square to the tang's flat on the other. Place and force stay, and torque jumps by the force
times the corner's height times the difference of both slopes.

Where it is least smooth is sought: the sharpest bend of a row of points, again and again.
"""

from __future__ import annotations

from collections.abc import Callable

from hypothesis import assume, given
from hypothesis import strategies as st

import backspring as bs
from backspring import _core
from law_designs import ENDS, KINDS, ONE, designs
from law_figures import STANDS, turned

ROW, NARROWINGS = 8, 10
# Where one part gives way to another: the rest of an interval so narrowed is 1e-6 of its width.
SAME_MM = 1e-6
# A sensitivity, as a power of the number that changes: thickness has 3.
STEEPEST = 30.0
TURN = "turn"
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


class Changed:
    """A design with one dimension near a drawn value, or a blade near a drawn angle."""

    def __init__(
        self, design: bs.Design, angles: list[float], key: str, share: float, blade: int = 0
    ) -> None:
        self.blade = blade
        self.core, self.angles, self.key = design.core, angles[: len(design.blades)], key
        known = key != TURN and _core.has_dimension(self.core, key)
        now = _core.dimension_value(self.core, key) if known else None
        assume(now or key == TURN)
        self.middle = (now or 0.0) * (1.0 + share)

    def at(self, share: float) -> list[_core.Contact]:
        """Every blade's contact; the turn is up to four degrees."""
        core, angles = self.core, self.angles
        if self.key == TURN:
            angles = turned(angles, self.blade, 400.0 * share)
        else:
            core = _core.with_dimension(core, self.key, self.middle * (1.0 + share))
            if _core.faults(core):
                raise Outside
        return [each.contact for each in _core.contacts_at(core, angles)]

    def narrowed(self, value: Callable[[list[_core.Contact]], float]) -> tuple[float, float]:
        try:
            return sharpest(lambda share: value(self.at(share)), -0.01, 0.01)
        except Outside:
            assume(False)
            raise


def force_n(contacts: list[_core.Contact]) -> float:
    return sum(each.force_n for each in contacts)


SHARES = st.integers(-40, 40).map(lambda count: count / 1000)
VALUES = st.sampled_from((lambda contacts: contacts[0].energy_nmm, force_n))


@given(designs(kinds=KINDS), STANDS, st.sampled_from(KEYS), SHARES, VALUES)
def test_energy_and_force_in_every_dimension(
    design: bs.Design,
    angles: list[float],
    key: str,
    share: float,
    value: Callable[[list[_core.Contact]], float],
) -> None:
    joint = Changed(design, angles, key, share)
    start, end = joint.narrowed(value)
    one, other = joint.at(start), joint.at(end)
    change = STEEPEST * (end - start)
    force = max(force_n(one), force_n(other))
    low, high = sorted(each[0].energy_nmm for each in (one, other))
    work = high + force * design.core.tang.pivot_mm
    assert high - low <= change * work + 1e-12 * high
    assert abs(force_n(other) - force_n(one)) <= change * stiffness(design) + 1e-9 * force


def stiffness(design: bs.Design) -> float:
    """Force that moves the spring at the pivot by the pivot's distance [N]."""
    core = design.core
    at = core.tang.pivot_mm
    return at / _core.deflection_per_force(_core.make_flexibility(core.spring), at, at)


def jump_nmm(blade: _core.Blade, one: _core.Contact, other: _core.Contact) -> float:
    """How much torque jumps where a sharp corner passes an edge of the pad."""
    arcs = _core.make_outline(blade.tang, 4.0 * blade.tang.pivot_mm).body
    jump = 0.0
    for here, there in zip(one.touches[: one.count], other.touches[: other.count], strict=False):
        corner = next((t.part.arc for t in (here, there) if not (t.part.flat or t.part.kick)), None)
        sharp = corner is not None and arcs[corner].radius_mm == 0.0
        at_edge = min(abs(here.x_mm - x) for x in (blade.pad.start_mm, blade.pad.end_mm)) <= SAME_MM
        if sharp and at_edge and abs(here.x_mm - there.x_mm) <= SAME_MM:
            jump += here.force_n * here.height_mm * (there.slope - here.slope)
    return jump


@given(
    designs(kinds=(ONE, ENDS)),
    STANDS,
    st.sampled_from((*KEYS, *len(KEYS) * (TURN,))),
    SHARES,
    st.integers(0, 1),
)
def test_torque_in_angle_and_every_dimension(
    design: bs.Design, angles: list[float], key: str, share: float, blade: int
) -> None:
    blade %= len(design.blades)
    joint = Changed(design, angles, key, share, blade)
    start, end = joint.narrowed(lambda contacts: contacts[blade].torque_nmm)
    one, other = joint.at(start)[blade], joint.at(end)[blade]
    jump = jump_nmm(design.core.blades[blade], one, other)
    jumped = other.torque_nmm - one.torque_nmm - jump
    length, force = design.core.tang.pivot_mm, max(one.force_n, other.force_n)
    slack = STEEPEST * (end - start) * stiffness(design) * length + 1e-9 * force * length
    assert abs(jumped) <= slack, (jumped, one, other)
