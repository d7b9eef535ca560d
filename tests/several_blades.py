"""Designs with several blades for the tests. All are invented."""

from __future__ import annotations

from typing import Any

import backspring as bs

TANG = {
    "pivot": 32, "open": 4.5, "half_stop": 4.62, "closed": 4.6, "corner_radius": 0.7, "front": 5,
}  # fmt: skip
HALF = [[7, 3.1], [25, 2.4], [36.5, 2.5]]
FIT = {"preload": 0.5, "dial": 33.5}
BLADE = {"nail_nick": 35, "mass": "28 g", "length": 56, "height": 18}
FRICTION = {"spring": 0.12, "pivot": 0.12, "pivot_pin": 3.2}
PAD = [27, 36.5]
SPAN_MM = 18.0
HOLDS = [None, SPAN_MM]


def spring(span_mm: float | None = None, **changes: Any) -> dict[str, Any]:
    """One half's thickness on both sides of the pins: two, that far apart, or the middle one."""
    span = span_mm or 0.0
    behind = [[-span - x, t] for x, t in reversed(HALF)]
    middle = [[-span, 3.8], [0.0, 3.8]] if span else [[0.0, 3.8]]
    held: dict[str, Any] = (
        {"support": "middle-pin"}
        if span_mm is None
        else {"support": "two-pins", "rear_pin": span_mm}
    )
    return {
        "steel": "O1", "hardness": 45, "width": 2.3, "thickness": behind + middle + HALF,
        "pin_hole": 2.0, "pad": PAD, **held, **changes,
    }  # fmt: skip


def twins(span_mm: float | None = None) -> bs.Design:
    """Two blades alike on a spring alike on both sides."""
    other = {"name": "twin", "end": "rear", "pad": PAD, "tang": TANG, "fit": FIT, "blade": BLADE}
    return bs.Design(
        name="Twins", spring=spring(span_mm), tang=TANG, fit=FIT, blade=BLADE, blades=[other],
        friction=FRICTION,
    )  # fmt: skip


def single(support: str | float, span_mm: float | None = None) -> bs.Design:
    """One end of the twins by itself."""
    held = spring(span_mm, support=support)
    return bs.Design(name="One", spring=held, tang=TANG, fit=FIT, blade=BLADE, friction=FRICTION)


def unlike(span_mm: float | None = None, kick: bool = False) -> bs.Design:
    """A long blade with a half-stop, and at the rear a short one with a round end."""
    pen: dict[str, Any] = {
        "name": "pen",
        "end": "rear",
        "pad": [20, 33],
        "tang": {"pivot": 29, "open": 4.2, "closed": 4.3, "corner_radius": 1.6, "front": 4.6},
        "fit": {"preload": 0.45, "dial": 30},
        "blade": {"nail_nick": 28, "mass": "14 g", "length": 40, "height": 14},
    }  # fmt: skip
    if kick:
        pen["tang"]["kick"] = {"distance": 6, "height": 0.15, "radius": 0.5}
    span = span_mm or 0.0
    thickness = [[-span - 33, 2.2], [-span - 20, 2.3], [-span, 3.2], [0, 3.6], *HALF]
    return bs.Design(
        name="Unlike", spring=spring(span_mm, thickness=thickness), tang=TANG, fit=FIT,
        blade=BLADE, blades=[pen], friction=FRICTION,
    )  # fmt: skip


def side_by_side(**faces: float) -> bs.Design:
    """Two on one pin of a wide spring; `faces` are what the second's tang has otherwise."""
    held = {
        "steel": "O1", "hardness": 45, "width": 4.6, "support": "two-pins", "rear_pin": 34,
        "thickness": [[-38, 3.2], [-4, 3.8], [0, 3.8], *HALF], "pin_hole": 2.0, "pad": PAD,
    }  # fmt: skip
    sheep = {
        "name": "sheep", "end": "front", "pad": PAD, "tang": TANG | faces, "fit": FIT,
        "blade": BLADE,
    }  # fmt: skip
    return bs.Design(
        name="Pair", spring=held, tang=TANG, fit=FIT, blade=BLADE, blades=[sheep],
        friction=FRICTION,
    )  # fmt: skip


def three() -> bs.Design:
    """Two on one pin and one at the other end."""
    sheep = {
        "name": "sheep", "end": "front", "pad": PAD, "fit": FIT, "blade": BLADE,
        "tang": TANG | {"half_stop": 4.6, "closed": 4.63},
    }  # fmt: skip
    content = unlike(SPAN_MM, kick=True).to_dict()
    content["spring"]["width"] = 4.6
    return bs.Design(**content | {"blades": [sheep, *content["blades"]]})
