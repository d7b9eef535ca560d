"""The open blade on its stop: the core beside spring and tang as solids in contact.

Table: `backspring evidence --only contact_with_stop`, in four minutes on a quiet machine. Source of
the other numbers: CalculiX, run here, with large displacement; the tang turns on its pivot and its
shoulder bears on the spring's end, see contact_with_stop_solid.py.

Joints: the worked example with an even pad 2.4 mm thick, and Kestrel; no holes, no friction. Rows:
no stop and the blade held; the stop at each place with the blade standing at 180 deg under load;
the same with the stop's face where it meets the end with the rear pin out, so the blade turns.

The stop bears on the end's face as on a plane, see contact_with_stop_solid.py. On one node the
belly's corner gave way by 0.0007 mm more, so the blade opened by 0.009 deg more and its reading was
0.0008 mm off, and all that by how fine the elements were: a sharp corner's give is in neither
model.

What differs: the spring's force by less than 0.1 %, readings by 0.001 mm. Of the 0.0007 mm by which
the solid's closed blade reads prouder, 0.0002 mm are large turns (the beam of
nonlinear_beam_joint.py has them, too); the rest is the corner of the open tang pressing into the
belly, deeper than the flat of the closed one. It is nearly the same with every stop, so what a stop
changes agrees to 0.0003 mm. The stop's force at 180 deg differs by up to 0.3 % on the worked
example and 0.2 % on Kestrel. It goes by the direction of the tang's push: 0.3 % are 0.003 rad,
or 0.002 mm along the corner's arc, where the solid's elements are 0.05 mm long and the contact
0.02 mm.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from scipy.optimize import brentq

import backspring as bs
from oracle.contact_with_stop_mesh import SolidJoint
from oracle.contact_with_stop_open import open_on_stop
from oracle.contact_with_stop_solid import Solved, Stop, solve
from oracle.plane_stress_mesh import PlaneSpring
from oracle.worked_example import DESIGN

DEMOS = Path(__file__).parents[2] / "data" / "designs"
EVEN_PAD = [[-38, 3.2], [-4, 3.8], [0, 3.8], [7, 3.1], [25, 2.4], [36.5, 2.4]]
NO_FRICTION = 1e-9  # of 0 the band of the stop's force takes the usual one
CLOSED_FACE_AHEAD_MM = 6.0  # past where the bent spring leaves it


@dataclass(frozen=True)
class Open:
    """One joint open, by either model; the reading is of the closed blade."""

    force_n: float
    stop_n: float
    angle_deg: float
    reading_mm: float


def joints() -> Iterator[tuple[str, bs.Design]]:
    spring = DESIGN["spring"] | {"steel": "O1", "hardness": 45}
    spring |= {"pin_hole": 0, "thickness": EVEN_PAD}
    example = {"spring": spring, "tang": DESIGN["tang"], "fit": DESIGN["fit"]}
    yield "worked example", bs.Design(name="Heron", friction={"spring": NO_FRICTION}, **example)
    kestrel = bs.load(DEMOS / "kestrel.toml")
    yield "Kestrel", kestrel.replace(**{"spring.pin_hole": 0, "friction.spring": NO_FRICTION})


def core_open(design: bs.Design, **fit: Any) -> Open:
    check = _checked(design, **fit)
    at, closed = (check.positions[name] for name in ("open", "closed"))
    stop_n = 0.0
    if "stop_face" in fit:
        stop_n = check.result.stop_band.stop_n.low
    elif fit:
        square = _checked(design, **fit, stop_face=_face_at_180(design, **fit))
        stop_n = square.result.stop_band.stop_n.low
    return Open(at.force_n, stop_n, at.blade_angle_deg, closed.reading_loaded_mm)


def _checked(design: bs.Design, **fit: Any) -> bs.Check:
    check = bs.check(design.replace(**{f"fit.{key}": value for key, value in fit.items()}))
    assert isinstance(check, bs.Check)
    return check


def _face_at_180(design: bs.Design, **fit: Any) -> str:
    """The stop's face at which the blade stands square: with it the core tells one stop force."""

    def beyond(face_mm: float) -> float:
        at = _checked(design, **fit, stop_face=f"{face_mm} mm").positions["open"]
        return float(at.blade_angle_deg) - 180.0

    near = design.core.pad.end_mm - design.core.tang.pivot_mm
    return f"{brentq(beyond, near - 0.1, near + 0.1, xtol=1e-9)} mm"


def solid_joint(design: bs.Design, finer: int = 1) -> SolidJoint:
    """The open joint; see closed_of()."""
    core = design.core
    rows = [(s.x_mm, s.thickness_mm) for s in core.spring.thickness]
    rear = core.spring.support.rear_pin_mm
    tang = core.tang
    assert tang.half_stop_mm is not None
    spring = PlaneSpring(
        width_mm=core.spring.width_mm,
        thickness_mm=tuple(rows),
        pivot_mm=tang.pivot_mm,
        youngs_modulus_mpa=core.spring.elastic.youngs_modulus_mpa,
        poisson=core.spring.elastic.poisson,
        rear_pin_mm=rear,
        mid_line_mm=tuple((x, 0.5 * t) for x, t in rows),
    )
    return SolidJoint(
        spring=spring,
        pad_mm=(core.pad.start_mm, core.pad.end_mm),
        face_mm=tang.open_mm,
        reach_mm=(tang.corner_open_mm - tang.half_stop_mm, tang.front_mm),
        corner_radius_mm=tang.corner_open_mm,
        seat_mm=tang.open_mm,
        rear_pin_offset_mm=core.fit.preload_mm * rear / tang.pivot_mm,
        dial_mm=core.fit.dial_mm,
        finer=finer,
    )


def closed_of(joint: SolidJoint, design: bs.Design) -> SolidJoint:
    reach = (-CLOSED_FACE_AHEAD_MM, -joint.reach_mm[0])
    face = design.core.tang.closed_mm
    return replace(joint, face_mm=face, reach_mm=reach, corner_radius_mm=0.0)


def seen(stop: Stop, open_: Solved, closed: Solved) -> Open:
    return Open(open_.push_n, stop.force_n, 180.0 + open_.turn_deg, closed.back_mm - open_.back_mm)


def compared(design: bs.Design, finer: int = 1) -> Iterator[tuple[str, Open, Open]]:
    """No stop, then each place: the blade square, then as a stop that just met the end lets it."""
    joint = solid_joint(design, finer)
    end = joint.spring.thickness_mm[-1][1]
    places = {"back": Stop(end), "middle": Stop(0.5 * end), "belly": Stop(0.0)}
    closed = solve(closed_of(joint, design), Stop(0.0), free=True)
    bare = solve(joint, Stop(0.0))
    yield "none", core_open(design), seen(Stop(0.0), bare, closed)
    square = {}
    for place, stop in places.items():
        square[place] = open_on_stop(joint, stop, bare, square=True)
        yield place, core_open(design, stop=place), seen(*square[place], closed)
    face = joint.pad_mm[1] - joint.spring.pivot_mm
    for place, near in square.items():
        core = core_open(design, stop=place, stop_face=f"{face} mm")
        solid = open_on_stop(joint, *near, square=False)
        yield f"{place}, face", core, seen(*solid, closed)
