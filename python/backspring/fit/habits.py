"""A shop's own habits: what its knives have in common beyond common practice."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import asdict, dataclass, replace
from pathlib import Path
from typing import Any

from backspring.fit.priors import DEPTH_SHARE, Prior
from backspring.notice import Notice
from backspring.report.result import Reported

# From fewer the spread between knives is a guess.
LEAST_LOGS = 5
# The unknowns that are a knife's, and how a habit is named after them.
HABIT_OF = {
    "pad_tilt_rad": "pad_tilt_rad",
    "pivot_play_mm": "pivot_play_mm",
    "friction": "friction",
    "youngs_modulus_mpa": "youngs_modulus_share",
}
DEPTH = "depth_share"
HABITS = (*HABIT_OF.values(), DEPTH)


@dataclass(frozen=True, slots=True)
class Habit:
    """What a shop's logs say of one thing; mean and spread are None where they do not tell.

    `spread` is the standard deviation between knives, for depths between trips; `told_by` counts
    these, and `logs` the logs they are of. What the next knife is expected to have is at `mean`,
    good to `expected_sd`; None where the logs do not tell it, and common practice stays.
    """

    name: str
    logs: int
    told_by: int
    mean: float | None = None
    mean_sd: float | None = None
    spread: float | None = None
    expected_sd: float | None = None

    @property
    def known(self) -> bool:
        """Whether it takes the place of common practice."""
        return self.expected_sd is not None


@dataclass(frozen=True, slots=True)
class LeftOut:
    """A file that counts for nothing, and why."""

    file: str
    reason: str


@dataclass(frozen=True, repr=False)
class ShopHabits(Reported):
    """What the knives of one shop have in common, by name, from all its logs.

    Tilt of the pad, play of the pivot, friction, Young's modulus against the steel's own, and how
    far a depth that was stated is off, each one normal spread between knives. Given to a Knife they
    take the place of common practice. `left_out` are the logs that could not be read or estimated.
    """

    _report_by = "habits:habits_report"

    folder: str
    files: tuple[Path, ...]
    habits: dict[str, Habit]
    left_out: tuple[LeftOut, ...]

    def __getitem__(self, name: str) -> Habit:
        """Return a habit by its name."""
        return self.habits[name]

    @property
    def enough(self) -> bool:
        """Whether there are logs enough to tell a habit."""
        return len(self.files) >= LEAST_LOGS

    @property
    def notices(self) -> tuple[Notice, ...]:
        """What to know before relying on them."""
        found = []
        if not self.enough:
            found.append(Notice("few-logs", {"count": len(self.files), "least": LEAST_LOGS}))
        if self.left_out:
            found.append(Notice("logs-left-out", {"count": len(self.left_out)}))
        return tuple(found)

    def expect(
        self, priors: Sequence[Prior], depth_share: float, stated: Collection[str] = ()
    ) -> list[Prior]:
        """Put what is known of the shop in the place of common practice.

        `depth_share` is what a stated depth counts as good to; unknowns that the design itself
        speaks of are left as `stated`.
        """
        return [each if each.name in stated else self._expect(each, depth_share) for each in priors]

    def to_dict(self) -> dict[str, Any]:
        """Results as plain data, ready for JSON."""
        return {
            "folder": self.folder,
            "logs": len(self.files),
            "least_logs": LEAST_LOGS,
            "habits": {name: asdict(each) for name, each in self.habits.items()},
            "left_out": [asdict(each) for each in self.left_out],
        }

    def _expect(self, prior: Prior, depth_share: float) -> Prior:
        stated = prior.name.startswith("depth_") and not prior.broad
        habit = self.habits.get(DEPTH if stated else HABIT_OF.get(prior.name, ""))
        if habit is None or habit.mean is None or habit.expected_sd is None:
            return prior
        if stated:
            return _depth(prior, habit.mean, habit.expected_sd, depth_share)
        expected, sd = in_unknown(habit.mean, habit.expected_sd, prior)
        return replace(prior, expected=expected, sd=sd)


def in_unknown(mean: float, sd: float, prior: Prior) -> tuple[float, float]:
    """Turn a habit into what is expected of its unknown."""
    scale, drawn = habit_unit(prior)
    return scale * mean - drawn, scale * sd


def habit_unit(prior: Prior) -> tuple[float, float]:
    """Say what one of a habit is in its unknown's unit, and what of it the drawing has.

    A modulus is pooled as a share of the steel's own, friction as it is and not against the
    drawing.
    """
    if prior.name == "youngs_modulus_mpa":
        return prior.drawn, 0.0
    return 1.0, prior.drawn if prior.name == "friction" else 0.0


def _depth(prior: Prior, mean: float, share: float, depth_share: float) -> Prior:
    stated = prior.expected
    # Where readings belie the depths stated, these are good to no less than that says.
    if depth_share > DEPTH_SHARE:
        share = max(share, depth_share)
    sd = prior.sd + (share - depth_share) * stated
    return replace(prior, expected=(1.0 + mean) * stated, sd=sd)
