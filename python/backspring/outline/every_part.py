"""Every part of a joint as it is cut: one spring, the tang of each blade, the liner's holes."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from backspring import _core
from backspring.design.design import Design
from backspring.outline.chain import Chain
from backspring.outline.drawn import draw, spring_chain, spring_hole, tang_chain, tang_hole
from backspring.outline.part_outlines import Hole

_SAME_MM = 1e-6
# Drawn in the liner where the design states no hole.
_LINER_PIN_MM = 2.0


@dataclass(frozen=True, slots=True)
class TangPart:
    """A blade's tang about its pivot, the blade open."""

    name: str
    core: _core.Design
    chain: Chain
    hole: Hole


@dataclass(frozen=True, slots=True)
class NamedHole:
    """A hole of the liner, a pivot's of some blades; `known` says whether its width is stated."""

    name: str
    hole: Hole
    known: bool
    blades: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class NamedPad:
    """A face of the spring for the tangs of some blades, from end to end on its own axes."""

    blades: tuple[str, ...]
    ends_mm: tuple[complex, complex]


@dataclass(frozen=True, slots=True)
class EveryPart:
    """What is cut for a joint."""

    spring: Chain
    spring_holes: tuple[Hole, ...]
    pads: tuple[NamedPad, ...]
    tangs: tuple[TangPart, ...]
    liner: tuple[NamedHole, ...]


def every_part(design: Design) -> EveryPart:
    """Draw the parts of a design, of several blades each tang, or that of the one chosen.

    The liner's holes stand so that the unbent spring, on its pins, is preloaded as stated. A spring
    that is clamped has no hole for a rear pin.
    """
    seen = [design.seen_from(name) for name in design.blades]
    core = seen[0].core
    tangs = tuple(
        TangPart(each.blade, each.core, tang_chain(each.core), tang_hole(each.core))
        for each in (seen if design.of_all_blades else [design])
    )
    two_pins = core.spring.support.kind is _core.SupportKind.two_pins
    if len(seen) == 1 and two_pins:
        outlines = draw(core)
        places = (outlines.pivot_mm, outlines.middle_mm, outlines.rear_mm)
        shift = -outlines.middle_mm + spring_hole(core, 0.0).center_mm
        liner = _named(core, ["pivot", "middle pin", "rear pin"], [p + shift for p in places])
    else:
        pins = [*_pins(core, two_pins)]
        pivots = [*_pivots(seen, two_pins)]
        names = [*(name for name, _, _ in pivots), *(name for name, _ in pins)]
        at = [*(place for _, place, _ in pivots), *(place for _, place in pins)]
        liner = _named(core, names, at)
        for i, (_, _, blades) in enumerate(pivots if len(seen) > 1 else []):
            liner[i] = replace(liner[i], blades=blades)
    holes = tuple(
        spring_hole(core, x) for x in ((0.0, -core.spring.support.rear_pin_mm)[: 1 + two_pins])
    )
    return EveryPart(spring_chain(core), holes, _pads(seen, two_pins), tangs, tuple(liner))


def _pads(seen: list[Design], two_pins: bool) -> tuple[NamedPad, ...]:
    """Find every pad once, with the blades it is for."""
    blades: dict[tuple[complex, complex], list[str]] = {}
    for each in seen:
        blades.setdefault(_on_spring(each, seen[0].core, two_pins), []).append(each.blade)
    return tuple(NamedPad(tuple(names), ends) for ends, names in blades.items())


def _named(core: _core.Design, names: list[str], places: list[complex]) -> list[NamedHole]:
    widths = {
        "middle pin": spring_hole(core, 0.0).diameter_mm,
        "rear pin": spring_hole(core, -core.spring.support.rear_pin_mm).diameter_mm,
    }
    found = []
    for name, place in zip(names, places, strict=True):
        stated = widths.get(name, core.friction.pivot_pin_mm)
        drawn = stated or (_LINER_PIN_MM if name in widths else tang_hole(core).diameter_mm)
        found.append(NamedHole(name, Hole(place, drawn), bool(stated)))
    return found


def _pins(core: _core.Design, two_pins: bool) -> Iterator[tuple[str, complex]]:
    yield "middle pin", spring_hole(core, 0.0).center_mm
    if two_pins:
        yield "rear pin", spring_hole(core, -core.spring.support.rear_pin_mm).center_mm


def _pivots(seen: list[Design], two_pins: bool) -> Iterator[tuple[str, complex, tuple[str, ...]]]:
    """Place every pivot once, the unbent spring level: its tang stands the preload into it."""
    placed: list[tuple[list[str], complex]] = []
    first = seen[0].core
    for each in seen:
        core = each.core
        across = _from_front(core.tang.pivot_mm, each.blade, first, two_pins)
        place = complex(across, core.fit.preload_mm - core.tang.open_mm)
        for names, there in placed:
            if abs(there - place) < _SAME_MM:
                names.append(each.blade)
                break
        else:
            placed.append(([each.blade], place))
    for names, place in placed:
        name = "pivot" if len(placed) == 1 else f"pivot, {' and '.join(names)}"
        yield name, place, tuple(names)


def _from_front(x_mm: float, blade: str, first: _core.Design, two_pins: bool) -> float:
    """Tell a blade's station as the first blade counts; the other end counts from its own pin."""
    if {each.name: each.end for each in first.blades}[blade] == first.blades[0].end:
        return x_mm
    return -(first.spring.support.rear_pin_mm if two_pins else 0.0) - x_mm


def _on_spring(each: Design, first: _core.Design, two_pins: bool) -> tuple[complex, complex]:
    pad = each.core.pad
    ends = [_from_front(x, each.blade, first, two_pins) for x in (pad.start_mm, pad.end_mm)]
    return complex(min(ends)), complex(max(ends))
