"""How sure an answer about one knife is: the question asked again of knives as likely.

The numbers of the likely knife are turned into independent directions, and the question is asked a
standard deviation to either side along each: the root-sum-square of half the differences is the
answer's standard deviation, to first order, with what goes together in the log going together.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping
from typing import TYPE_CHECKING

import numpy as np

from backspring import _core
from backspring.errors import Error
from backspring.fit.likely import likely_design
from backspring.many.spreads import SpreadsTogether, read_spreads

if TYPE_CHECKING:
    from backspring.design.design import Design
    from backspring.fit.knife import Knife

Figures = Mapping[str, float | None]
Ask = Callable[["Design"], Figures]
_YIELD = "spring.yield"
# A direction this much shorter than the longest is rounding.
_NOTHING = 1e-9


def answer_sds(knife: Knife, ask: Ask) -> dict[str, float | None]:
    """Work out the standard deviation of every figure of an answer about the likely knife.

    `ask` takes a design as `knife.design` is one and returns figures by name. A figure that the
    knives to neither side of it have is None.
    """
    design = knife.design
    middle = ask(design)
    squares = dict.fromkeys(middle, 0.0)
    for step in _steps(design, knife.spreads):
        low, high = (_asked(design, step, side, ask) for side in (-1.0, 1.0))
        for name, value in middle.items():
            ends = [each for each in (low.get(name), high.get(name)) if each is not None]
            squares[name] += _half_way(value, ends) ** 2
    return {name: math.sqrt(each) if each < math.inf else None for name, each in squares.items()}


def _half_way(middle: float | None, ends: list[float]) -> float:
    """Return half of what lies between both ends; where one is missing, what one side makes."""
    if middle is None or not ends:
        return math.inf
    return 0.5 * (ends[1] - ends[0]) if len(ends) > 1 else ends[0] - middle


def _steps(design: Design, spreads: SpreadsTogether) -> Iterator[dict[str, float]]:
    """Yield directions that know nothing of one another, each a standard deviation long."""
    values, turns = np.linalg.eigh(spreads.covariance)
    for value, turn in zip(values, turns.T, strict=True):
        if value > _NOTHING**2 * values[-1]:
            yield dict(zip(spreads.keys, (math.sqrt(value) * turn).tolist(), strict=True))
    for each in read_spreads(design, spreads.texts):
        if each.key not in spreads.keys:
            yield {each.key: _core.standard_deviation(each)}


def _asked(design: Design, step: Mapping[str, float], side: float, ask: Ask) -> Figures:
    """Ask a knife that is a step away; what cannot be made or answered has no figures."""
    try:
        return ask(_moved(design, step, side))
    except Error:
        return {}


def _moved(design: Design, step: Mapping[str, float], side: float) -> Design:
    core = design.core
    for key, by in step.items():
        middle = _core.dimension_value(core, key) or 0.0
        core = _core.with_dimension(core, key, middle + side * by)
    moved = likely_design(design, core)
    if _YIELD in step:
        moved = moved.replace(**{_YIELD: _core.dimension_value(core, _YIELD)})
    return moved
