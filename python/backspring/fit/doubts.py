"""What to know of an estimate before going by it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from backspring.fit.misfit import off_the_last, worst
from backspring.fit.moved_zero import KNOCKED_MM, hides_moved_zero
from backspring.fit.priors import DEPTH_SHARE
from backspring.notice import Notice, Number

if TYPE_CHECKING:
    from backspring.fit.estimate import FitEstimate

# Readings that differ by more than this times what was stated are worth a word.
MORE = 2.0


def doubts(found: FitEstimate, spread_mm: float) -> tuple[Notice, ...]:
    """Find what does not go together to the letter, and what is not known well."""
    return tuple(_doubts(found, spread_mm))


def _doubts(found: FitEstimate, spread_mm: float) -> Iterator[Notice]:
    leeway = found.leeway
    if leeway.depth_share != DEPTH_SHARE:
        yield Notice("rough-depths", {"stated": DEPTH_SHARE, "share": leeway.depth_share})
    if leeway.offset != 1.0:
        expected, off = found.priors["loaded_offset_mm"], found.unknowns["loaded_offset_mm"]
        usual = Number(expected.sd / leeway.offset, "length")
        yield Notice(
            "loaded-off",
            {
                "off": abs(off.value),
                "way": "lower" if off.value < 0.0 else "higher",
                "usual": usual,
                "worst": worst(found.observations),
            },
        )
    if leeway.friction != 1.0:
        prior = found.priors["friction"]
        rubs, usually = found.unknowns["friction"].value, prior.drawn + prior.expected
        told = {"friction": Number(rubs, "ratio"), "usual": Number(usually, "ratio")}
        yield Notice("dry-joint", told)
    if leeway.dial != 1.0:
        yield Notice(
            "worn-dial",
            {
                "stated": spread_mm,
                "scatter": leeway.dial * spread_mm,
                "worst": worst(found.observations),
            },
        )
    off_it = off_the_last(found.observations)
    if off_it is not None:
        yield Notice(
            "by-reading",
            {
                "reading": off_it,
                "estimate": off_it.estimate,
                "off": f"{abs(off_it.residual):.1f}",
                "worst": worst(found.observations),
            },
        )
    if found.widest_mm > MORE * max(leeway.dial * spread_mm, 0.001):
        yield Notice("measure-loaded", {"spread": found.widest_mm})
    if hides_moved_zero(found):
        yield Notice("zero-unseen", {"moved": KNOCKED_MM})
