"""What to change about a design, in one line: from what fails and which targets are missed."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from backspring import _core
from backspring.report.display import number, text
from backspring.report.verdict import label
from backspring.units import System

if TYPE_CHECKING:
    from backspring.question.check import Check
    from backspring.question.targets import TargetResult

HEADING = "What to change"
_ADVISE = "`backspring advise DESIGN` looks for sizes that meet all"
_LOCAL = {
    "hole-edge": "a smaller pin hole, or more steel around it",
    "kink": "a larger radius at the belly's kink",
    "shoulder": "a larger radius at the belly's shoulder",
    "curve": "a flatter hollow in the belly",
}
_PINS = {
    "middle-pin-shear": "a thicker middle pin",
    "middle-pin-bearing": "a thicker middle pin",
    "middle-pin-liner": "thicker liners",
    "rear-pin-shear": "a thicker rear pin",
    "rear-pin-bearing": "a thicker rear pin",
    "rear-pin-liner": "thicker liners",
}
# Harder than this a spring gains yield strength, but no life.
_HARD_HRC = 48.0


def to_change(check: Check, units: System) -> str:
    """Say what would mend what fails; that nothing has to change, where nothing does."""
    if check.result.impossible or not check.strokes:
        return "first make it work as a slip joint: see the notices"
    parts = [*dict.fromkeys(_parts(check, units))]
    if parts:
        return f"{'; '.join(parts)}. {_ADVISE}"
    if not all(target.met for target in check.targets):
        return "give what the notices name, so that every target can be judged"
    return "nothing: " + _closest(check, units)


def _parts(check: Check, units: System) -> Iterator[str]:
    failing = {each.name: each for each in check.verdict if each.word == _core.MarginWord.fails}
    missed = {each.name: each for each in check.targets if not each.met and each.value is not None}
    yield from _pull_and_stress(check, failing, missed)
    yield from (mend for name, mend in _LOCAL.items() if name in _notches(failing))
    if _cracks_at_drilled_hole(check, failing):
        yield "a reamed or polished pin hole"
    if "contact-pressure" in failing:
        yield _rounder(failing["contact-pressure"], units)
    yield from (mend for name, mend in _PINS.items() if name in failing)
    if "edge_gap" in missed:
        yield "more room under the edge, or a kick to stop the blade"
    if "reading" in missed:
        yield "for the readings `backspring fit DESIGN` says what to leave on which face"


def _pull_and_stress(
    check: Check, failing: dict[str, _core.Margin], missed: dict[str, TargetResult]
) -> Iterator[str]:
    yields = "yield" in failing or "yield_margin" in missed
    stressed = yields or "fatigue" in failing or "openings" in missed
    wanted = _pull_wanted(missed.get("pull"))
    if wanted == "more":
        yield (
            "more pull at less stress: a wider spring, or a thicker one with less preload"
            if stressed
            else "more pull: a thicker or wider spring, or more preload"
        )
    elif wanted == "less":
        yield "less pull: less preload, or a thinner spring"
    elif stressed:
        yield "less stress: less preload, rounder rear corners, a longer or a thinner spring"
    hardness = check.design.steel_figures["hardness_hrc"]
    if yields and hardness is not None and hardness < _HARD_HRC:
        yield "a harder temper, if the steel allows it"


def _pull_wanted(pull: TargetResult | None) -> str:
    if pull is None or pull.value is None:
        return ""
    return "more" if pull.low is not None and pull.value < pull.low else "less"


def _notches(failing: dict[str, _core.Margin]) -> set[str]:
    """Name the places that are stressed too much, or crack first."""
    cracks = {"fatigue": failing["fatigue"].names.get("notch", "")} if "fatigue" in failing else {}
    return {*failing, *cracks.values()}


def _cracks_at_drilled_hole(check: Check, failing: dict[str, _core.Margin]) -> bool:
    drilled = check.design.core.surface.hole_finish == _core.HoleFinish.drilled
    fatigue = failing.get("fatigue")
    return drilled and fatigue is not None and fatigue.names.get("notch") == "hole-edge"


def _rounder(pressure: _core.Margin, units: System) -> str:
    least = {each.name: each.value for each in pressure.parameters}.get("least_radius")
    return f"a corner radius from {text(least, 'length', units)} on"


def _closest(check: Check, units: System) -> str:
    met = "all targets are met"
    closest = next((each for each in check.verdict if each.margin is not None), None)
    if closest is None or closest.word != _core.MarginWord.close:
        return met
    return f"{met}; closest is {label(closest)}, margin {number(closest.margin, 'margin', units)}"
