"""Closed loop of bench fittings: hidden knives fitted from what the log of each plans.

Each knife is drawn from what is expected of any. It is read with the rear pin out, ground as the
plan's next pass says, but by a fifth of it more or less and with no depth logged, read again, from
the second trip on with both pins in, until there is nothing to grind. With a kick the blade's tip
is wanted where it stood: its height is measured after every trip. `python bench_fittings.py 500`
prints how it went.
"""

from __future__ import annotations

import sys
import tempfile
from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path
from statistics import median

import numpy as np

import backspring as bs
from backspring import _core
from backspring.fit.log_file import write_log
from hidden_knife import HiddenKnife

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"
HERON, OSPREY, WREN = (bs.load(DESIGNS / f"{name}.toml") for name in ("heron", "osprey", "wren"))
TARGET_MM = 0.0254
SCATTER = 0.2
MOST_TRIPS = 20
SIGMAS = 2.0
LEAST_MM = 0.001
PROUD_MM, TIP_MM = 0.025, 0.3
# What a depth gauge on one blade repeats to: common practice, no source.
LOOK_MM = 0.05
MOST_READ_AGAIN = 2


@dataclass(frozen=True)
class Pass:
    """One trip to the grinder: how far each reading truly lies above the target then, how sure of
    it the plan was, and how far the depths' scatter moves it [mm]."""

    above_mm: np.ndarray
    sd_mm: float
    scatter_mm: np.ndarray

    @property
    def low_mm(self) -> float:
        """How far the lower reading lies above the target."""
        return float(self.above_mm.min())

    @property
    def low(self) -> bool:
        """Whether it takes a reading below the target beyond two standard deviations of it."""
        sd_mm = np.hypot(self.sd_mm, self.scatter_mm)
        return bool(np.any((self.above_mm < -SIGMAS * sd_mm) & self._moved))

    @property
    def below_reading(self) -> bool:
        """Whether it does by what the plan knew, as if the grinder had taken what was aimed at."""
        return bool(np.any((self.above_mm < -SIGMAS * self.sd_mm) & self._moved))

    @property
    def _moved(self) -> np.ndarray:
        """Which readings it was to move: another is where an earlier pass left it."""
        return self.scatter_mm > SCATTER * LEAST_MM


@dataclass
class Fitting:
    """How one fitting went."""

    trips: list[Pass] = field(default_factory=list)
    proud_mm: float = 0.0
    tip_moved_mm: float = 0.0
    done: bool = False
    read_again: int = 0
    refused: str = ""
    same_again: bool = True

    @property
    def good(self) -> bool:
        """Whether it ended as a maker wants it."""
        if not self.done or not self.same_again or any(each.low for each in self.trips):
            return False
        return self.proud_mm <= PROUD_MM and abs(self.tip_moved_mm) <= TIP_MM


def fitted(design: bs.Design, seed: tuple[int, int]) -> Fitting:
    """Fit one hidden knife."""
    hidden, knife = HiddenKnife(design, np.random.default_rng(seed)), bs.Knife(design)
    went, tip_mm = Fitting(), _tip_mm(hidden)
    try:
        _fit(hidden, knife, went)
    except (bs.InvalidInput, bs.NoConvergence) as error:
        went.refused = str(error)
    went.proud_mm = float(_above_mm(hidden).max())
    went.tip_moved_mm = _tip_mm(hidden) - tip_mm
    went.same_again = went.refused != "" or _same_again(knife)
    return went


def _fit(hidden: HiddenKnife, knife: bs.Knife, went: Fitting) -> None:
    kicked, pins_in = hidden.drawn.core.tang.kick is not None, False
    knife.measure(**hidden.readings("unloaded"), **_look(hidden))
    while len(went.trips) < MOST_TRIPS:
        plan = knife.plan(tip="level" if kicked else None)
        if plan.done and pins_in:
            went.done = True
            return
        if plan.done:
            pins_in = True
            _read(hidden, knife, went, "loaded", [])
            continue
        steps = [step for step in plan.steps if step.pass_number == 1]
        for step in steps:
            off_mm = step.remove_mm * max(hidden.rng.normal(1.0, SCATTER), 0.0)
            hidden.ground(step.face.name, off_mm)
        sd_mm = plan.rules.repeatability_mm
        went.trips.append(Pass(_above_mm(hidden), sd_mm, _scatter_mm(plan, len(steps))))
        pins_in = pins_in or len(went.trips) > 1
        _read(hidden, knife, went, "loaded" if pins_in else "unloaded", steps)


