"""The stop at open against the nonlinear beam: designs drawn by rule, and a curved spring."""

from __future__ import annotations

import copy
from typing import Any

import numpy as np
import pytest

import backspring as bs
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
def test_readings_move_as_on_the_nonlinear_beam(design: Design, belly: Rows, place: str) -> None:
    height = design["spring"]["thickness"][-1][1] if place == "back" else 0.0
    expected = datum_thou(design, belly, None) - datum_thou(design, belly, Stop(height))
    moved = loaded_thou(design, belly, stop=place) - loaded_thou(design, belly)
    assert moved == pytest.approx(expected, rel=SHARE)


@pytest.mark.parametrize("place", ["back", "belly"])
@pytest.mark.parametrize("drawn", [DESIGN, *DRAWN[:1]], ids=["worked example", "drawn 1"])
def test_stop_and_seat_together_are_as_on_the_nonlinear_beam(drawn: Design, place: str) -> None:
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
    assert moved[0] - moved[1] == pytest.approx((rise[1] - rise[0]) / THOU_MM, rel=SHARE)
    share = stopped.positions["open"].force_n / core().positions["open"].force_n - 1.0
    assert share == pytest.approx(
        both.open().push.y / plain.push.y - 1.0, rel=SHARE, abs=FORCE_SHARE
    )
