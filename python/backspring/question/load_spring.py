"""Gets the spring over the tang: what it takes to pull it out, or to bring the rear pin home."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any, Literal

from backspring import _core
from backspring.design.arguments import input_faults, length
from backspring.design.design import Design
from backspring.notice import Notice
from backspring.report.result import Reported

CLEARANCE = "0.25 mm"
_FIGURES = (
    "at_mm",
    "force_n",
    "movement_mm",
    "clears_last_mm",
    "peak_stress_mpa",
    "peak_stress_station_mm",
    "yield_margin",
    "yield_margin_low",
    "stop_before_mm",
    "stop_before_low_mm",
    "rear_pin_force_n",
    "middle_pin_force_n",
    "wanted_margin",
)


@dataclass(frozen=True, repr=False)
class SpringLoading(Reported):
    """What it takes to pull the spring out over the tang; numbers are in `result`."""

    _report_by = "load_spring:loading_report"

    design: Design
    result: _core.SpringLoading

    @property
    def status(self) -> Literal["pass", "fail"]:
        """Whether the yield margin is the design's target, or 1 where it states none."""
        return "pass" if self.result.met else "fail"

    @property
    def notices(self) -> tuple[Notice, ...]:
        """What to know besides; nothing."""
        return ()

    def at(self, stations_mm: Iterable[float]) -> list[_core.SpringLoading]:
        """Answer the same for a spring pulled at other stations."""
        clearance = self.result.pull.clearance_mm
        return [
            _core.load_spring(
                self.design.core, _core.PullOut(at_mm=float(each), clearance_mm=clearance)
            )
            for each in stations_mm
        ]

    def to_dict(self) -> dict[str, Any]:
        """Results as plain data, ready for JSON; every name carries its unit."""
        pull, last = self.result.pull, self.result.rear_pin_last
        return {
            "design": self.design.identity(),
            "clearance_mm": pull.clearance_mm,
            **{name: getattr(self.result, name) for name in _FIGURES},
            "rear_pin_last": None
            if last is None
            else {
                "hole_to_go_mm": last.hole_to_go_mm,
                "force_n": last.force_n,
                "lever_mm": pull.lever_mm,
                "lever_force_n": last.lever_force_n,
            },
        }


def load_spring(
    design: Design, at: Any = None, clearance: Any = CLEARANCE, lever: Any = None
) -> SpringLoading:
    """Find the force that pulls the spring out until the tang goes under it, both pins in.

    `at` is the station of the hook, fixture's pin or clamp; without it the nearest behind the open
    tang. `clearance` is left between pad and tang. `lever` is for the other way in, rear pin last:
    from the middle pin to the hand, along a bar clamped to the spring. Lengths are bare numbers in
    mm, or text with a unit as "1 in".
    """
    pull = _core.PullOut(
        at_mm=None if at is None else length(at, "at"),
        clearance_mm=length(clearance, "clearance"),
        lever_mm=None if lever is None else length(lever, "lever"),
    )
    with input_faults():
        return SpringLoading(design, _core.load_spring(design.core, pull))
