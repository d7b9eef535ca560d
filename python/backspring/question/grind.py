"""Grinds a spring on paper: what a cut does, how deep for a pull, and what is proud of the liners.

Depths and stations are lengths: bare numbers mean mm, or text with a unit as "0.1 mm". Grinding
cannot be undone on steel; here every function leaves the design it is given as it is.
"""

from __future__ import annotations

from typing import Any, get_args

from backspring import _core
from backspring.design.arguments import input_faults, length, quantity, refusal
from backspring.design.content import spring_as_read
from backspring.design.design import Design
from backspring.question.grind_result import Face, Flush, GrindTable


def grind(
    design: Design, *, back: Any = None, belly: Any = None, pad: Any = None, region: Any = None
) -> Design:
    """Return the design with a depth taken off one face: `grind(design, back="0.1 mm")`.

    `region` is two stations; without it the whole face: back from end to end, behind the middle
    pin too, as flush grinding does, belly from the middle pin to the pad, pad the pad. Back and
    belly leave working face and preload; the pad is ground flat to the open face again, the depth
    is meant at the pivot, and preload falls by it. Raises InvalidInput with every fault: no steel
    left, a pin hole opened, a region off the face.
    """
    depths = {"back": back, "belly": belly, "pad": pad}
    given = [face for face, depth in depths.items() if depth is not None]
    if len(given) != 1:
        message = f"give one of back, belly, pad; got {' and '.join(given) or 'none'}"
        raise refusal("", message)
    cut = _cut(given[0], depths[given[0]], region, given[0])
    with input_faults():
        return changed(design, _core.grind(design.core, cut))


def grind_table(
    design: Design, face: Face, to: Any, step: Any = "0.05 mm", region: Any = None
) -> GrindTable:
    """Pull, stress, margin and readings against the depth taken off one face.

    Rows from nothing removed to the depth `to`, a `step` apart; each row is the check of the
    ground design.
    """
    cut = _cut(face, to, region, "to")
    step_mm = length(step, "step")
    with input_faults():
        rows = tuple(_core.grind_table(design.core, cut, step_mm))
        ground = changed(design, _core.grind(design.core, cut))
    held = cut.region or _core.whole_face(design.core, cut.face)
    return GrindTable(design, face, (held.from_mm, held.to_mm), rows, ground)


def grind_depth(design: Design, pull: Any, face: Face = "back", region: Any = None) -> float:
    """Depth to take off a face for a wanted peak pull, opening [mm].

    Raises NoConvergence when grinding cannot get there; its text says why, and which preload, and
    so which rear hole, would.
    """
    pull_n = quantity(pull, "force", "pull")
    with input_faults():
        return _core.depth_for_pull(design.core, _face(face), _region(region), pull_n)


def grind_passes(depth: Any, per_pass: Any = "0.05 mm") -> int:
    """Count the passes that take a depth off; the last may be lighter."""
    with input_faults():
        return _core.grind_passes(length(depth, "depth"), length(per_pass, "pass"))


def grind_flush(design: Design, liners: Any = None, per_pass: Any = "0.05 mm") -> Flush:
    """Take off the back all that stands proud of the liners, blade open and pins in.

    `liners` is their straight back as two stations with heights above the pivot:
    `((-34, 8.3), (36.5, 6.95))`. Without it the liners follow the back as it lies at open with the
    rear pin out, so that proud is what loading lifts. Each pass takes off what is proud but no more
    than `per_pass`, then the thinner spring is solved again, until no more than 0.001 mm stands
    proud. Raises NoConvergence when that would take a pin hole's steel.
    """
    line = None if liners is None else _line(liners)
    pass_mm = length(per_pass, "pass")
    with input_faults():
        result = _core.grind_flush(design.core, line, pass_mm)
    return Flush(design, result, changed(design, result.design))


def changed(design: Design, core: _core.Design) -> Design:
    """Write a ground spring back as a design, to the last bit."""
    if core == design.core:
        return design
    spring = spring_as_read(core, design.blades[0])
    rows = [[station.x_mm, station.thickness_mm] for station in spring.thickness]
    changes: dict[str, Any] = {"spring.thickness": rows}
    if [*core.spring.holes] != [*design.core.spring.holes]:
        changes["spring.pin_hole_offset"] = _offsets(spring)
    if core.fit != design.core.fit:
        changes["fit.preload"] = core.fit.preload_mm
    return design.replace(**changes)


def _offsets(spring: _core.Spring) -> list[float]:
    """Return the offsets at middle and rear pin; where there is no hole it means nothing."""
    places = (0.0, -spring.support.rear_pin_mm)
    held = {hole.center_mm: hole.offset_mm for hole in spring.holes}
    return [held.get(place, 0.0) for place in places]


def _cut(face: Any, depth: Any, region: Any, key: str) -> _core.Cut:
    return _core.Cut(face=_face(face), depth_mm=length(depth, key), region=_region(region))


def _face(face: Any) -> _core.GrindFace:
    if face not in get_args(Face):
        message = f'must be "back", "belly" or "pad", got {face!r}'
        raise refusal("face", message)
    return _core.GrindFace[face]


def _region(region: Any) -> _core.GrindRegion | None:
    if region is None:
        return None
    ends = _pair(region, "region", "two stations, as (5, 30)")
    start, end = (length(each, "region") for each in ends)
    return _core.GrindRegion(from_mm=start, to_mm=end)


def _line(liners: Any) -> _core.LinerLine:
    shape = "two stations with heights, as ((-34, 8.3), (36.5, 6.95))"
    rear, front = (_pair(each, "liners", shape) for each in _pair(liners, "liners", shape))
    return _core.LinerLine(
        rear_mm=length(rear[0], "liners"),
        rear_height_mm=length(rear[1], "liners"),
        front_mm=length(front[0], "liners"),
        front_height_mm=length(front[1], "liners"),
    )


def _pair(value: Any, key: str, shape: str) -> tuple[Any, Any]:
    try:
        first, second = value
    except (TypeError, ValueError):
        raise refusal(key, f"must be {shape}, got {value!r}") from None
    return first, second
