"""Sizes as a maker can set them, and targets as one would write them."""

from __future__ import annotations

import math

from backspring.question.advise_changes import STEPS
from backspring.question.advise_faces import STEPS_MM
from backspring.unit_table import UNITS, System

_FORCE_STEP_N: dict[System, float] = {"mm": 0.5, "in": 0.1 * float(UNITS["lbf"].factor)}


def fine(value_mm: float, units: System) -> float:
    """Round a thickness, a preload or a radius."""
    return stepped(value_mm, STEPS[units].fine)


def between(value_mm: float, units: System) -> float:
    """Round a distance between pins, or the pad's."""
    return stepped(value_mm, STEPS[units].length)


def face(value_mm: float, units: System) -> float:
    """Round a face, which is ground to the dial."""
    return stepped(value_mm, STEPS_MM[units])


def stepped(value: float, step: float) -> float:
    """Round to whole steps."""
    return round(round(value / step) * step, 9)


def band_n(pull_n: float, share: float, units: System) -> list[float]:
    """Least and greatest pull about a wanted one, outward to what one would write."""
    step = _FORCE_STEP_N[units]
    low, high = ((1.0 - share) * pull_n / step, (1.0 + share) * pull_n / step)
    return [max(1, math.floor(low + 1e-9)) * step, math.ceil(high - 1e-9) * step]
