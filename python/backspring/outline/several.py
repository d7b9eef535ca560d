"""The parts of a joint with several blades in a drawing, known by the names of their layers."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from backspring.outline.chain import Chain
from backspring.outline.drawing import Drawing
from backspring.outline.loops import Edge, Loop, join, place_text
from backspring.outline.part_outlines import Hole
from backspring.outline.parts import contains, pins_of
from backspring.outline.tidy import faults_of, tidy, twin_holes

TANG, PIVOT, PAD = "tang ", "pivot ", "pad "
# Between the names of blades that share a pivot or a pad.
AND = " and "
_SPRING, _LINER = "spring", "liner"
_SAME_MM = 0.5


@dataclass(frozen=True, slots=True)
class BladeOutline:
    """A blade's tang about its hole, its pivot in the liner, its pad on the spring where marked."""

    name: str
    tang: Chain
    hole: Hole
    pivot_mm: complex
    pad_mm: tuple[complex, ...] = ()


@dataclass(frozen=True, slots=True)
class SeveralOutlines:
    """One spring with a hole a pin, the pins in the liner, and every blade, the first one first."""

    spring: Chain
    holes: tuple[Hole, ...]
    pins_mm: tuple[complex, ...]
    blades: tuple[BladeOutline, ...]


@dataclass(frozen=True, slots=True)
class FoundSeveral:
    """The parts, the layer each stands on, gaps closed with their widths, what was fitted."""

    outlines: SeveralOutlines
    known_by: dict[str, str]
    gaps: tuple[tuple[complex, float], ...]
    notes: tuple[str, ...]


def blade_names(drawing: Drawing) -> list[str]:
    """Name the blades of a drawing, in its order: none but where its layers tell several apart."""
    layers = dict.fromkeys(edge.layer for edge in drawing.edges)
    names = [layer.removeprefix(TANG) for layer in layers if layer.startswith(TANG)]
    marked = any(layer.startswith(PIVOT) for layer in layers)
    return names if len(names) > 1 or (names and marked) else []


def find_several(drawing: Drawing, names: Sequence[str], fit_mm: float | None) -> FoundSeveral:
    """Take spring, liner and every tang from their layers; ValueError with every fault."""
    marks = [edge for edge in drawing.edges if edge.layer.startswith((PIVOT, PAD))]
    joined = join(edge for edge in drawing.edges if not edge.layer.startswith((PIVOT, PAD)))
    tidied = tidy(joined.loops, fit_mm)
    circles = [(Hole(at, width), layer) for at, width, layer in drawing.circles] + tidied.circles
    layers = [_SPRING, *(f"{TANG}{name}" for name in names)]
    faults = [*drawing.faults, *(text for layer, text in joined.faults if layer in layers)]
    faults += twin_holes([each for each in circles if each[1] in (*layers, _LINER)])
    loops = {layer: _only(layer, tidied.loops, faults) for layer in layers}
    holes = {layer: [*_held(loops[layer], circles)] for layer in layers}
    for layer, loop in loops.items():
        if loop is not None:
            faults += faults_of(layer.partition(" ")[0], loop.chain)
            faults += _count_fault(layer, loop, len(holes[layer]))
    liner = [hole.center_mm for hole, layer in circles if layer == _LINER]
    pivots = _pivots(names, marks, circles, faults)
    shared, pins = _pins(liner, pivots, holes[_SPRING], faults)
    if faults:
        raise ValueError("; ".join(faults))
    blades = tuple(
        BladeOutline(name, loop.chain, holes[f"{TANG}{name}"][0], pivot, _pad(name, marks))
        for name in names
        if (loop := loops[f"{TANG}{name}"]) is not None
        and (pivot := pivots.get(name, shared)) is not None
    )
    spring = loops[_SPRING]
    assert spring is not None
    paired = _paired(holes[_SPRING], pins, blades[0].pivot_mm)
    outlines = SeveralOutlines(spring.chain, *paired, blades)
    notes = [note for layer, loop in loops.items() if loop for note in tidied.note(loop, layer)]
    known = {layer: f"layer {layer}" for layer in (*layers, _LINER)}
    return FoundSeveral(outlines, known, tuple(joined.gaps), tuple(notes))


def mirrored(outlines: SeveralOutlines) -> SeveralOutlines:
    """Return the parts as seen from the other side."""
    return SeveralOutlines(
        outlines.spring.mirrored(),
        tuple(_conjugate(hole) for hole in outlines.holes),
        tuple(pin.conjugate() for pin in outlines.pins_mm),
        tuple(
            replace(
                blade,
                tang=blade.tang.mirrored(),
                hole=_conjugate(blade.hole),
                pivot_mm=blade.pivot_mm.conjugate(),
                pad_mm=tuple(place.conjugate() for place in blade.pad_mm),
            )
            for blade in outlines.blades
        ),
    )


