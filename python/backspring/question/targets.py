"""Targets that a design states, as the core judges them."""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

from backspring import _core


class TargetResult(NamedTuple):
    """One target: what the design does, what is allowed, and whether it is met.

    `value` is None where the design does not tell it; that counts as missed, and a notice says
    why. Pull in N, reading in mm, openings as a margin on stress. Where the design states no yield
    margin, 1 at the likely strength is judged, and `stated` is False.
    """

    name: str
    value: float | None
    low: float | None
    high: float | None
    met: bool
    stated: bool = True


def target_results(found: Iterable[_core.TargetResult]) -> tuple[TargetResult, ...]:
    """Take over targets judged by the core."""
    return tuple(
        TargetResult(each.name, each.value, each.low, each.high, each.met, each.stated)
        for each in found
    )
