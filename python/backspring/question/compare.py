"""Compares two designs: every figure, both pull curves, and which dimension causes how much."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from typing import Literal

from backspring.design.arguments import refusal
from backspring.design.design import Design
from backspring.question.causes import Cause, find_causes
from backspring.question.check import BladesCheck, Check, check, check_blade
from backspring.question.compare_figures import Figures, feel_figures, figures_of
from backspring.question.path import Path
from backspring.question.targets import TargetResult
from backspring.report.result import Reported


@dataclass(frozen=True, slots=True)
class FigureChange:
    """A figure of both designs. `share` is the change over what the first has.

    None where a design does not have the figure.
    """

    name: str
    a: float | None
    b: float | None

    @property
    def change(self) -> float | None:
        """What the second has more."""
        return None if self.a is None or self.b is None else self.b - self.a

    @property
    def share(self) -> float | None:
        """The change over what the first has; None where that is nothing."""
        return None if self.change is None or not self.a else self.change / abs(self.a)


@dataclass(frozen=True, slots=True)
class TargetChange:
    """One target in both designs; None where a design does not state it."""

    name: str
    a: TargetResult | None
    b: TargetResult | None

    @property
    def lost(self) -> bool:
        """Whether the first met it and the second misses it."""
        return bool(self.a and self.a.met and self.b and not self.b.met)


class Compared(Reported):
    """What comparisons of one blade and of several have in common."""

    a: Check | BladesCheck
    b: Check | BladesCheck

    @property
    def names(self) -> tuple[str, str]:
        """Names of both designs, told apart where they are alike."""
        one, other = self.a.design.name, self.b.design.name
        return (one, other) if one != other else (f"{one} (A)", f"{other} (B)")

    @cached_property
    def targets(self) -> tuple[TargetChange, ...]:
        """Targets that either design states, each as both of them do."""
        one, other = ({each.name: each for each in c.targets} for c in (self.a, self.b))
        return tuple(
            TargetChange(name, one.get(name), other.get(name)) for name in {**one, **other}
        )

    @property
    def status(self) -> Literal["pass", "fail"]:
        """Whether the second misses nothing that the first met."""
        only_targets = all(target.met for target in self.b.targets)
        broken = self.b.status == "fail" and only_targets and self.a.status == "pass"
        return "fail" if broken or any(each.lost for each in self.targets) else "pass"


@dataclass(frozen=True, repr=False)
class Comparison(Compared):
    """One blade of two designs: what changes from `a` to `b`, and by what.

    Of a blade that shares its spring: with all others closed.
    """

    _report_by = "compare:comparison_report"
    _data_by = "compare_data:comparison_data"

    a: Check
    b: Check

    @cached_property
    def figures(self) -> tuple[FigureChange, ...]:
        """Every figure that either has, as both have it."""
        one, other = (_of(c) | feel_figures(c.feel, c.strokes) for c in (self.a, self.b))
        return tuple(
            FigureChange(name, one.get(name), other.get(name)) for name in {**one, **other}
        )

    @cached_property
    def causes(self) -> tuple[Cause, ...]:
        """Which dimension causes how much of each figure's change.

        Their sum over all causes is the change, to rounding. Left out: what is felt, and where on
        the way or along the spring a peak lies.
        """
        path = Path(self.a.design, self.b.design)
        return find_causes(path, _of(self.a), _of(self.b))

    def __getitem__(self, name: str) -> FigureChange:
        for each in self.figures:
            if each.name == name:
                return each
        raise KeyError(name)

    def caused(self, name: str) -> dict[str, float]:
        """Return each cause's part of the change of one figure, by key."""
        return {
            each.key or each.sort: each.changes[name]
            for each in self.causes
            if name in each.changes
        }


@dataclass(frozen=True, repr=False)
class BladesComparison(Compared):
    """Two designs with several blades: `comparison.blades["pen"]` is that blade's.

    Targets are the worst of all blades. `only` names blades that one design alone has.
    """

    _report_by = "compare:blades_comparison_report"
    _data_by = "compare_data:blades_comparison_data"

    a: Check | BladesCheck
    b: Check | BladesCheck
    blades: dict[str, Comparison]
    only: tuple[str, ...]


def compare(a: Design, b: Design) -> Comparison | BladesComparison:
    """Compare two designs: figures, targets and causes of the change from `a` to `b`.

    `b` may be the same design changed: `compare(design, grind(design, back="0.1 mm"))`. Which
    dimension causes how much is the gradient integrated along the straight way from one to the
    other; the parts add up to the change. What differs in kind, as a half-stop against none, is one
    step. Designs with several blades are compared blade by blade; one of them
    with another blade by `seen_from()`. Raises InvalidInput when no blade of both has one name.
    """
    if not (a.of_all_blades or b.of_all_blades):
        return Comparison(check_blade(a), check_blade(b))
    names = [name for name in _blades(a) if name in _blades(b)]
    if not names:
        known = " and ".join(", ".join(_blades(each)) for each in (a, b))
        raise refusal("blades", f"have no name in common: {known}; choose one of several")
    blades = {
        name: Comparison(check_blade(_seen(a, name)), check_blade(_seen(b, name))) for name in names
    }
    only = tuple(n for n in dict.fromkeys((*_blades(a), *_blades(b))) if n not in names)
    return BladesComparison(check(a), check(b), blades, only)


def _blades(design: Design) -> tuple[str, ...]:
    return design.blades if design.of_all_blades else (design.blade,)


def _seen(design: Design, name: str) -> Design:
    return design.seen_from(name) if len(design.blades) > 1 else design


def _of(check: Check) -> Figures:
    return figures_of(check.result)