def _conjugate(hole: Hole) -> Hole:
    return Hole(hole.center_mm.conjugate(), hole.diameter_mm)


def _only(layer: str, loops: Sequence[Loop], faults: list[str]) -> Loop | None:
    found = [loop for loop in loops if loop.layer == layer]
    if len(found) == 1:
        return found[0]
    places = ", ".join(place_text(loop.chain.vertices[0].at_mm) for loop in found)
    count = f"{len(found)} outlines, at {places}" if found else "no closed outline"
    faults.append(f"{layer}: {count} on layer {layer}")
    return None


def _held(loop: Loop | None, circles: Sequence[tuple[Hole, str]]) -> Iterator[Hole]:
    """Find the holes in an outline, on its own layer."""
    for hole, layer in circles:
        if loop is not None and layer == loop.layer and contains(loop.chain, hole.center_mm):
            yield hole


def _count_fault(layer: str, loop: Loop, count: int) -> Iterator[str]:
    wanted = (1, 2) if layer == _SPRING else (1,)
    if count not in wanted:
        at = place_text(loop.chain.vertices[0].at_mm)
        needed = "1 or 2 holes" if layer == _SPRING else "1 hole"
        yield f"{layer} at {at}: needs {needed}, has {count}"


def _pivots(
    names: Sequence[str],
    marks: Sequence[Edge],
    circles: Sequence[tuple[Hole, str]],
    faults: list[str],
) -> dict[str, complex]:
    """Find the places that are marked on the blades' layers; none where no layer marks any."""
    layers = dict.fromkeys([edge.layer for edge in marks] + [layer for _, layer in circles])
    marked = [layer for layer in layers if layer.startswith(PIVOT)]
    found: dict[str, complex] = {}
    for layer in marked:
        places = [hole.center_mm for hole, where in circles if where == layer]
        places = places or _ends([edge for edge in marks if edge.layer == layer])
        for name in _named(layer, PIVOT) & {*names}:
            found[name] = 0.5 * (_low(places) + _high(places))
    if marked:
        missing = (name for name in names if name not in found)
        faults += [f"pivot of {name}: mark it on a layer {PIVOT}{name}" for name in missing]
    return found


def _named(layer: str, kind: str) -> set[str]:
    return {*layer.removeprefix(kind).split(AND)} if layer.startswith(kind) else set()


def _pad(name: str, marks: Sequence[Edge]) -> tuple[complex, ...]:
    """Find all ends of what marks a blade's pad."""
    return tuple(_ends([edge for edge in marks if name in _named(edge.layer, PAD)]))


def _ends(edges: Sequence[Edge]) -> list[complex]:
    return [end for edge in edges for end in (edge.piece.start_mm, edge.piece.end_mm)]


def _low(places: Sequence[complex]) -> complex:
    return complex(min(p.real for p in places), min(p.imag for p in places))


def _high(places: Sequence[complex]) -> complex:
    return complex(max(p.real for p in places), max(p.imag for p in places))


def _pins(
    liner: Sequence[complex], pivots: dict[str, complex], holes: Sequence[Hole], faults: list[str]
) -> tuple[complex | None, tuple[complex, ...]]:
    """Find the pins: what is no pivot, one for each hole of the spring.

    Where no pivot is marked there is one for all blades, which comes first.
    """
    if not pivots and len(liner) == 3 and len(holes) == 2:
        span = abs(holes[0].center_mm - holes[1].center_mm)
        pivot, middle, rear = pins_of(liner, span)
        return pivot, (middle, rear)
    places = pivots.values()
    pins = [at for at in liner if min((abs(at - p) for p in places), default=0.0) > _SAME_MM]
    if len(pins) != len(holes):
        named = "" if pivots else f": mark the pivot of each blade on a layer {PIVOT}NAME"
        text = f"liner: needs a circle for each pivot and {len(holes)} for pins, has {len(liner)}"
        faults.append(text + named)
    return None, tuple(pins)


def _paired(
    holes: Sequence[Hole], pins: Sequence[complex], pivot: complex
) -> tuple[tuple[Hole, ...], tuple[complex, ...]]:
    """Order pins from the first blade's on, and holes alike: both run the same way."""
    ordered = sorted(pins, key=lambda pin: abs(pin - pivot))
    if len(holes) == 1:
        return tuple(holes), tuple(ordered)
    first, second = holes
    way = (ordered[0] - ordered[1]) / (first.center_mm - second.center_mm)
    return ((first, second) if way.real > 0.0 else (second, first)), tuple(ordered)
