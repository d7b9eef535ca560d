"""Pools what the logs of a shop tell of its habits."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace

from backspring.fit.habits import HABITS, LEAST_LOGS, Habit
from backspring.fit.random_effects import pool
from backspring.fit.told_by_log import LogTold, Told

# Of what common practice leaves open: a mean that is less sure says nothing of a shop.
_KNOWN = 0.5
# Readings show one way of tilting well and the other hardly: where logs tilt both ways, those that
# show it are chosen by their tilt, and by the play that goes with it.
_ALIKE = 0.9
_WITH_TILT = ("pad_tilt_rad", "pivot_play_mm")


def habits_of(logs: Sequence[LogTold]) -> dict[str, Habit]:
    """Pool what the logs tell."""
    ahead = sum(each.tilted_ahead for each in logs)
    alike = max(ahead, len(logs) - ahead) >= _ALIKE * len(logs)
    silent = () if alike else _WITH_TILT
    return {
        name: habit_of(name, [() if name in silent else each.habits[name] for each in logs])
        for name in HABITS
    }


def habit_of(name: str, told: Sequence[Sequence[Told]]) -> Habit:
    """Pool what each log tells of one habit.

    The next knife is expected at the mean, as far from it as the spread and what mean and spread
    themselves are unsure: the spread's square by one standard deviation of it more, but for that no
    wider than common practice has it.
    """
    logs = sum(1 for each in told if each)
    every = [each for log in told for each in log]
    habit = Habit(name, logs, len(every))
    if len(every) < 2:
        return habit
    found = pool([each.value for each in every], [each.sd for each in every])
    habit = replace(habit, mean=found.mean, mean_sd=found.mean_sd, spread=found.spread)
    usual_sd = max(each.usual_sd for each in every)
    if logs < LEAST_LOGS or found.mean_sd >= _KNOWN * usual_sd:
        return habit
    between = found.spread**2
    between = min(between + found.variance_sd, max(between, usual_sd**2))
    return replace(habit, expected_sd=math.sqrt(between + found.mean_sd**2))
