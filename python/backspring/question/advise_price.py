"""What a change costs: the other figures of a design, and what of its verdict falls short."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from backspring import _core
from backspring.question.check import Beside, BladesCheck, Check

_READ = ("half_stop", "closed")


def figures_of(check: Check | BladesCheck) -> dict[str, Any]:
    """Figures that a maker weighs, the worst of all cases; of several blades each one's."""
    if isinstance(check, BladesCheck):
        return {"blades": {name: _of_blade(each) for name, each in check.blades.items()}}
    return _of_blade(check)


def _of_blade(check: Check) -> dict[str, float | None]:
    rows: list[Check | Beside] = [*check.beside] or [check]
    strokes = [stroke for row in rows for stroke in row.strokes]
    fatigue = [each.margin for each in check.verdict if each.name == "fatigue" and each.margin]
    read = {
        f"reading_loaded_{name}_mm": _farthest(
            row.positions[name].reading_loaded_mm for row in rows if name in row.positions
        )
        for name in _READ
    }
    return {
        "peak_pull_n": _most(each.peak_pull_n for each in strokes),
        "peak_stress_mpa": _most(row.travel.peak_stress_mpa for row in rows),
        "yield_margin": min((m for row in rows if (m := row.travel.yield_margin)), default=None),
        "fatigue_margin": min(fatigue, default=None),
        **read,
        "rise_mm": _most(check.feel.rise_mm),
    }


def short_of(check: Check | BladesCheck) -> set[str]:
    """Name what of the verdict fails; of several blades with the blade's name."""
    if isinstance(check, BladesCheck):
        return {
            f"{blade}: {name}" for blade, each in check.blades.items() for name in short_of(each)
        }
    return {each.name for each in check.verdict if each.word == _core.MarginWord.fails}


def _most(values: Iterable[float | None]) -> float | None:
    return max((each for each in values if each is not None), default=None)


def _farthest(values: Iterable[float | None]) -> float | None:
    return max((each for each in values if each is not None), key=abs, default=None)
