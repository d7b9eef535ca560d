"""What sizing comes to: the designs that answer, or what stands in the way."""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import cached_property
from typing import Any, Literal

from backspring import _core
from backspring.design.design import Design
from backspring.design.file_lines import changed_keys
from backspring.errors import NoConvergence
from backspring.notice import Notice
from backspring.question.check import Check, check_blade
from backspring.question.targets import TargetResult
from backspring.report.result import Reported


@dataclass(frozen=True)
class Solution:
    """One way to size the spring: sizes by their keys, and what they give."""

    design: Design
    sizes_mm: dict[str, float]
    pull_n: float | None
    yield_margin: float

    @cached_property
    def check(self) -> Check:
        """Check of the design."""
        return check_blade(self.design)

    def to_dict(self) -> dict[str, Any]:
        """Results as plain data, ready for JSON."""
        return {
            "sha256": self.design.sha256,
            "sizes_mm": self.sizes_mm,
            "pull_n": self.pull_n,
            "yield_margin": self.yield_margin,
            "thickness_mm": profile(self.design),
        }


@dataclass(frozen=True, repr=False)
class Sized(Reported):
    """All ways found to meet a pull and a margin.

    Without any, `nearest` is the nearest design that can be made and `limits` says what holds it.
    `vary` are the keys that were free, with their station where there is one; `bounds_mm` how far
    each could go, `others` the short names of what could be varied as well, `stock` those of the
    keys that come in sizes.
    """

    _report_by = "size:size_report"

    original: Design
    pull_n: float | None
    yield_margin: float | None
    vary: tuple[str, ...]
    solutions: tuple[Solution, ...]
    nearest: Solution | None = None
    limits: tuple[Notice, ...] = ()
    bounds_mm: dict[str, tuple[float, float]] = field(default_factory=dict)
    others: tuple[str, ...] = ()
    stock: tuple[str, ...] = ()

    @property
    def found(self) -> bool:
        """Whether any design answers."""
        return bool(self.solutions)

    @property
    def design(self) -> Design:
        """Design of the first solution; raises NoConvergence, which tells why, without one."""
        return self._first().design

    @property
    def check(self) -> Check:
        """Check of the first solution; raises NoConvergence without one."""
        return self._first().check

    @property
    def targets(self) -> tuple[TargetResult, ...]:
        """Pull and yield margin of the first solution against the design's targets.

        What is wanted here takes the place of the file's target and is met.
        """
        wanted = {"pull": self.pull_n, "yield_margin": self.yield_margin}
        judged = self.check.targets
        return tuple(each for each in judged if each.name in wanted and wanted[each.name] is None)

    @property
    def status(self) -> Literal["pass", "fail"]:
        """Whether the first solution meets them; without one nothing is met."""
        return "pass" if self.found and all(each.met for each in self.targets) else "fail"

    def _first(self) -> Solution:
        if self.solutions:
            return self.solutions[0]
        raise NoConvergence(self.laid_out().headline)

    def to_dict(self) -> dict[str, Any]:
        """Results as plain data, ready for JSON; every name carries its unit."""
        return {
            "design": self.original.identity(),
            "pull_n": self.pull_n,
            "yield_margin": self.yield_margin,
            "vary": list(self.vary),
            "bounds_mm": {key: list(pair) for key, pair in self.bounds_mm.items()},
            "could_vary": list(self.others),
            "solutions": [self._told(each) for each in self.solutions],
            "targets": [each._asdict() for each in self.targets] if self.found else [],
            "nearest": None if self.nearest is None else self._told(self.nearest),
            "limits": [limit.message for limit in self.limits],
        }

    def _told(self, solution: Solution) -> dict[str, Any]:
        changes = changed_keys(solution.design, self.original)
        return {**solution.to_dict(), "changes": changes}


@dataclass(frozen=True, repr=False)
class Taper(Reported):
    """A thickness profile with the least peak stress that gives a pull."""

    _report_by = "size:taper_report"

    original: Design
    design: Design
    result: _core.Taper

    @property
    def pull_n(self) -> float:
        """Peak pull, opening [N]."""
        return self.result.pull_n

    @property
    def peak_stress_mpa(self) -> float:
        """Worst stress of the travel [MPa]."""
        return self.result.peak_stress_mpa

    @property
    def yield_margin(self) -> float:
        """Margin at the worst of the travel."""
        return self.result.yield_margin

    @cached_property
    def targets(self) -> tuple[TargetResult, ...]:
        """The yield margin against the design's target, or against 1."""
        return tuple(
            each for each in check_blade(self.design).targets if each.name == "yield_margin"
        )

    @property
    def status(self) -> Literal["pass", "fail"]:
        """Whether it is met."""
        return "pass" if all(each.met for each in self.targets) else "fail"

    def to_dict(self) -> dict[str, Any]:
        """Results as plain data, ready for JSON."""
        return {
            "design": self.original.identity(),
            "sha256": self.design.sha256,
            "changes": changed_keys(self.design, self.original),
            "thickness_mm": profile(self.design),
            "pull_n": self.pull_n,
            "peak_stress_mpa": self.peak_stress_mpa,
            "yield_margin": self.yield_margin,
            "targets": [each._asdict() for each in self.targets],
        }


def profile(design: Design) -> list[list[float]]:
    """Rows of station and thickness, as a design file has them [mm]."""
    spring = design.as_in_file(design.core).spring
    return [[each.x_mm, each.thickness_mm] for each in spring.thickness]
