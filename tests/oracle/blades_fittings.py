"""Closed loop of fittings of two blades, one at each end of a spring, that disturb each other.

Springs on one pin and on two are drawn, every tang left 0.05 to 0.4 mm proud of what the hidden
knife needs. The hidden spring is 3 % stiffer than the drawing says; a dial that scatters by
0.0005 mm is read ten times at every position. Each round all blades are read, the plan's next pass
is ground, until there is nothing to grind. `python blades_fittings.py 200` prints how it went.
"""

from __future__ import annotations

import sys
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from statistics import median
from typing import Any

import numpy as np

import backspring as bs
from backspring import _core
from backspring.core_record import changed

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"
TURNSTONE = bs.load(DESIGNS / "turnstone.toml")
TARGET_MM = 0.0254
DIAL_MM, READ = 0.0005, 10
STIFFER = 1.03
PROUD_MM = (0.05, 0.4)
MOST_PASSES = 20


@dataclass(frozen=True)
class Fitting:
    """How one went: every reading above the target, in every case of the other blade [mm]."""

    passes: int
    done: bool
    lowest_mm: float
    ends_mm: tuple[float, float]
    started_mm: float

    @property
    def good(self) -> bool:
        """Whether it ended within 0.002 mm, and no pass went below the target."""
        return self.done and self.lowest_mm >= 0.0 and self.ends_mm[1] <= 0.002


def drawn_design(rng: np.random.Generator, pins: int) -> bs.Design:
    """Draw a spring with a blade at each end."""
    scale, span = rng.uniform(0.92, 1.08), rng.uniform(12.0, 24.0)
    stations = [[s.x_mm, scale * s.thickness_mm] for s in TURNSTONE.core.spring.thickness]
    changes: dict[str, Any] = {
        "fit.preload": rng.uniform(0.6, 0.9),
        "blades.pen.fit.preload": rng.uniform(0.5, 0.8),
        "spring.width": rng.uniform(1.8, 2.4),
        "tang.corner_radius": rng.uniform(0.7, 1.2),
    }
    if pins == 2:
        behind = [[x - span, t] for x, t in stations if x < 0.0]
        ahead = [[x, t] for x, t in stations if x >= 0.0]
        middle = ahead[0][1]
        stations = [*behind, [-span, middle], *ahead]
        changes |= {"spring.support": "two-pins", "spring.rear_pin": span}
    return TURNSTONE.replace(**{"spring.thickness": stations, **changes})


def hidden_knife(design: bs.Design, rng: np.random.Generator) -> _core.Design:
    """Make the knife: its spring stiffer, every face proud of where it has to end."""
    core = design.core
    modulus = STIFFER * core.spring.elastic.youngs_modulus_mpa
    spring = changed(core.spring, elastic=changed(core.spring.elastic, youngs_modulus_mpa=modulus))
    knife = changed(core, spring=spring)
    blades = []
    for blade, left in zip(core.blades, _core.allowances(knife, TARGET_MM), strict=True):
        tang = changed(left.tang, closed_mm=left.tang.closed_mm + rng.uniform(*PROUD_MM))
        if tang.half_stop_mm is not None:
            tang = changed(tang, half_stop_mm=tang.half_stop_mm + rng.uniform(*PROUD_MM))
        blades.append(changed(blade, tang=tang))
    return changed(knife, blades=blades)


def above_mm(knife: _core.Design) -> list[float]:
    """All loaded readings of all blades in every case, above the target."""
    return [
        reading - TARGET_MM
        for place in range(len(knife.blades))
        for case in _core.cases(_core.seen_from(knife, place))
        for reading in _values(_core.readings_in(_core.FitState.loaded, case)).values()
    ]


def _values(shown: _core.Readings) -> dict[str, float]:
    pair = {"half_stop": shown.half_stop_mm, "closed": shown.closed_mm}
    return {name: value for name, value in pair.items() if value is not None}


def read(knife: _core.Design, rng: np.random.Generator) -> dict[str, dict[str, list[float]]]:
    """Read every blade as a maker does."""
    found: dict[str, dict[str, list[float]]] = {}
    for place, blade in enumerate(knife.blades):
        shown = _core.readings_in(_core.FitState.loaded, _core.seen_from(knife, place))
        found[blade.name] = {
            name: list(value + rng.normal(0.0, DIAL_MM, READ))
            for name, value in _values(shown).items()
        }
    return found


def ground(knife: _core.Design, steps: list[_core.FitStep]) -> _core.Design:
    """Grind some steps."""
    names = [blade.name for blade in knife.blades]
    for step in steps:
        place = names.index(step.blade)
        depths = _core.FaceDepths(**{f"{step.face.name}_mm": step.remove_mm})
        own = changed(knife, blades=[knife.blades[place]])
        blades = list(knife.blades)
        blades[place] = _core.take_off(own, depths).blades[0]
        knife = changed(knife, blades=blades)
    return knife


def fitting(seed: int, pins: int) -> Fitting:
    """Fit one drawn knife to the end."""
    rng = np.random.default_rng([seed, pins])
    design = drawn_design(rng, pins)
    knife = hidden_knife(design, rng)
    started, lowest = max(above_mm(knife)), min(above_mm(knife))
    for passes in range(MOST_PASSES):  # noqa: B007 - counted for the result
        plan = bs.fit_plan(design, read(knife, rng), state="loaded", repeatability=DIAL_MM)
        if plan.done:
            break
        knife = ground(knife, [step for step in plan.steps if step.pass_number == 1])
        lowest = min(lowest, *above_mm(knife))
    ends = above_mm(knife)
    return Fitting(passes, plan.done, lowest, (min(ends), max(ends)), started)


def fittings(count: int) -> Iterator[tuple[int, list[Fitting]]]:
    """Fit so many on one pin, and as many on two."""
    for pins in (1, 2):
        yield pins, [fitting(seed, pins) for seed in range(count)]


def table(all_fitted: dict[int, list[Fitting]]) -> str:
    """How they went."""
    rows = ["pins  knives  good  passes  most  lowest of any pass  ends lowest  ends highest [mm]"]
    for pins, fitted in all_fitted.items():
        passes = [each.passes for each in fitted]
        rows.append(
            f"{pins:4d}  {len(fitted):6d}  {sum(each.good for each in fitted):4d}"
            f"  {median(passes):6.0f}  {max(passes):4d}"
            f"  {min(each.lowest_mm for each in fitted):+18.5f}"
            f"  {min(each.ends_mm[0] for each in fitted):+11.5f}"
            f"  {max(each.ends_mm[1] for each in fitted):+17.5f}"
        )
    return "\n".join(rows)


if __name__ == "__main__":
    print(table(dict(fittings(int(sys.argv[1]) // 2))))
