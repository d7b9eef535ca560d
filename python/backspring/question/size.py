"""Sizes a spring for a pull and a yield margin, proposes a taper, and maps what sizes give.

Sizes are lengths: bare numbers mean mm, or text with a unit as "3/32 in". A pull is a force.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
import numpy.typing as npt

from backspring import _core
from backspring.design.arguments import input_faults, length, quantity, refusal
from backspring.design.design import Design
from backspring.design.write_back import with_core
from backspring.faults import near_match
from backspring.notice import all_from_core
from backspring.question.size_result import Sized, Solution, Taper
from backspring.report.result import Columns

Grid = npt.NDArray[np.float64]
SCALE = "spring.thickness_scale"
# Short names, and the keys they stand for.
KEYS = {
    "thickness": "spring.thickness",
    "thickness_scale": SCALE,
    "preload": "fit.preload",
    "width": "spring.width",
    "pivot": "tang.pivot",
    "length": "spring.length",
}


@dataclass(frozen=True, repr=False, eq=False)
class DesignMap(Columns):
    """Pull and margin over two dimensions: a row a `y`, NaN where a pair does not work."""

    design: Design
    x: str
    y: str
    x_mm: Grid
    y_mm: Grid
    pull_n: Grid
    yield_margin: Grid


def size(
    design: Design,
    *,
    pull: Any = None,
    yield_margin: float | None = None,
    vary: str | Sequence[str] = "thickness",
    bounds: Mapping[str, tuple[Any, Any]] | None = None,
    stock: Mapping[str, Sequence[Any]] | None = None,
) -> Sized:
    """Find sizes that give a peak pull, opening, with a yield margin at least as wanted.

    `vary` names one dimension or two: "thickness" (at the middle pin, the profile in proportion),
    "thickness@7" (the station at 7 mm alone), "preload", "width", "pivot" (pad and dial go with
    it), "length". "thickness_scale" makes the change of "thickness" by its factor, in which its
    bounds and stock are; it is told as the thickness it gives at the middle pin.
    `bounds={"preload": ("0.3 mm", 1.2)}` limits them; left out, about 0.4 to 2.5 times what is,
    0.75 to 1.3 times for pivot and length. `stock={"width": ["3/32 in", "1/8 in"]}` tries sizes
    one by one. With two dimensions the margin is met as well as the pull, and answers with margin
    to spare on a bound follow.

    What cannot be had is a result: `nearest` and `limits` tell why.
    """
    names = [vary] if isinstance(vary, str) else list(vary)
    dimensions = _dimensions(design, names, dict(bounds or {}), dict(stock or {}))
    margin = None if yield_margin is None else quantity(yield_margin, "number", "yield_margin")
    target = _core.SizeTarget(
        pull_n=None if pull is None else quantity(pull, "force", "pull"), yield_margin=margin
    )
    with input_faults():
        result = _core.size(design.core, target, dimensions)
    keys = tuple(name_of(each) for each in dimensions)

    def solution(answer: _core.SizeAnswer) -> Solution:
        sizes = dict(zip(keys, answer.sizes_mm, strict=True))
        made = with_core(design, answer.design)
        return Solution(made, sizes, answer.pull_n, answer.yield_margin)

    return Sized(
        original=design,
        pull_n=target.pull_n,
        yield_margin=margin,
        vary=keys,
        solutions=tuple(solution(each) for each in result.answers),
        nearest=None if result.nearest is None else solution(result.nearest),
        limits=all_from_core(result.limits),
        bounds_mm=_bounds_mm(design, dimensions),
        others=_others(keys),
        stock=tuple(name_of(each) for each in dimensions if each.stock_mm),
    )


def propose_taper(
    design: Design, pull: Any, least_thickness: Any = "1 mm", stations: int = 12
) -> Taper:
    """Propose the thickness profile with the least peak stress that gives a pull.

    All else stays. Nowhere is it thinner than `least_thickness`; `stations` lie between middle pin
    and pad. Raises NoConvergence when no such profile gives the pull.
    """
    pull_n = quantity(pull, "force", "pull")
    least_mm = length(least_thickness, "least_thickness")
    with input_faults():
        result = _core.propose_taper(design.core, pull_n, least_mm, stations)
    return Taper(design, with_core(design, result.design), result)


def design_map(design: Design, sizes: Mapping[str, Any]) -> DesignMap:
    """Work out pull and margin over two dimensions: `{"thickness": array, "preload": array}`.

    The first is x, the second y. Values are in mm, or text with a unit.
    """
    if len(sizes) != 2:
        message = f"must name two dimensions, got {len(sizes)}"
        raise refusal("sizes", message)
    x, y = _dimensions(design, list(sizes), {}, {})
    x_mm, y_mm = (_column(design, values, name) for name, values in sizes.items())
    with input_faults():
        result = _core.design_map(design.core, x, x_mm, y, y_mm)
    return DesignMap(design, name_of(x), name_of(y), x_mm, y_mm, result.pull_n, result.yield_margin)


def name_of(dimension: _core.SizeDimension) -> str:
    """Name a dimension by its key, with its station where it has one."""
    station = dimension.station_mm
    return dimension.key if station is None else f"{dimension.key}@{station:.10g}"


def _bounds_mm(
    design: Design, dimensions: list[_core.SizeDimension]
) -> dict[str, tuple[float, float]]:
    """How far each could go; stock sizes go from the least to the largest."""
    found = {}
    for each in dimensions:
        bounds = _core.size_bounds(design.core, each)
        ends = each.stock_mm or (bounds.low_mm, bounds.high_mm)
        found[name_of(each)] = (min(ends), max(ends))
    return found


def _others(keys: tuple[str, ...]) -> tuple[str, ...]:
    """Short names of what was not varied."""
    varied = {key.partition("@")[0] for key in keys}
    return tuple(name for name, key in KEYS.items() if key not in varied and key != SCALE)


def _dimensions(
    design: Design,
    names: list[str],
    bounds: dict[str, tuple[Any, Any]],
    stock: dict[str, Sequence[Any]],
) -> list[_core.SizeDimension]:
    sized = {_full(name): name for name in names}
    limits = {_full(name): pair for name, pair in bounds.items()}
    sizes = {_full(name): each for name, each in stock.items()}
    if stray := [key for key in limits if key not in sized]:
        raise refusal(f"bounds.{stray[0]}", "is not varied")
    if len(sized) < len(names):
        raise refusal("vary", "names a dimension twice")
    return [
        _dimension(design, key, limits.get(key), sizes.get(key))
        for key in dict.fromkeys([*sized, *sizes])
    ]


def _full(name: str) -> str:
    short, at, station = name.partition("@")
    if short.startswith("blades."):
        # The core knows which of another blade's numbers it can size.
        return name
    key = KEYS.get(short, short)
    if key not in KEYS.values():
        known = [*KEYS, *KEYS.values()]
        near = near_match(short, known)
        hint = f'did you mean "{near}"?' if near else f"known are {', '.join(KEYS)}"
        raise refusal("vary", f'unknown dimension "{name}": {hint}')
    return key + at + station


def _dimension(
    design: Design, name: str, bounds: tuple[Any, Any] | None, stock: Sequence[Any] | None
) -> _core.SizeDimension:
    key, at, station = name.partition("@")
    low, high = (None, None) if bounds is None else _pair(bounds, f"bounds.{name}")
    if stock is not None and not len(stock):
        raise refusal(f"stock.{name}", "needs at least one size")
    return _core.SizeDimension(
        key="spring.thickness" if key == SCALE else key,
        station_mm=length(station, f"vary.{name}") if at else None,
        low_mm=None if low is None else _size_mm(design, key, low, f"bounds.{name}"),
        high_mm=None if high is None else _size_mm(design, key, high, f"bounds.{name}"),
        stock_mm=[_size_mm(design, key, each, f"stock.{name}") for each in stock or ()],
    )


def _size_mm(design: Design, key: str, value: Any, option: str) -> float:
    """Read a size; a factor on the profile is the thickness that it gives at the middle pin."""
    if key != SCALE:
        return length(value, option)
    middle_mm = _core.thickness_mm(design.core.spring.thickness, 0.0)
    return quantity(value, "number", option) * middle_mm


def _pair(bounds: Any, key: str) -> tuple[Any, Any]:
    if not isinstance(bounds, list | tuple) or len(bounds) != 2:
        message = f'must be two sizes, as ("0.3 mm", 1.2), got {bounds!r}'
        raise refusal(key, message)
    return bounds[0], bounds[1]


def _column(design: Design, values: Any, name: str) -> Grid:
    given = values.tolist() if hasattr(values, "tolist") else values
    if isinstance(given, str | bytes) or not hasattr(given, "__iter__"):
        raise refusal(f"sizes.{name}", f"must be a list of sizes, got {values!r}")
    key = _full(name)
    read = [_size_mm(design, key, each, f"sizes.{name}") for each in given]
    return np.array(read, dtype=np.float64)
