"""A shop's own habits for people."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from backspring.report.display import Shown, scatter, text, unit_of
from backspring.report.sentences import in_words
from backspring.report.tables import Block, Lines, Report, TextTable
from backspring.units import System

if TYPE_CHECKING:
    from backspring.fit.habits import Habit, ShopHabits

_NAMES: dict[str, tuple[str, Shown]] = {
    "pad_tilt_rad": ("tilt of the pad at open", "tilt"),
    "pivot_play_mm": ("play of the pivot", "reading"),
    "friction": ("friction", "margin"),
    "youngs_modulus_share": ("Young's modulus against the steel's own", "change"),
    "depth_share": ("depth off against what was stated", "change"),
}
_HEADS = ("", "mean", "good to +-", "between knives +-", "next knife +-", "told by")


def habits_report(habits: ShopHabits, units: System | None = None) -> Report:
    """Lay out the habits in the given units, mm when none are given."""
    units = units or "mm"
    count = len(habits.files)
    headline = f"Habits of this shop, from {count} log{'' if count == 1 else 's'}"
    if not habits.enough:
        headline += ": too few, common practice stays"
    return Report(headline, tuple(_blocks(habits, units)))


def expected_lines(habits: ShopHabits, units: System) -> Lines:
    """Say what is expected of the next knife."""
    known = [each for each in habits.habits.values() if each.known]
    lines = [_expected(each, units) for each in known]
    if len(known) < len(habits.habits):
        names = [_NAMES[each.name][0] for each in habits.habits.values() if not each.known]
        lines.append(f"as common practice has it: {', '.join(names)}")
    return Lines(f"Expected, from {len(habits.files)} logs of this shop", tuple(lines))


def _blocks(habits: ShopHabits, units: System) -> Iterator[Block]:
    rows = tuple(_row(each, units) for each in habits.habits.values())
    yield TextTable("Habits (random effects; depths: between trips)", _HEADS, rows)
    yield expected_lines(habits, units)
    if habits.left_out:
        yield Lines("Left out", tuple(f"{each.file}: {each.reason}" for each in habits.left_out))
    if habits.notices:
        yield Lines("Notices", tuple(in_words(each, units) for each in habits.notices))


def _row(habit: Habit, units: System) -> tuple[str, ...]:
    name, kind = _NAMES[habit.name]
    told = f"{habit.logs} logs"
    if habit.name == "depth_share":
        told = f"{habit.told_by} trips, {told}"
    if not habit.known:
        return (name, "not known yet", "-", "-", "-", told)
    spreads = (habit.mean_sd, habit.spread, habit.expected_sd)
    return (
        name,
        text(habit.mean or 0.0, kind, units),
        *(_spread(each, kind, units) for each in spreads),
        told,
    )


def _expected(habit: Habit, units: System) -> str:
    name, kind = _NAMES[habit.name]
    mean, spread = text(habit.mean or 0.0, kind, units), _spread(habit.expected_sd, kind, units)
    return f"{name}: {mean} +-{spread}"


def _spread(value: float | None, kind: Shown, units: System) -> str:
    unit = unit_of(kind, units)
    return f"{scatter(value or 0.0, kind, units)} {unit}".rstrip()
