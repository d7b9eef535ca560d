"""The core beside the slow reference on one joint, figure by figure, and on many.

The slow reference lets pressure spread anywhere on the pad and differences energy. The core puts
one point force where shear spreads the pressure over about half a thickness, and that is all the
two may differ by.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Any

import numpy as np

import backspring as bs
from oracle.designs import Design
from oracle.slow_spring import SlowSpring, solve_rests, torque_nmm

FORCE_SHARE, ANGLE_DEG, READING_MM = 0.005, 0.03, 0.001


@dataclass(frozen=True)
class Beside:
    """One figure of both and by how much it may differ: by share or as it is."""

    figure: str
    where: str
    core: float
    slow: float
    share: float = 0.0
    amount: float = 0.0

    @property
    def used(self) -> float:
        return abs(self.core - self.slow) / max(self.share * abs(self.slow), self.amount)


def as_design(slow: Design) -> bs.Design:
    """The same design for the core; its steel only matters for margins."""
    spring: dict[str, Any] = slow["spring"] | {"steel": "O1", "hardness": 45}
    if isinstance(spring["support"], dict):
        spring["support"] = spring["support"]["root_stiffness"]
    more = {"frame": slow["frame"]} if "frame" in slow else {}
    return bs.Design(name="generated", spring=spring, tang=slow["tang"], fit=slow["fit"], **more)


def compared(slow: Design) -> Iterator[Beside]:
    """Every rest, and torque over the travel."""
    design = as_design(slow)
    check, rests = bs.check(design), solve_rests(slow)
    assert set(check.positions) == set(rests)
    for name, rest in rests.items():
        at, angle = check.positions[name], rest["blade_angle_deg"]
        yield Beside("angle [deg]", name, at.blade_angle_deg, angle, amount=ANGLE_DEG)
        yield Beside("force [N]", name, at.force_n, rest["force_n"], FORCE_SHARE)
        stress = rest["peak_stress_mpa"]
        yield Beside("stress [MPa]", name, at.peak_stress_mpa, stress, FORCE_SHARE)
        for state in ("loaded", "unloaded"):
            key = f"reading_{state}_mm"
            ours = getattr(at, key)
            yield Beside(f"{state} reading [mm]", name, ours, rest[key], amount=READING_MM)
    angles = np.linspace(4.0, 176.0, 15)
    torque = torque_nmm(slow, angles)
    # By share of the greatest torque: it passes through zero at crest and rest.
    scale = FORCE_SHARE * float(np.abs(torque).max())
    for angle, theirs in zip(angles, torque, strict=True):
        ours = bs.contact_at(design, angle).torque_nmm
        yield Beside("torque [N mm]", f"{angle:.0f} deg", ours, float(theirs), amount=scale)


def compared_worst(slow: Design) -> Iterator[Beside]:
    """The worst of the travel, where the core says that it is."""
    spring, travel = SlowSpring(slow), bs.check(as_design(slow)).travel
    for figure, ours, angle, key in (
        ("stress [MPa]", travel.peak_stress_mpa, travel.peak_stress_angle_deg, "peak_stress_mpa"),
        ("force [N]", travel.peak_force_n, travel.peak_force_angle_deg, "force_n"),
    ):
        state = spring.state(angle)
        yield Beside(f"greatest {figure}", f"{angle:.0f} deg", ours, state[key], FORCE_SHARE)


def farthest(all_of_them: Iterable[Beside]) -> dict[str, Beside]:
    """Of each figure the one that uses most of what it may differ by."""
    found: dict[str, Beside] = {}
    for each in all_of_them:
        if each.figure not in found or not each.used <= found[each.figure].used:
            found[each.figure] = each
    return found
