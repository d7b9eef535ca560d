"""A beam with turns of any size, integrated step by step: joints open on a stop and on soft seats.

Designs drawn by rule, and a curved spring; see nonlinear_beam.py.
"""

from __future__ import annotations

import copy
from typing import Any

import numpy as np
import pytest

import backspring as bs
from agreement import Agree
from oracle.designs import Design, generated_designs
from oracle.nonlinear_beam_joint import Extras, NonlinearJoint, Stop
from oracle.worked_example import DESIGN

Rows = list[tuple[float, float]]

THOU_MM = 0.0254
DRAWN = [design for label, design in generated_designs(60, 7) if label.startswith("two pins with ")]
ARCHED: Rows = [(-38.0, 0.0), (0.0, 1.5), (27.0, 0.0), (36.5, 0.0)]
# Second order in slopes of a few hundredths, on an effect that is itself of second order.
SHARE = 0.04


def loaded_thou(design: Design, belly: Rows, **stop: Any) -> float:
    """The core's loaded reading; steel only matters for margins."""
    spring = design["spring"] | {"steel": "O1", "hardness": 45}
    if belly:
        spring["mid_line"] = mid_line(design, belly)
    made = bs.Design(name="drawn", spring=spring, tang=design["tang"], fit=design["fit"] | stop)
    checked = bs.check(made)
    assert isinstance(checked, bs.Check)
    return checked.positions["closed"].reading_loaded_mm / THOU_MM


SEAT_MM_PER_N = 2e-4
# Stop and seat can all but cancel; slopes of 0.07 are themselves 0.24 % of the force.
FORCE_SHARE = 0.001


def on_seat(design: Design) -> Design:
    """The same read at the pivot, where a fixture and the liners' edge are one datum."""
    there = copy.deepcopy(design)
    there["fit"]["dial"] = there["tang"]["pivot"]
    return there


def mid_line(design: Design, belly: Rows) -> list[list[float]]:
    """Half the thickness above the belly, at every station of either."""
    thickness = np.array(design["spring"]["thickness"])
    stations = sorted({*thickness[:, 0], *(x for x, _ in belly)})
    low = np.interp(stations, *zip(*belly, strict=True))
    high = low + 0.5 * np.interp(stations, thickness[:, 0], thickness[:, 1])
    return [[float(x), float(y)] for x, y in zip(stations, high, strict=True)]


def datum_thou(design: Design, belly: Rows, stop: Stop | None) -> float:
    """Where the open blade holds the dial on the nonlinear beam."""
    joint = NonlinearJoint(design, Extras(stop=stop, belly=belly))
    return joint.open().back_mm(joint.spring, joint.dial_mm) / THOU_MM


@pytest.mark.parametrize("place", ["back", "belly"])
@pytest.mark.parametrize(
    ("design", "belly"),
    [*((design, []) for design in DRAWN[:3]), (DESIGN, ARCHED)],
    ids=["drawn 1", "drawn 2", "drawn 3", "arched"],
)
def test_readings_move_as_on_the_nonlinear_beam(
    agree: Agree, request: pytest.FixtureRequest, design: Design, belly: Rows, place: str
) -> None:
    height = design["spring"]["thickness"][-1][1] if place == "back" else 0.0
    expected = datum_thou(design, belly, None) - datum_thou(design, belly, Stop(height))
    moved = loaded_thou(design, belly, stop=place) - loaded_thou(design, belly)
    joint = request.node.callspec.id.removesuffix(f"-{place}")
    agree(f"{joint}, stop at the {place}, change of a reading [thou]", moved, expected, rel=SHARE)


@pytest.mark.parametrize("place", ["back", "belly"])
@pytest.mark.parametrize(
    ("joint", "drawn"), [("worked example", DESIGN), *(("drawn 1", each) for each in DRAWN[:1])]
)
def test_stop_and_seat_together_are_as_on_the_nonlinear_beam(
    agree: Agree, joint: str, drawn: Design, place: str
) -> None:
    design, seat = on_seat(drawn), (SEAT_MM_PER_N, 0.0, 0.0)
    spring = design["spring"] | {"steel": "O1", "hardness": 45}
    height = spring["thickness"][-1][1] if place == "back" else 0.0
    plain = NonlinearJoint(design).open()
    both = NonlinearJoint(design, Extras(stop=Stop(height), seat_mm_per_n=seat))
    seated = NonlinearJoint(design, Extras(seat_mm_per_n=seat))

    made = bs.Design(name="drawn", spring=spring, tang=design["tang"], fit=design["fit"])

    def core(**stated: Any) -> bs.Check:
        checked = bs.check(made.replace(**{k.replace("_", "."): v for k, v in stated.items()}))
        assert isinstance(checked, bs.Check)
        return checked

    stopped, without = (
        core(frame_seat=SEAT_MM_PER_N, fit_stop=place),
        core(frame_seat=SEAT_MM_PER_N),
    )
    # What the stop does to the datum on pins that give, and what seat and stop make of the force.
    moved = [check.positions["closed"].reading_loaded_mm / THOU_MM for check in (stopped, without)]
    rise = [joint.open().back_mm(joint.spring, joint.dial_mm) for joint in (both, seated)]
    case, expected = f"{joint}, stop at the {place} on soft seats", (rise[1] - rise[0]) / THOU_MM
    agree(f"{case}, change of a reading [thou]", moved[0] - moved[1], expected, rel=SHARE)
    share = stopped.positions["open"].force_n / core().positions["open"].force_n - 1.0
    expected = both.open().push.y / plain.push.y - 1.0
    agree(f"{case}, change of force, share", share, expected, rel=SHARE, abs=FORCE_SHARE)


def test_rests_are_those_of_the_nonlinear_beam(agree: Agree) -> None:
    """Forces to 0.2 % and readings to 0.0003 mm, the square of slopes of 0.05.

    To a reading the core's one point force may add 0.0005 mm.
    """
    spring = DESIGN["spring"] | {"steel": "O1", "hardness": 45}
    design = bs.Design(name="example", spring=spring, tang=DESIGN["tang"], fit=DESIGN["fit"])
    check, joint = bs.check(design), NonlinearJoint(DESIGN)
    for name, rest in {"open": joint.open(), **joint.closed_and_half_stop()}.items():
        at = check.positions[name]
        agree(f"worked example, {name}, force [N]", at.force_n, rest.push.y, rel=0.002)
        angle = rest.blade_angle_deg
        agree(f"worked example, {name}, angle [deg]", at.blade_angle_deg, angle, abs=0.01)
    for name, reading in joint.readings_mm().items():
        ours = check.positions[name].reading_loaded_mm
        agree(f"worked example, {name}, loaded reading [mm]", ours, reading, abs=0.0008)
