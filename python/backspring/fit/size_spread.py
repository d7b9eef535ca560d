"""How sure sizes are that were found for one knife."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from backspring.fit.answer_spread import answer_sds
from backspring.question.size_result import Sized, Solution, Taper, profile

if TYPE_CHECKING:
    from backspring.design.design import Design
    from backspring.fit.knife import Knife

_PULL, _MARGIN, _STRESS = "pull", "margin", "stress"


@dataclass(frozen=True)
class SolutionSds:
    """Standard deviations of a solution: sizes by key, and what it gives when sized so.

    A size from stock, or one at the end of its way, stays as it is: 0.
    """

    sizes_mm: dict[str, float | None]
    pull_n: float | None
    yield_margin: float | None

    def to_dict(self) -> dict[str, Any]:
        """Return them as plain data, ready for JSON."""
        return {
            "sizes_sd_mm": self.sizes_mm,
            "pull_sd_n": self.pull_n,
            "yield_margin_sd": self.yield_margin,
        }


@dataclass(frozen=True)
class TaperSds:
    """Standard deviations of a taper: thickness by row of its profile, stress and margin."""

    thickness_mm: tuple[float | None, ...]
    peak_stress_mpa: float | None
    yield_margin: float | None

    def to_dict(self) -> dict[str, Any]:
        """Return them as plain data, ready for JSON."""
        return {
            "thickness_sd_mm": list(self.thickness_mm),
            "peak_stress_sd_mpa": self.peak_stress_mpa,
            "yield_margin_sd": self.yield_margin,
        }


def solution_sds(knife: Knife, sized: Sized, ask: Callable[[Design], Sized]) -> list[SolutionSds]:
    """Work out how sure every solution is; `ask` is the question that found them."""

    def figures(design: Design) -> dict[str, float | None]:
        found = ask(design).solutions
        rows: dict[str, float | None] = {}
        for place, wanted in enumerate(sized.solutions):
            same = _same(wanted, found, sized.stock)
            if same is not None:
                told = {_PULL: same.pull_n, _MARGIN: same.yield_margin, **same.sizes_mm}
                rows |= {f"{place} {name}": value for name, value in told.items()}
        return rows

    sds = answer_sds(knife, figures)

    def told(place: int, name: str) -> float | None:
        return sds.get(f"{place} {name}")

    return [
        SolutionSds(
            {key: told(place, key) for key in each.sizes_mm},
            told(place, _PULL),
            told(place, _MARGIN),
        )
        for place, each in enumerate(sized.solutions)
    ]


def _same(wanted: Solution, found: tuple[Solution, ...], stock: tuple[str, ...]) -> Solution | None:
    """Find the solution of a like knife that is this one: of the same stock, and the nearest."""
    alike = [
        each for each in found if all(each.sizes_mm[key] == wanted.sizes_mm[key] for key in stock)
    ]

    def away(each: Solution) -> float:
        sizes = wanted.sizes_mm.items()
        return sum(math.log(each.sizes_mm[key] / size) ** 2 for key, size in sizes)

    return min(alike, key=away, default=None)


def taper_sds(knife: Knife, ask: Callable[[Design], Taper]) -> TaperSds:
    """Work out how sure a taper is; `ask` is the question that found it."""

    def figures(design: Design) -> dict[str, float | None]:
        taper = ask(design)
        rows = {f"{place}": thick for place, (_, thick) in enumerate(profile(taper.design))}
        return {_STRESS: taper.peak_stress_mpa, _MARGIN: taper.yield_margin, **rows}

    sds = answer_sds(knife, figures)
    stress, margin, *rows = sds.values()
    return TaperSds(tuple(rows), stress, margin)
