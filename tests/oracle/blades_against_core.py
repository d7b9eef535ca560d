"""The core against the dense solution on drawn joints, figure by figure.

As a program it prints a table of the worst and the median difference of each kind:
`python -m oracle.blades_against_core [how many] [kind ...]`, from the folder tests.
"""

from __future__ import annotations

import sys
import tomllib
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import product
from typing import Any

import numpy as np

import backspring as bs

from .blades import Joint, read
from .blades_contact import BladeContacts, Pressed
from .blades_rest import all_open, at_positions
from .drawn_joints import KINDS, Drawn, as_toml, drawn_joints

HELD = 5  # joints are looked at with all blades held at so many sets of angles
# Blades on one pin that press within two thicknesses of each other share their force as they like:
# shear spreads the pressure of each that far, and the energy hardly knows (1e-5 of it). What they
# press together, and where, is one figure.
APART_MM = 6.0
# Force and energy by share, torque by the force's lever arm (within 0.03 mm where blades press well
# apart), the others as they are.
LIMITS = {
    "force": 0.005, "energy": 0.005, "lever_mm": 0.1, "moved_mm": 0.001,
    "angle_deg": 0.03, "reading_mm": 0.001,
}  # fmt: skip


@dataclass(frozen=True)
class Difference:
    """What the core says more than the dense solution, and of what."""

    figure: str
    value: float
    where: str


def as_design(drawn: Drawn) -> bs.Design:
    """The joint by way of the text of its file."""
    tables = tomllib.loads(as_toml(drawn))
    return bs.Design(**{k: v for k, v in tables.items() if k not in ("format", "units")})


def differences(drawn: Drawn, held: int = HELD, every_case: bool = True) -> Iterator[Difference]:
    """All figures of one joint, blades held anywhere and blades at rest."""
    joint = read(drawn)
    dense, design = BladeContacts(joint), as_design(drawn)
    rng = np.random.default_rng(len(as_toml(drawn)))
    for _ in range(held):
        angles = {name: float(rng.uniform(-2.0, 182.0)) for name in joint.names}
        yield from _at(dense, dense.pressed(angles), design)
    yield from _rests(dense, design, every_case)


def _at(dense: BladeContacts, pressed: Pressed, design: bs.Design) -> Iterator[Difference]:
    core = bs.contacts(design, pressed.angles_deg)
    where = " ".join(f"{name} {angle:.3f}" for name, angle in pressed.angles_deg.items())
    yield Difference("energy", core.energy_nmm / pressed.energy_nmm - 1.0, where)
    for names in _together(pressed, core):
        there = [core.blades[name] for name in names]
        total = sum(pressed.force(name) for name in names)
        scale = max(total, 0.01 * pressed.force_n.sum())
        lack = sum(each.force_n for each in there) - total
        yield Difference("force", lack / scale, f"{'+'.join(names)} at {where}")
        torque = sum(each.torque_nmm for each in there)
        torque -= sum(pressed.torque_nmm(name) for name in names)
        yield Difference("lever_mm", torque / scale, f"{'+'.join(names)} at {where}")
        kicks = [t.force_n for each in there for t in each.touches if t.part.kick]
        mine = pressed.kick & np.isin(pressed.blade, [dense.joint.names.index(n) for n in names])
        of_kick = sum(kicks) - float(pressed.force_n[mine].sum())
        yield Difference("force", of_kick / scale, f"kick of {'+'.join(names)} at {where}")
    for name in dense.joint.names:
        moved = core.blades[name].moved_mm - dense.movement_mm(pressed, name)
        yield Difference("moved_mm", moved, f"{name} at {where}")


def _places_mm(pressed: Pressed, core: Any, name: str) -> list[float]:
    """Where a blade presses by either solution."""
    dense = pressed.own_mm[pressed.of(name) & (pressed.force_n > 0.0)]
    return [*map(float, dense), *(touch.x_mm for touch in core.blades[name].touches)]


def _apart_mm(some: list[float], others: list[float]) -> float:
    return min((abs(a - b) for a in some for b in others), default=np.inf)


def _together(pressed: Pressed, core: Any) -> list[list[str]]:
    """Blades by themselves, but those that press on one spot of one end together."""
    groups: list[list[str]] = []
    places = {blade.name: _places_mm(pressed, core, blade.name) for blade in pressed.joint.blades}
    rear = {blade.name: blade.rear for blade in pressed.joint.blades}
    for blade in pressed.joint.blades:
        like = [
            group
            for group in groups
            if rear[group[0]] == blade.rear
            and min(_apart_mm(places[each], places[blade.name]) for each in group) < APART_MM
        ]
        if like:
            like[0].append(blade.name)
        else:
            groups.append([blade.name])
    return groups


def _cases(joint: Joint, every: bool) -> Iterator[dict[str, str]]:
    """Positions of all blades: every product of them, or each blade's with the others closed."""
    if every:
        for each in product(*(blade.positions_deg for blade in joint.blades)):
            yield dict(zip(joint.names, each, strict=True))
        return
    closed = dict.fromkeys(joint.names, "closed")
    yield closed
    yield closed | {joint.names[0]: "open"}


def _rests(dense: BladeContacts, design: bs.Design, every: bool) -> Iterator[Difference]:
    check = bs.check(design)
    datum = all_open(dense)
    for where in _cases(dense.joint, every):
        rest = at_positions(dense, where)
        yield from _at(dense, rest, design)
        for name in where:
            others = {other: at for other, at in where.items() if other != name}
            position = _position(check, name, where[name], others)
            label = f"{name} of {where}"
            if rest.force(name) > 0.01 * rest.force_n.sum():
                angle = position.blade_angle_deg - rest.angles_deg[name]
                yield Difference("angle_deg", angle, label)
            reading = dense.movement_mm(rest, name) - dense.movement_mm(datum, name)
            yield Difference("reading_mm", position.reading_loaded_mm - reading, label)


def _position(check: Any, name: str, position: str, others: dict[str, str]) -> Any:
    """What the core says of a blade's position with the others so."""
    (row,) = (
        row
        for row in check.blades[name].beside
        if {each.name: each.position for each in row.others} == others
    )
    return row.positions[position]


def table(count: int, kinds: list[str]) -> Iterator[str]:
    """Worst and median difference of each figure, kind by kind, and where the worst is."""
    for kind in kinds:
        found: dict[str, list[tuple[float, str]]] = {}
        for label, drawn in drawn_joints(kind, count):
            for each in differences(drawn):
                row = (abs(each.value), f"{label}: {each.where}")
                found.setdefault(each.figure, []).append(row)
        for figure, rows in found.items():
            worst, where = max(rows)
            median = float(np.median([value for value, _ in rows]))
            over = sum(value > LIMITS[figure] for value, _ in rows)
            yield (
                f"{kind:6} {figure:11} {len(rows):6} figures, median {median:.1e}, "
                f"worst {worst:.1e}, over {LIMITS[figure]}: {over}  {where}"
            )


if __name__ == "__main__":
    for line in table(int(sys.argv[1]) if sys.argv[1:] else 100, sys.argv[2:] or list(KINDS)):
        print(line, flush=True)
