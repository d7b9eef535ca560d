"""Where a pass of the grinder matters, and how results answer to a design's numbers."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from typing import Any, Literal, TypeVar, get_args

import numpy as np
import numpy.typing as npt

from backspring import _core
from backspring.design.arguments import input_faults, length, refusal
from backspring.design.design import Design
from backspring.report.result import Reported

Column = npt.NDArray[np.float64]
Side = Literal["back", "belly"]
Rate = TypeVar("Rate")


@dataclass(frozen=True, repr=False)
class Influence(Reported):
    """Change of each result for 0.1 mm taken off one mm of length, at every station.

    Add what a pass covers: change times millimetres of length. Preload stays as it is.
    """

    _report_by = "influence:influence_report"

    design: Design
    face: Side
    result: _core.Influence

    @property
    def station_mm(self) -> Column:
        """Stations from the rear pin, or the middle pin, to the end."""
        return self.result.station_mm

    @cached_property
    def value(self) -> dict[str, float]:
        """Results as they are, by name."""
        return dict(zip(self.result.figures, self.result.value.tolist(), strict=True))

    @cached_property
    def change(self) -> dict[str, Column]:
        """Changes along the spring, by the name of the result."""
        return dict(zip(self.result.figures, self.result.change_per_pass, strict=True))

    def __getitem__(self, name: str) -> Column:
        return self.change[name]

    def to_dict(self) -> dict[str, Any]:
        """Results as plain data, ready for JSON; changes are per 0.1 mm off one mm of length."""
        return {
            "design": self.design.identity(),
            "face": self.face,
            "station_mm": self.station_mm.tolist(),
            "value": self.value,
            "change": {name: _numbers(column) for name, column in self.change.items()},
        }


def influence(design: Design, face: Side = "back", spacing: Any = "0.5 mm") -> Influence:
    """Find where on the back, or on the belly behind the pad, a pass matters.

    Results are named as in a check: "peak_pull_n", "stiffness_n_per_mm", "travel_peak_stress_mpa",
    "yield_margin", "reading_loaded_half_stop_mm" and so on. The worst station's own thinning shows
    in the stations beside it, the higher the closer they are.
    """
    if face not in get_args(Side):
        raise refusal("face", f'must be "back" or "belly", got {face!r}')
    spacing_mm = length(spacing, "spacing")
    with input_faults():
        return Influence(
            design, face, _core.influence(design.core, _core.GrindFace[face], spacing_mm)
        )


def gradient(design: Design) -> dict[str, dict[str, float | None]]:
    """Find the derivative of each result by each number of a design, by result, then by key.

    `gradient(design)["peak_pull_n"]["fit.preload"]` is in N per mm. None where a result changes
    otherwise as the number falls than as it rises: see `gradient_sides`.
    """
    result = _core.gradient(design.core)
    return _by_name(result, [_numbers(row) for row in result.derivative])


def gradient_sides(design: Design) -> dict[str, dict[str, tuple[float | None, float | None]]]:
    """Find each derivative of `gradient` as the number falls, and as it rises.

    The two are alike where there is one derivative. None where a rule does not let the number go
    there, or the result is lost.
    """
    result = _core.gradient(design.core)
    pairs = zip(result.below, result.above, strict=True)
    return _by_name(
        result, [list(zip(_numbers(low), _numbers(high), strict=True)) for low, high in pairs]
    )


def _numbers(row: Column) -> list[float | None]:
    return [None if np.isnan(each) else float(each) for each in row]


def _by_name(result: _core.Gradient, rows: list[list[Rate]]) -> dict[str, dict[str, Rate]]:
    return {
        figure: dict(zip(result.dimensions, row, strict=True))
        for figure, row in zip(result.figures, rows, strict=True)
    }
