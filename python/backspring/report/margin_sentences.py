"""What a margin says, by the kind of margin."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from typing import Any

from backspring.report.display import Figure

Facts = Any  # numbers and names by attribute, see sentences.py

NOTCHES = {
    "hole-edge": "the middle pin's hole",
    "kink": "the belly's kink at {station:length}",
    "shoulder": "the belly's shoulder at {station:length}",
    "curve": "the hollow of the belly",
}
BEARERS = {
    "open-front": "the open face's front edge",
    "open-corner": "the corner behind the open face",
    "round-end": "the round end",
    "closed-corner": "the corner behind the closed face",
    "closed-front": "the closed face's front edge",
    "kick": "the kick's nose",
    "flat": "a face",
    "pad-edge": "the pad's edge",
}


def _below_one(facts: Facts, name: str) -> bool:
    return name in facts and facts[name].value < 1.0


def _share(facts: Facts, value: float) -> Figure:
    return Figure(value, facts.value.units, "ratio")


def _yield(facts: Facts) -> str:
    share = _share(facts, facts.value.value / facts.limit.value)
    if _below_one(facts, "margin"):
        end = "the outer fibre yields"
    elif _below_one(facts, "margin_low"):
        end = "at the low end of what the steel may carry it yields"
    else:
        end = "it stays elastic"
    return (
        f"peak stress {facts.value:stress} at {facts.blade_angle:angle}, "
        f"station {facts.station:length}, is {share:percent} of yield: {end}"
    )


def _set(facts: Facts) -> str:
    text = (
        f"expect it to take about {facts.value:reading} of set at the pivot: preload "
        f"{facts.preload_before:reading} before, {facts.preload_opened:reading} after the first "
        f"opening, {facts.preload_after:reading} in the end; pull falls to "
        f"{facts.pull_left:percent} of what it was"
    )
    if facts.preload_after.value <= 0.0:
        text += "; the spring no longer presses when open"
    if facts.ends == "no":
        text += "; it goes on yielding with every opening"
    if "hinge" in facts:
        text += (
            f"; at station {facts.hinge:length} it yields right through and folds as on a hinge: "
            "it may crack there"
        )
    return text


def _where(notch: str, facts: Facts) -> str:
    return NOTCHES[notch].format_map(facts)


def _local(notch: str, facts: Facts) -> str:
    end = (
        "it yields there in a small place; no set to speak of, but cracks begin at such places"
        if _below_one(facts, "margin")
        else "below yield"
    )
    return f"{_where(notch, facts)} raises {facts.nominal:stress} to {facts.value:stress}: {end}"


def _change(facts: Facts, margin: float) -> str:
    """Write how far the stress is from a limit, as a share of it."""
    change = _share(facts, abs(margin - 1.0))
    return f"bring stress down {change:percent}" if margin < 1.0 else f"{change:percent} to spare"


def _fatigue(facts: Facts) -> str:
    text = ""
    if "notch" in facts:
        text = (
            f"{_where(facts.notch, facts)} counts as {facts.notch_factor:margin} times "
            f"{facts.nominal:stress}; "
        )
    margin, low = facts.margin.value, facts.margin_low.value
    text += f"for {facts.openings:count} openings: {_change(facts, margin)}"
    cautious = _change(facts, low)
    if (margin < 1.0) == (low < 1.0):
        cautious = f"{_share(facts, abs(low - 1.0)):percent}"
    text += f" ({cautious} by the most cautious rule)"
    return f"{text}; {_life(facts)}"


def _life(facts: Facts) -> str:
    if "life" not in facts:
        least = f", at least {facts.life_low:life} openings" if "life_low" in facts else ""
        return f"expected life: no limit found{least}"
    low, high = (
        f"{facts[end]:life}" if end in facts else "no limit found"
        for end in ("life_low", "life_high")
    )
    return f"expected life {facts.life:life} openings, from {low} to {high}"


def _tables(facts: Facts) -> str:
    return (
        f"tables allow {facts.fraction_low:percent} to "
        f"{facts.fraction_high:percent} of the tensile strength for this life"
    )


def _pressure(facts: Facts) -> str:
    text = f"{BEARERS[facts.bearer]} presses with up to {facts.value:stress}: "
    if "least_radius" not in facts:
        return text + "it stays below yielding under the skin"
    return text + (
        f"it beds in and marks the pad; from a radius of {facts.least_radius:length} on it would "
        "not"
    )


def _galling(facts: Facts) -> str:
    end = (
        "stainless parts so far apart are said to gall"
        if facts.galls == "yes"
        else "close enough not to gall, by common practice"
    )
    return f"tang and spring are {facts.value:hardness} apart: {end}"


def _pin(what: str, facts: Facts) -> str:
    return f"{what} carries {facts.value:stress} of {facts.limit:stress}"


def _rap(facts: Facts) -> str:
    end = (
        "it strikes, so ease it shut or give it a stop; this is an upper limit"
        if _below_one(facts, "margin")
        else "it stays clear"
    )
    return (
        "let go at the crest, with nothing but the spring to stop it, the blade runs "
        f"{facts.past_closed:angle} past closed and its edge dips {facts.value:length} towards "
        f"the spring: {end}"
    )


MARGINS: dict[str, Callable[[Facts], str]] = {
    "yield": _yield,
    "set": _set,
    **{notch: partial(_local, notch) for notch in NOTCHES},
    "fatigue": _fatigue,
    "spring-trade": _tables,
    "contact-pressure": _pressure,
    "galling": _galling,
    "middle-pin-shear": partial(_pin, "the middle pin in shear"),
    "middle-pin-bearing": partial(_pin, "the middle pin's side in the spring"),
    "middle-pin-liner": partial(_pin, "the liner at the middle pin"),
    "rear-pin-shear": partial(_pin, "the rear pin in shear"),
    "rear-pin-bearing": partial(_pin, "the rear pin's side in the spring"),
    "rear-pin-liner": partial(_pin, "the liner at the rear pin"),
    "rap": _rap,
}
