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
# Openings; fatigue tests end at about so many cycles. Common practice.
_LONGEST_LIFE = 1e7
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
        text += f"; at station {facts.hinge:length} it yields right through and folds as on a hinge"
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


def _strain(facts: Facts) -> str:
    place = _where(facts.notch, facts) if "notch" in facts else f"station {facts.station:length}"
    end = (
        "it may crack as it is opened"
        if _below_one(facts, "margin")
        else (
            "close enough that a hard one may crack as it is opened"
            if _below_one(facts, "margin_low")
            else "it does not crack for that, but keeps the bend"
        )
    )
    return (
        f"the steel is stretched for good by {facts.value:change} at most, at {place}; at this "
        f"strength it breaks at {facts.elongation_low:percent} to "
        f"{facts.elongation_high:percent}: {end}"
    )


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
    if "residual" in facts:
        text += f"; {facts.residual:stress} in the skin is counted"
    if "soft_skin" in facts:
        text += "; the soft skin is counted"
    return f"{text}; {_life(facts)}{_peened(facts, margin)}"


def _life(facts: Facts) -> str:
    """Say how long it lasts; beyond what fatigue tests reach no limit is found."""
    if not _ends(facts, "life"):
        likely = "no limit found"
    else:
        half = f"{facts.life_typical:life}" if _ends(facts, "life_typical") else "without limit"
        likely = f"99 springs of 100 last {facts.life:life} openings, half of them {half}"
    if not _ends(facts, "life_low"):
        return likely
    if facts.life_low.value < 1.0:
        return f"{likely}, at worst none"
    return f"{likely}, at worst {facts.life_low:life}"


def _ends(facts: Facts, life: str) -> bool:
    return bool(facts[life].value <= _LONGEST_LIFE)


def _peened(facts: Facts, margin: float) -> str:
    """Say what compression in the skin would buy, where it is missed or all is asked for."""
    if "peened" not in facts or (margin >= 1.0 and "everything" not in facts):
        return ""
    hole = "notch" in facts and facts.notch == "hole-edge"
    how = "burnishing the hole" if hole else "peening or burnishing the skin"
    if not _ends(facts, "life"):
        to = f"the margin {facts.peened_margin:margin}"
    elif _ends(facts, "peened_life"):
        to = f"that {facts.peened_life:life} openings"
    else:
        to = "that no limit found"
    return f"; {how} to {facts.peened:stress} of compression would make {to}"


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
        "so far apart they are said to gall" if facts.galls == "yes" else "close enough not to gall"
    )
    return (
        f"tang and spring, both stainless, are {facts.value:hardness} apart: {end} (common "
        "practice, no source)"
    )


def _pin(what: str, facts: Facts) -> str:
    return f"{what} carries {facts.value:stress} of {facts.limit:stress}"


def _rap(facts: Facts) -> str:
    """Bound it from both sides: eased by a hand, and let go, which is more than it can be."""
    end = "it strikes" if facts.gap_eased.value <= 0.0 else "it stays clear"
    text = (
        f"a hand that eases the blade shut, {facts.tip_speed:speed} at the tip (common practice, "
        f"no source), lets the edge dip by {facts.value:length} of the {facts.gap:length} under "
        f"it: {end}; "
    )
    if "dip_let_go" not in facts:
        return text + "let go at the crest, the spring alone does not stop it"
    end = "it stays clear" if facts.dip_let_go.value < facts.gap.value else "it strikes"
    return text + (
        f"let go at the crest the edge dips by {facts.dip_let_go:length}: {end} (an upper limit, "
        "no hand and no gravity)"
    )


MARGINS: dict[str, Callable[[Facts], str]] = {
    "yield": _yield,
    "set": _set,
    "strain": _strain,
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
