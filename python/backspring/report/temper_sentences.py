"""What is known of a temper and what is not, by its code."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

Facts = Any  # numbers and names by attribute, see sentences.py


def _known(what: str, kind: str) -> str:
    low = kind if kind == "time" else f"{kind}#"  # times of one range may differ in their unit
    return f"{what}: known from {{low:{low}}} to {{high:{kind}}}, got {{value:{kind}}}"


def _temper_time(facts: Facts) -> str:
    known = f"know one hold only, {facts.hold}" if "hold" in facts else "state no hold"
    return f"the time of {facts.time:time} is not counted: the temper data of {facts.steel} {known}"


TEMPERS: dict[str, str | Callable[[Facts], str]] = {
    "temper-range": _known("temper", "temperature"),
    "temper-time-range": _known("temper time", "time"),
    "temper-hold": "temper time: the table holds {hold:time} and is used from {low:time} to "
    "{high:time}, got {value:time}",
    "hardness-range": _known("hardness after a temper", "hardness"),
    "hardness-after-hold": _known("hardness after {time:time}", "hardness"),
    "later-heat-range": _known("later heat", "temperature"),
    "later-heat-hottest": "later heat: known up to {high:temperature}, got {value:temperature}",
    "later-time-longest": "later time: known up to {high:time}, got {value:time}",
    "later-too-soft": "hardness after the heat: known down to {low:hardness}, got {value:hardness}",
    "later-above-temper": "later heat: a table cannot say what is left above the temper of "
    "{temper:temperature}, got {value:temperature}",
    "embrittlement": "a temper of {temper:temperature} lies between {low:temperature#} and "
    "{high:temperature}, where {steel} turns brittle ({confidence}): {note}",
    "temper-time": _temper_time,
    "extrapolated-in-time": "{time:time} is shorter than any time that was fitted: the law of time "
    "and temperature is trusted beyond its experiments; take it as a guide",
}
