"""Designs with two blades for the tests. All are invented."""

from __future__ import annotations

from typing import Any

import backspring as bs

TANG = {
    "pivot": 32, "open": 4.5, "half_stop": 4.62, "closed": 4.6, "corner_radius": 0.7, "front": 5,
}  # fmt: skip
HALF = [[7, 3.1], [25, 2.4], [36.5, 2.5]]
FIT = {"preload": 0.5, "dial": 33.5}
BLADE = {"nail_nick": 35, "mass": "28 g", "length": 80, "height": 18}
FRICTION = {"spring": 0.12, "pivot": 0.12, "pivot_pin": 3.2}
SPAN_MM = 18.0


def mirrored(span_mm: float) -> list[list[float]]:
    """One half's thickness on both sides of the pins."""
    behind = [[-span_mm - x, t] for x, t in reversed(HALF)]
    middle = [[-span_mm, 3.8], [0.0, 3.8]] if span_mm else [[0.0, 3.8]]
    return behind + middle + HALF


def spring(span_mm: float | None = None, **changes: Any) -> dict[str, Any]:
    """The whole spring: on two pins that far apart, or else on its middle pin alone."""
    held: dict[str, Any] = (
        {"support": "middle-pin"}
        if span_mm is None
        else {"support": "two-pins", "rear_pin": span_mm}
    )
    return {
        "steel": "O1", "hardness": 45, "width": 2.3, "thickness": mirrored(span_mm or 0.0),
        "pin_hole": 2.0, "pad": [27, 36.5], **held, **changes,
    }  # fmt: skip


def twins(span_mm: float | None = None, **changes: Any) -> bs.Design:
    """Two blades alike on a spring alike on both sides."""
    second = {"pad": [27, 36.5], "tang": TANG, "fit": FIT, "blade": BLADE}
    return bs.Design(
        name="Twins", spring=spring(span_mm), tang=TANG, fit=FIT, blade=BLADE, second=second,
        friction=FRICTION, **changes,
    )  # fmt: skip


def unlike(span_mm: float | None = None) -> bs.Design:
    """A long blade with a half-stop and a short one with a round end and a kick."""
    short = {
        "pivot": 29, "open": 4.2, "closed": 4.3, "corner_radius": 1.6, "front": 4.6,
        "kick": {"distance": 6, "height": 0.15, "radius": 0.5},
    }  # fmt: skip
    span = span_mm or 0.0
    thickness = [[-span - 33, 2.2], [-span - 20, 2.3], [-span, 3.2], [0, 3.6], *HALF]
    return twins(span_mm).replace(
        **{
            "spring.thickness": thickness,
            "second.pad": [20, 33],
            "second.tang": short,
            "second.fit": {"preload": 0.45, "dial": 30},
        }
    )
