"""What the drawing of a joint leaves out, one effect at a time, on the nonlinear beam.

Run in tests/: python -m oracle.nonlinear_beam_effects
"""

from __future__ import annotations

import copy
import math
from functools import cache

from scipy.optimize import minimize_scalar

from .nonlinear_beam import Design
from .nonlinear_beam_joint import Bent, Extras, NonlinearJoint, Stop, turned
from .worked_example import DESIGN

THOU_MM = 0.0254
FRICTION = 0.12
PIVOT_CIRCLE_MM = 0.12 * 3.2 / 2.0
AS_DRAWN = Extras()


def force_at_open(joint: NonlinearJoint) -> float:
    """All that the blade presses the spring outward with."""
    stop, open_ = joint.extras.stop, joint.open()
    return open_.push.y + (stop.friction * open_.stop_n if stop else 0.0)


def friction_arm_mm(joint: NonlinearJoint, bent: Bent, corner: str) -> float:
    """Lever of a force along the face at a contact on a corner."""
    piece = joint.piece(corner)
    size = math.hypot(*bent.push)
    nx, ny = bent.push.x / size, bent.push.y / size
    u, w = turned(math.radians(bent.blade_angle_deg - 180.0), piece.u_mm, piece.w_mm)
    return abs(u * nx + w * ny + piece.radius_mm)


def peak_torque_nmm(
    design: Design, extras: Extras = AS_DRAWN, *, opening: bool = True, bends: bool = False
) -> float:
    """The hand's largest torque on the way; friction bends the spring, or only takes torque."""
    way = 1.0 if opening else -1.0
    joint = NonlinearJoint(
        design, Extras(**extras.__dict__ | {"friction": -way * FRICTION if bends else 0.0})
    )

    def hand(angle: float, corner: str) -> float:
        bent = joint.at(angle, corner)
        arm = PIVOT_CIRCLE_MM + (0.0 if bends else FRICTION * friction_arm_mm(joint, bent, corner))
        return bent.torque_nmm + way * arm * math.hypot(*bent.push)

    def peak(corner: str, low: float, high: float) -> float:
        found = minimize_scalar(
            lambda angle: -way * hand(angle, corner),
            bounds=(low, high),
            method="bounded",
            options={"xatol": 0.01},
        )
        return -float(found.fun)

    if opening:
        return max(peak("half_closed", 8.0, 28.0), peak("open_half", 98.0, 118.0))
    return max(peak("half_closed", 62.0, 82.0), peak("open_half", 152.0, 172.0))


@cache
def drawn() -> tuple[float, float, dict[str, float]]:
    """Force at open, peak torque and readings of the joint as drawn."""
    joint = NonlinearJoint(DESIGN)
    return force_at_open(joint), peak_torque_nmm(DESIGN), joint.readings_mm()


def stop_effect(height_mm: float, friction: float = 0.0) -> tuple[float, float]:
    """Share of the force at open, and what every loaded reading changes by [thou]."""
    joint = NonlinearJoint(DESIGN, Extras(stop=Stop(height_mm, friction)))
    plain = NonlinearJoint(DESIGN)
    spring, dial = plain.spring, plain.dial_mm
    rise = joint.open().back_mm(spring, dial) - plain.open().back_mm(spring, dial)
    return force_at_open(joint) / drawn()[0] - 1.0, -rise / THOU_MM


def couple_effect(*, opening: bool) -> float:
    """Share of the peak torque that friction's bending couple adds."""
    plain = peak_torque_nmm(DESIGN, opening=opening)
    return peak_torque_nmm(DESIGN, opening=opening, bends=True) / plain - 1.0


def stick_effect(position: str, way: float, *, at_pivot: bool) -> float:
    """How far friction can keep a reading from where the blade would rest [thou]."""
    circle = way * PIVOT_CIRCLE_MM if at_pivot else 0.0
    joint = NonlinearJoint(DESIGN, Extras(friction=-way * FRICTION, pivot_circle_mm=circle))
    stuck = joint.rest(position, {"half_stop": 91.0, "closed": 1.0}[position])
    plain = NonlinearJoint(DESIGN)
    datum = plain.open().back_mm(plain.spring, plain.dial_mm)
    return (stuck.back_mm(plain.spring, plain.dial_mm) - datum - drawn()[2][position]) / THOU_MM


def other_effect(extras: Extras, **spring: object) -> tuple[float, float]:
    """Share of the peak torque, and change of the half-stop reading [thou]."""
    design = copy.deepcopy(DESIGN)
    design["spring"] |= spring
    reading = NonlinearJoint(design, extras).readings_mm()["half_stop"]
    pull = peak_torque_nmm(design, extras) / drawn()[1] - 1.0
    return pull, (reading - drawn()[2]["half_stop"]) / THOU_MM


def main() -> None:
    for name, height in (("back", 2.5), ("middle", 1.25), ("belly", 0.0)):
        for friction in (-FRICTION, 0.0, FRICTION):
            force, reading = stop_effect(height, friction)
            print(f"stop {name:7} friction {friction:+.2f}: {force:+7.2%} {reading:+7.3f} thou")
    for name, extras in {
        "middle seat 1e-4": Extras(seat_mm_per_n=(1e-4, 0.0, 0.0)),
        "middle seat 3e-4": Extras(seat_mm_per_n=(3e-4, 0.0, 0.0)),
        "clearance 0.02": Extras(clearance_mm=(0.02, 0.02, 0.0)),
        "clearance 0.05": Extras(clearance_mm=(0.05, 0.05, 0.0)),
        "pivot clearance 0.03": Extras(clearance_mm=(0.0, 0.0, 0.03)),
    }.items():
        pull, reading = other_effect(extras)
        print(f"{name:21}: {pull:+7.2%} {reading:+7.3f} thou")
    for opening in (True, False):
        print(f"friction's couple, {opening=}: {couple_effect(opening=opening):+.2%}")
    for position in ("half_stop", "closed"):
        for at_pivot in (False, True):
            both = [stick_effect(position, way, at_pivot=at_pivot) for way in (1.0, -1.0)]
            print(f"stick {position} {at_pivot=}: {both[0]:+.3f} {both[1]:+.3f} thou")


if __name__ == "__main__":
    main()
