"""`tang.outline`: a tang drawn as a shape of its own, and the convex outline that can touch."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from functools import lru_cache
from typing import Any, NamedTuple

from backspring import _core
from backspring.design.value_faults import refused

Row = tuple[float, float, float]
# Keys that an outline says itself: corners and ends are part of its shape.
SAID = ("corner_radius", "front", "round_end")
# Keys that an outline stands in for, so that a tang can do without them.
STANDS_FOR = ("open", "closed", "corner_radius", "front")
# A hollow less deep is told by nobody.
HOLLOW_MM = 0.01
MOST_ROWS = 500
_MOST_WITH_HOLLOWS = 150
_SAME_MM = 1e-6


class Convex(NamedTuple):
    """The rows of the convex outline, and the deepest hollow that it bridges, if any."""

    rows: tuple[Row, ...]
    hollow_mm: float = 0.0
    at_mm: complex = 0j


def triples(content: Sequence[Sequence[float]]) -> tuple[Row, ...]:
    """Give every row with its bulge."""
    return tuple((row[0], row[1], row[2] if len(row) > 2 else 0.0) for row in content)


def require_sound(content: Sequence[Sequence[float]]) -> None:
    """Raise InvalidInput where rows are no outline round the pivot."""
    faults = [*_faults(triples(content))]
    if faults:
        raise refused(*faults)


@lru_cache(maxsize=64)
def convex(rows: tuple[Row, ...]) -> Convex:
    """Bridge the hollows of a sound outline; what has none stays as it is, to the last bit."""
    if _core.flaw_of(_points(rows)) is _core.OutlineFlaw.none:
        return Convex(rows)
    from backspring.outline.hull import deepest_hollow, hull, rows_of

    arcs = hull(_chain(rows))
    depth, place = deepest_hollow(_chain(rows), arcs)
    return Convex(rows_of(arcs), depth, place)


def convex_numbers(content: Any) -> list[float]:
    """List the numbers of the convex outline as the core takes them."""
    return [number for row in convex(triples(content)).rows for number in row]


def _faults(rows: tuple[Row, ...]) -> Iterator[str]:
    flaw = _core.OutlineFlaw
    for i, (here, there) in enumerate(zip(rows, (*rows[1:], rows[0]), strict=True), start=1):
        if math.hypot(there[0] - here[0], there[1] - here[1]) < _SAME_MM:
            after = "the first, which is not written twice" if i == len(rows) else f"row {i + 1}"
            yield f"row {i} is at the same place as {after}"
            return
    found = _core.flaw_of(_points(rows))
    if found is flaw.not_convex:
        yield from _crooked(rows)
    elif found is flaw.pivot_outside:
        yield "must go round the pivot at [0, 0]"


def _crooked(rows: tuple[Row, ...]) -> Iterator[str]:
    """Tell what is wrong with an outline that is not convex; a hollow is not."""
    from backspring.outline.crossing import crossing_of
    from backspring.outline.loops import place_text
    from backspring.outline.parts import contains

    chain = _chain(rows)
    if len(rows) > _MOST_WITH_HOLLOWS:
        yield f"must have at most {_MOST_WITH_HOLLOWS} rows where it has hollows, got {len(rows)}"
    elif (place := crossing_of(chain)) is not None:
        yield f"crosses itself at {place_text(place)} mm"
    elif chain.area_mm2 <= 0.0:
        yield "goes round clockwise: write the rows the other way round"
    elif not contains(chain, 0j):
        yield "must go round the pivot at [0, 0]"


def _chain(rows: tuple[Row, ...]) -> Any:
    from backspring.outline.chain import Chain, Vertex

    return Chain(tuple(Vertex(complex(u, w), bulge) for u, w, bulge in rows))


def _points(rows: tuple[Row, ...]) -> list[_core.OutlinePoint]:
    return [_core.OutlinePoint(u_mm=u, w_mm=w, bulge=bulge) for u, w, bulge in rows]
