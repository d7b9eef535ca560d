"""What the hand meets, as lines for people and as plain data."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import TYPE_CHECKING, Any

from backspring import _core
from backspring.report.display import number, text, unit_of
from backspring.report.tables import Block, Lines
from backspring.units import System

if TYPE_CHECKING:
    from backspring.question.check import Check

_USUAL_RISE_MM = (1.0, 1.5)
_SEATS = ("open", "half_stop", "closed")


def feel_blocks(check: Check, units: System) -> Iterator[Block]:
    """Lay out what the hand meets; nothing for a blade that does not snap."""
    if check.strokes:
        yield Lines("Feel", tuple(_lines(check, units)))


def feel_data(feel: _core.Feel) -> dict[str, Any]:
    """Write what the hand meets for JSON; none where a number is impossible."""
    seats = _seats(feel)
    return {
        "rise_mm": [_known(each) for each in feel.rise_mm],
        "evenness": _known(feel.evenness),
        "seat_stiffness_nmm_per_deg": {name: _known(each) for name, each in seats.items()},
        "dial_lift_mm": _known(feel.dial_lift_mm),
        "pull_oiled_n": _known(feel.pull_oiled_n),
        "pull_dry_n": _known(feel.pull_dry_n),
    }


def _known(value: float | None) -> float | None:
    return None if value is None or math.isnan(value) else value


def _seats(feel: _core.Feel) -> dict[str, float]:
    """Stiffness by position, of those that the blade has."""
    held = {name: getattr(feel.seat, f"{name}_nmm_per_deg") for name in _SEATS}
    return {name: each for name, each in held.items() if each is not None}


def _lines(check: Check, units: System) -> Iterator[str]:
    feel = check.feel
    rises = ", ".join(
        f"{text(rise, 'length', units)} from {stroke.from_position.replace('_', '-')}"
        for rise, stroke in zip(feel.rise_mm, check.strokes, strict=True)
    )
    low, high = (number(each, "length", units) for each in _USUAL_RISE_MM)
    unit = unit_of("length", units)
    yield (
        f"the spring rises at the crest by {rises} "
        f"({low} to {high} {unit} suit a hand-size knife: common practice, no source)"
    )
    if feel.evenness is not None:
        percent = text(feel.evenness, "percent", units)
        yield f"the lighter stroke takes {percent} of the other's peak"
    if feel.pull_oiled_n is not None and feel.pull_dry_n is not None:
        oiled, dry = (text(each, "force", units) for each in (feel.pull_oiled_n, feel.pull_dry_n))
        at = _frictions(check.design.core.friction)
        if _is_usual(check.design.core.friction):
            yield f"pull oiled {oiled}, dry {dry} (friction {at[0]} and {at[1]})"
        else:
            yield f"pull {oiled} with friction {at[0]}, {dry} with {at[1]}"
    seats = ", ".join(
        f"{name.replace('_', '-')} {number(each, 'torque', units)}"
        for name, each in _seats(feel).items()
    )
    yield f"seat stiffness, {unit_of('torque', units)} per deg: {seats}"
    yield f"lift at the dial on the way: {text(feel.dial_lift_mm, 'reading', units)} over open"


def _is_usual(friction: _core.Friction) -> bool:
    """Say whether the joint is one that is oiled and runs dry in turn."""
    oiled = _core.oiled(friction)
    usual = _core.USUAL_FRICTION - _core.FRICTION_SPREAD
    return math.isclose(oiled.spring, usual) and math.isclose(oiled.pivot, usual)


def _frictions(friction: _core.Friction) -> list[str]:
    """Say the coefficients; one where spring and pivot have the same."""
    return [
        f"{each.spring:.3g}" if each.spring == each.pivot else f"{each.spring:.3g}/{each.pivot:.3g}"
        for each in (_core.oiled(friction), _core.dry(friction))
    ]
