"""What stands in the way of a size, a plan or a grind, by its code."""

from __future__ import annotations

import itertools
from collections.abc import Callable
from typing import Any

from backspring._core import Quantity
from backspring.units import shown

Facts = Any  # numbers and names by attribute, see sentences.py

ENDS = {
    "no-steel": "next to no steel is left",
    "hole-opens": "the pin hole at {hole:size} opens",
    "preload-used": "the preload is used up",
}
_FAR = 3.0


def _face_runs_out(facts: Facts) -> str:
    face = facts.face.replace("_", "-")
    name = face if face == "kick" else f"{face} face"
    # Of a depth that no tang could lose only that it is too much means anything.
    near = "needed" in facts and facts.needed.value < _FAR * facts.left.value
    lost = (
        f"{facts.needed:reading}, it has {facts.left:reading} left"
        if near
        else f"more than the {facts.left:reading} it has left"
    )
    low = ": a reading is low, and only lowering open would raise it" if face == "open" else ""
    return f"no plan: the {name} would have to lose {lost}{low}"


def _no_such_tang(facts: Facts) -> str:
    half, closed = (
        f"{facts[each]:reading}" if each in facts else "any" for each in ("half_stop", "closed")
    )
    return (
        f"no tang of this design has {facts.state} readings of: half-stop {half}, closed {closed}"
    )


def _broken_rule(lead: str) -> Callable[[Facts], str]:
    """Say which rule a design would break, its numbers in the units asked for."""

    def sentence(facts: Facts) -> str:
        places = (f"number_{i}" for i in itertools.count())
        found = (facts[place] for place in itertools.takewhile(facts.__contains__, places))
        numbers = (shown(each.value, Quantity[each.quantity], each.units) for each in found)
        return f"{lead}{facts.key}: {facts.rule.format(*numbers)}"

    return sentence


def _grind(why: Callable[[Facts], str]) -> Callable[[Facts], str]:
    """Refuse a pull by grinding: why, and what preload would do instead."""

    def sentence(facts: Facts) -> str:
        return (
            f"grinding cannot give a pull of {facts.pull:force}: {why(facts)}"
            f"{_preload_instead(facts)}"
        )

    return sentence


def _preload_instead(facts: Facts) -> str:
    if "preload" not in facts:
        return "; no preload gives it either"
    text = f"; a preload of {facts.preload:size} instead of {facts.preload_now:size} gives it"
    if "rear_pin_offset" in facts:
        text += (
            f": rear-pin offset {facts.rear_pin_offset:size}, rear hole moved by "
            f"{facts.hole_moved:size}"
        )
    if "yield_margin" in facts and facts.yield_margin.value < 1.0:
        text += ", but then the spring yields"
    return text


def _too_weak(facts: Facts) -> str:
    return f"the spring pulls {facts.pull_now:force} and every pass lowers that"


def _limit(facts: Facts) -> str:
    end = ENDS[facts.end].format_map(facts)
    return f"at {facts.depth:size} {end}, and just before the spring still pulls " + (
        f"{facts.pull_left:force}"
    )


def _lets_go(facts: Facts) -> str:
    return f"from {facts.depth:size} on the blade no longer snaps"


REFUSALS: dict[str, str | Callable[[Facts], str]] = {
    "margin-out-of-reach": "yield_margin: no more than {margin:margin} can be had between the "
    "bounds",
    "margin-at-limit": "yield_margin: must be at least {margin:margin}",
    "stock-sizes": "{key}: comes in {sizes:count} stock sizes, the nearest is {size:size}",
    "least-size": "{key}: must be at least {size:length}",
    "greatest-size": "{key}: must be at most {size:length}",
    "breaks-rule": _broken_rule(""),
    "does-not-stay": "the blade does not stay in each of its positions",
    "pull-turns-back": "pull: turns back before it gets there",
    "none-works": "no design between the bounds works",
    "no-taper": "taper: no shape with at least {least:size} thickness gives a pull of {pull:force}",
    "face-runs-out": _face_runs_out,
    "no-such-tang": _no_such_tang,
    "grind-too-weak": _grind(_too_weak),
    "grind-limit": _grind(_limit),
    "grind-lets-go": _grind(_lets_go),
    "flush-breaks-rule": _broken_rule("the spring cannot be ground flush: "),
    "flush-passes": "still not flush after {passes:count} passes: take more off in each",
}
