"""Another temper, another hardness, another steel."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import numpy as np

from backspring import steel as steels
from backspring.design.draft import Draft
from backspring.errors import OutOfRange
from backspring.question.advise_steps import Change, Steps, numbered
from backspring.steel import tempering
from backspring.steel.choice import SteelChoice
from backspring.steel.hardness_readings import mean_hrc
from backspring.steel.known import steel_beside
from backspring.steel.records import Steel

_STRENGTHS = {"yield", "tensile"}


def steel_changes(draft: Draft, steps: Steps) -> Iterator[Change]:
    """Find those that its data allow; none where the strength itself is stated."""
    spring = draft.content["spring"]
    if _STRENGTHS & spring.keys():
        return
    if "hardness" in spring:
        yield _hardness(spring, draft.choice.steel, steps)
        yield _other_steel(draft.choice)
    elif "temper" in spring:
        yield from _temper(spring, draft.choice.steel, steps)


def _hardness(spring: dict[str, Any], steel: Steel, steps: Steps) -> Change:
    now = mean_hrc(spring["hardness"])
    limits = (min(now, steel.hardness_low_hrc), max(now, steel.hardness_high_hrc))
    key = "spring.hardness"
    return numbered(key, "hardness", now, limits, steps.hardness_hrc, lambda _, hrc: {key: hrc})


def _temper(spring: dict[str, Any], steel: Steel, steps: Steps) -> Iterator[Change]:
    """Tempers that leave a hardness the steel is used at."""
    now, key = spring["temper"], "spring.temper"
    ends = [now]
    for hrc in (steel.hardness_low_hrc, steel.hardness_high_hrc):
        try:
            ends.append(tempering.temper_for(steel, hrc, spring.get("temper_time")).value)
        except OutOfRange:
            continue
    if max(ends) - min(ends) > steps.temper_c:
        limits = (min(ends), max(ends))
        yield numbered(
            key,
            "temper",
            now,
            limits,
            steps.temper_c,
            lambda _, heat: {key: heat},
            zero=steps.temper_zero_c,
        )


def _other_steel(choice: SteelChoice) -> Change:
    """Other steels at the hardness there is, or at the nearest they are used at."""
    now = choice.steel.name
    own = () if choice.own is None else (choice.own[0].name,)
    names = (now, *(each for each in (*own, *steels.names()) if each != now))

    def put(draft: Draft, place: float) -> dict[str, Any]:
        if place == 0:
            return {}
        hrc = mean_hrc(draft.value("spring.hardness"))
        steel = steel_beside(names[int(place)], choice.own)
        held = min(max(hrc, steel.hardness_low_hrc), steel.hardness_high_hrc)
        changed = {"spring.steel": steel.name}
        return changed if held == hrc else changed | {"spring.hardness": held}

    places = np.arange(len(names), dtype=float)
    return Change("spring.steel", "steel", 0.0, places, 1.0, put, words=names)
