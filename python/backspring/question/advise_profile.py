"""Thickness profiles as a change leaves them. Stations and thicknesses in mm."""

from __future__ import annotations

from typing import Any

from backspring.design.draft import Draft

Rows = list[list[float]]
_BEHIND_MM = 4.0


def least_mm(draft: Draft) -> float:
    """Thinnest of the stated stations."""
    held = draft.value("spring.thickness")
    return min(thick for _, thick in held) if isinstance(held, list) else float(held)


def offset_profile(draft: Draft, more: float) -> float | Rows:
    """Everywhere thicker by so much."""
    held = draft.value("spring.thickness")
    if isinstance(held, list):
        return [[x, thick + more] for x, thick in held]
    return float(held + more)


def tapered_profile(draft: Draft, more: float, step: float) -> Rows:
    """Thicker at the end ahead by so much, in proportion from the middle pin on."""
    rows = _rows(draft)
    end = rows[-1][0]
    return [[x, thick + _stepped(more * max(x, 0.0) / end, step)] for x, thick in rows]


def ending_profile(draft: Draft, pad_end: float) -> float | Rows:
    """Go on in the last thickness to where the pad ends."""
    held = draft.value("spring.thickness")
    if not isinstance(held, list):
        return float(held)
    return [*held[:-1], [max(held[-1][0], pad_end), held[-1][1]]]


def lengthened_profile(draft: Draft, more: float, pad_start: float, step: float) -> float | Rows:
    """Longer by so much ahead: stretched up to the pad, moved beyond."""
    held = draft.value("spring.thickness")
    if not isinstance(held, list):
        return float(held)

    def moved(x: float) -> float:
        if x <= 0.0:
            return float(x)
        return x + (more if x >= pad_start else _stepped(more * x / pad_start, step))

    return [[moved(x), thick] for x, thick in held]


def rear_profile(draft: Draft, ratio: float, step: float) -> float | Rows:
    """Behind the middle pin stretched by a ratio."""
    held = draft.value("spring.thickness")
    if not isinstance(held, list):
        return float(held)
    return [[x + _stepped((ratio - 1.0) * min(x, 0.0), step), thick] for x, thick in held]


def _rows(draft: Draft) -> Rows:
    held: Any = draft.value("spring.thickness")
    if isinstance(held, list) and len(held) > 1:
        return held
    thick = held[0][1] if isinstance(held, list) else held
    rear = draft.value("spring.rear_pin") or 0.0
    return [[-rear - _BEHIND_MM, thick], [0.0, thick], [draft.value("spring.pad")[1], thick]]


def _stepped(value: float, step: float) -> float:
    return round(value / step) * step
