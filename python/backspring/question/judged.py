"""What every check tells beside its numbers."""

from __future__ import annotations

from functools import cached_property
from typing import Any, Literal

from backspring.design.design import Design
from backspring.notice import Notice, all_from_core
from backspring.question.targets import TargetResult, target_results
from backspring.report.result import Reported


class Judged(Reported):
    """What every check tells beside its numbers; it does not change."""

    design: Design
    result: Any

    def __setattr__(self, name: str, value: Any) -> None:
        raise AttributeError("a result does not change")

    def __eq__(self, other: object) -> bool:
        return type(other) is type(self) and self._whole == other._whole

    __hash__ = None  # type: ignore[assignment]

    @property
    def _whole(self) -> tuple[Design, Any]:
        return self.design, self.result

    @property
    def steel(self) -> dict[str, Any]:
        """Figures of the steel as used, with their sources and how sure each is."""
        return self.design.steel

    @property
    def notices(self) -> tuple[Notice, ...]:
        """What a maker should know about this design."""
        return (*all_from_core(self.result.notices), *self.design.notices)

    @cached_property
    def targets(self) -> tuple[TargetResult, ...]:
        """Targets the design states and the yield margin, each met or missed."""
        return target_results(self.result.targets)

    @property
    def status(self) -> Literal["pass", "fail"]:
        """Whether all targets are met."""
        return "pass" if all(target.met for target in self.targets) else "fail"
