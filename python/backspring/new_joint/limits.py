"""Whether a joint keeps to its bounds, fits the handle and has steel about its holes."""

from __future__ import annotations

from backspring.new_joint.file_text import Tables
from backspring.new_joint.joint import rise_of
from backspring.new_joint.places import least_rim_mm, rim_mm
from backspring.new_joint.request import Request

# Steel either side of a hole, in hole diameters: wanted, and least.
LIGAMENT, LEAST_LIGAMENT = 1.0, 0.5
# So far outside a bound is inside, for rounding.
BOUND_SLACK_MM = 0.02


def fits(request: Request, tables: Tables) -> bool:
    """Whether the joint is inside its bounds, in the handle, with steel about its holes."""
    spring, tang = tables["spring"], tables["tang"]
    middle = max(thick for _, thick in spring["thickness"])
    end = spring["thickness"][-1][1]
    sizes = {
        "thickness": middle,
        "end_thickness": end,
        "preload": tables["fit"]["preload"],
        "rise": rise_of(tang["open"], tang["corner_radius"]),
        "open": tang["open"],
    }
    inside = all(_within(request, name, value) for name, value in sizes.items())
    return (
        inside
        and rim_mm(request, end, tang["open"]) >= least_rim_mm(request)
        and ligament(tables) >= LEAST_LIGAMENT
    )


def _within(request: Request, name: str, value: float) -> bool:
    low, high = request.bounds[name]
    return low - BOUND_SLACK_MM <= value <= high + BOUND_SLACK_MM


def ligament(tables: Tables) -> float:
    """Steel either side of the pin holes, the least, in hole diameters."""
    spring = tables["spring"]
    hole = spring["pin_hole"]
    rear, middle = spring["thickness"][0][1], spring["thickness"][1][1]
    return float(0.5 * (min(rear, middle) - hole) / hole)
