"""What changes and how far it may, as a maker says it."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator, Sequence

from backspring.question.advise_result import Limit, Moved
from backspring.report.check import TARGET_KINDS
from backspring.report.display import Shown, number, text
from backspring.unit_table import Kind
from backspring.units import System

_WIDTH = 76
_SHOWN: dict[Kind, Shown] = {
    "length": "size",
    "hardness": "hardness",
    "temperature": "temperature",
}


def joined(words: Sequence[str]) -> str:
    """List words: "a, b and c"."""
    return " and ".join([", ".join(words[:-1]), words[-1]] if len(words) > 1 else words)


def moved_words(moved: Moved, units: System) -> str:
    """Say what a number becomes and what it was, or how much more or less it is."""
    if isinstance(moved.to, str) or isinstance(moved.was, str):
        return f"{moved.name} {moved.to} (was {moved.was})"
    kind = _SHOWN[moved.kind]
    if moved.side:
        return f"{moved.name} {text(abs(moved.to), kind, units)} {moved.side}"
    return f"{moved.name} {text(moved.to, kind, units)} (was {number(moved.was, kind, units)})"


def target_text(name: str, value: float | None, units: System) -> str:
    """Write what is judged of a target."""
    return "nothing" if value is None else text(value, TARGET_KINDS[name], units)


def limit_rows(limits: Sequence[Limit], units: System) -> Iterator[tuple[str, ...]]:
    """Write how far each change may go; more or less than now where it is relative."""
    for each in limits:
        if each.choices:
            continue
        kind = _SHOWN[each.kind]
        now, low, high = (number(value, kind, units) for value in (each.now, each.low, each.high))
        step = _step(each, kind, units)
        if each.relative:
            now, high = "", f"+{high}"
        yield each.name, now, low, high, step


def limit_words(limits: Sequence[Limit]) -> tuple[str, ...]:
    """Name the steels that were tried."""
    found = next((each.choices for each in limits if each.choices), ())
    if not found:
        return ()
    own, *others = found
    return tuple(textwrap.wrap(f"now {own}; tried {joined(others)}", _WIDTH))


def _step(limit: Limit, kind: Shown, units: System) -> str:
    if kind == "temperature":
        return f"{limit.step * 1.8:.0f} F" if units == "in" else text(limit.step, kind, units)
    return text(limit.step, kind, units)
