"""The same pull off every face of a spring, and what each costs."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from backspring import _core
from backspring.design.arguments import input_faults, quantity
from backspring.design.design import Design
from backspring.notice import from_core
from backspring.question.grind_result import row_data
from backspring.report.result import Reported


@dataclass(frozen=True, repr=False)
class GrindWays(Reported):
    """Places to take steel off for one pull; where `after` is None, `refused` says why."""

    _report_by = "grind_ways:ways_report"

    design: Design
    pull_n: float
    ways: tuple[_core.GrindWay, ...]

    def to_dict(self) -> dict[str, Any]:
        """Results as plain data, ready for JSON; every name carries its unit."""
        return {
            "design": self.design.identity(),
            "pull_n": self.pull_n,
            "ways": [_way(each) for each in self.ways],
        }


def grind_ways(design: Design, pull: Any) -> GrindWays:
    """Compare what a wanted peak pull costs off every face: depth, margin, readings, targets.

    Back whole, back ahead of the middle pin, back ahead of a third of the way to the pivot, belly,
    pad. A face that cannot give the pull is listed with the reason.
    """
    pull_n = quantity(pull, "force", "pull")
    with input_faults():
        return GrindWays(design, pull_n, tuple(_core.ways_to_pull(design.core, pull_n)))


def _way(way: _core.GrindWay) -> dict[str, Any]:
    place = {"face": way.face.name, "region_mm": [way.region.from_mm, way.region.to_mm]}
    if way.after is None:
        return place | {"refused": None if way.refused is None else from_core(way.refused).message}
    return place | row_data(way.after)