def _read(
    hidden: HiddenKnife, knife: bs.Knife, went: Fitting, state: str, ground: list[_core.FitStep]
) -> None:
    """Log what was ground and what the dial shows then; a reading that is refused is read again."""
    for again in range(MOST_READ_AGAIN + 1):
        try:
            with knife.together():
                for step in ground:
                    knife.ground(step.face.name)
                knife.measure(**hidden.readings(state), **_look(hidden))
            return
        except bs.InvalidInput:
            if again == MOST_READ_AGAIN:
                raise
            went.read_again += 1


def _scatter_mm(plan: bs.FitPlan, count: int) -> np.ndarray:
    """How far the depths' scatter moves each reading: as the steps do, each by itself."""
    result = plan.result
    shown = [(result.half_stop_loaded_mm, result.closed_loaded_mm)]
    shown += [(each.half_stop_loaded_mm, each.closed_loaded_mm) for each in plan.steps[:count]]
    rows = np.array([row if row[0] is not None else row[1:] for row in shown])
    return SCATTER * np.sqrt(np.sum(np.diff(rows, axis=0) ** 2, axis=0))


def _look(hidden: HiddenKnife) -> dict[str, float]:
    """Measure the tip's height; not where nothing but the closed reading moves it."""
    if hidden.drawn.core.tang.kick is None:
        return {}
    return {"tip_height": hidden.rng.normal(_tip_mm(hidden), LOOK_MM)}


def _above_mm(hidden: HiddenKnife) -> np.ndarray:
    shown = hidden.true_readings()
    return (shown if hidden.model.square else shown[1:]) - TARGET_MM


def _tip_mm(hidden: HiddenKnife) -> float:
    """Height of the tip, that a kick sets apart from the readings; 0 without one."""
    if hidden.drawn.core.tang.kick is None:
        return 0.0
    found = _core.closed_figures(hidden.design(), 0.0, hidden.model.bench(hidden.causes))
    return float(found.tip_mm or 0.0)


def _same_again(knife: bs.Knife) -> bool:
    """Ask another log with the same entries, read from a file, the same."""
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "log.csv"
        write_log(path, knife.drawn, knife.entries)
        again = bs.Knife(knife.drawn, path)
    return again.to_dict() == knife.to_dict() and again.plan().to_dict() == knife.plan().to_dict()


def table(design: bs.Design, count: int, seed: int, say: Callable[[str], None] = print) -> bool:
    """Print how so many fittings of one design went; returns whether all went well."""
    went = [fitted(design, (seed, number)) for number in range(count)]
    trips = [each for fitting in went for each in fitting.trips]
    passes = [len(each.trips) for each in went]
    rows = {
        "as wanted": sum(each.good for each in went),
        "refused, or not done": sum(not each.done for each in went),
        "readings refused and read again": sum(each.read_again for each in went),
        "passes, median": median(passes),
        "passes, most": max(passes),
        "passes in all": len(trips),
        "of these below the target": sum(each.low_mm < 0.0 for each in trips),
        "beyond two sd of what was known": sum(each.below_reading for each in trips),
        "beyond two sd with the depths' scatter": sum(each.low for each in trips),
        "lowest of all above the target [um]": 1000.0 * min(each.low_mm for each in trips),
        "ends proud of the target by at most [um]": 1000.0 * max(each.proud_mm for each in went),
        "tip moved by at most [mm]": max(abs(each.tip_moved_mm) for each in went),
        "answers changed when asked again": sum(not each.same_again for each in went),
    }
    say(f"{design.name}: {count} fittings")
    for name, value in rows.items():
        say(f"  {name:<42}{value:>10.4g}")
    for number, each in enumerate(went):
        if not each.good:
            say(f"  number {number}: {each}")
    return all(each.good for each in went)


def main(count: int) -> None:
    """Print a table a design, of all fittings shared out."""
    for place, drawn in enumerate((HERON, OSPREY, WREN)):
        table(drawn, count // 3 + (place < count % 3), 41 + place)


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 500)
