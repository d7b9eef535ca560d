"""The whole back in a few lines for the bench."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from backspring import _core
from backspring.report.display import number, reading, text, unit_of
from backspring.report.tables import Lines
from backspring.units import System

if TYPE_CHECKING:
    from backspring.question.whole_back import WholeBack

# A fingertip finds an edge of 0.85 um; rounded, for skins differ. @source johansson-lamotte
FINGERTIP_MM = 0.001
FINGERTIP: dict[System, str] = {
    "mm": "a fingertip feels an edge of about 1 um",
    "in": "a fingertip feels an edge of about 0.04 thou",
}
_AHEAD_MM: dict[System, float] = {"mm": 1.0, "in": 2.54}


def whole_back_blocks(along: WholeBack, units: System) -> Iterator[Lines]:
    """Say it of a check; nothing where the blade has no position besides open."""
    if along.positions:
        yield whole_back_lines(along, units)


def whole_back_lines(along: WholeBack, units: System, when: str = "") -> Lines:
    """Say how far the back strays from open; `when` says of which knife."""
    heading = f"Whole back{when}, loaded, against open [{unit_of('reading', units)}]"
    return Lines(heading, tuple(_lines(along, units)))


def _lines(along: WholeBack, units: System) -> Iterator[str]:
    for name, each in along.positions.items():
        yield f"{name.replace('_', '-')}: {_ends(each, units)}"
    targets = along.targets
    if targets.nowhere_low_mm is not None:
        yield f"fit to {reading(targets.nowhere_low_mm, units)} at the dial and nothing is low"
    if targets.flattest_mm is not None and targets.flattest_off_mm is not None:
        off = number(targets.flattest_off_mm, "reading", units)
        line = f"flattest at {reading(targets.flattest_mm, units)}: nowhere more than {off} off"
        if targets.flattest_dial_mm is not None:
            line += (
                f"; a dial at {text(targets.flattest_dial_mm, 'length', units)} then reads flush"
            )
        yield line
    ahead = text(_AHEAD_MM[units], "length", units)
    gains = [
        f"{number(abs(gain), 'reading', units)} {'more' if gain >= 0.0 else 'less'} at "
        f"{name.replace('_', '-')}"
        for name, each in along.positions.items()
        for gain in [each.per_dial_mm * _AHEAD_MM[units]]
    ]
    if gains:
        yield f"a dial {ahead} farther ahead reads {', '.join(gains)}"
    yield FINGERTIP[units]


def _ends(each: _core.BackAlong, units: System) -> str:
    low, high = reading(each.least_mm, units), reading(each.greatest_mm, units)
    low_at, high_at = (text(x, "length", units) for x in (each.least_at_mm, each.greatest_at_mm))
    if low == "flush" and high == "flush":
        return "flush all along"
    if low == "flush":
        return f"nothing low, {high} at most, at {high_at}"
    if high == "flush":
        return f"nothing proud, {low} at most, at {low_at}"
    return f"{low} at {low_at}, {high} at {high_at}"
