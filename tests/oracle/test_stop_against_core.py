"""The core's stop at open against the nonlinear beam, on designs drawn by rule."""

from __future__ import annotations

from typing import Any

import pytest

import backspring as bs
from oracle.designs import Design, generated_designs
from oracle.nonlinear_beam_joint import Extras, NonlinearJoint, Stop

THOU_MM = 0.0254
FRICTION = 0.12
DRAWN = [design for label, design in generated_designs(60, 7) if label.startswith("two pins with")]


def with_stop(design: Design, **stop: Any) -> bs.Design:
    """The design for the core; its steel only matters for margins."""
    spring = design["spring"] | {"steel": "O1", "hardness": 45}
    return bs.Design(name="drawn", spring=spring, tang=design["tang"], fit=design["fit"] | stop)


def reading(design: bs.Design) -> float:
    position = bs.check(design).positions["closed"]
    return position.reading_loaded_mm / THOU_MM


@pytest.mark.parametrize("place", ["back", "belly"])
@pytest.mark.parametrize("design", DRAWN, ids=range(len(DRAWN)))
def test_readings_move_as_on_the_nonlinear_beam(design: Design, place: str) -> None:
    end = design["spring"]["thickness"][-1][1]
    plain = NonlinearJoint(design)
    leaning = NonlinearJoint(design, Extras(stop=Stop(end if place == "back" else 0.0)))
    rise = [joint.open().back_mm(joint.spring, joint.dial_mm) for joint in (plain, leaning)]
    expected = (rise[0] - rise[1]) / THOU_MM
    moved = reading(with_stop(design, stop=place)) - reading(with_stop(design))
    # A tenth, as of the table of effects, and what the dial of the oracle is read to.
    assert moved == pytest.approx(expected, rel=0.1, abs=0.005)
