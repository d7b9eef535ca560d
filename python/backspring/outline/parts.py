"""Which of a drawing's outlines is the spring, which the tang, and where the pins go."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import permutations

from backspring.outline.chain import Chain
from backspring.outline.drawing import Drawing
from backspring.outline.loops import Loop, join, place_text
from backspring.outline.part_outlines import Hole, Outlines
from backspring.outline.tidy import faults_of, tidy, twin_holes

_BESIDE_CORNERS_MM = 1e-5
_MOST_OUTLINES = 300


@dataclass(frozen=True, slots=True)
class Found:
    """The parts, layer or shape that each was known by, and gaps closed with their widths.

    `notes` say what was fitted.
    """

    outlines: Outlines
    known_by: dict[str, str]
    gaps: tuple[tuple[complex, float], ...]
    notes: tuple[str, ...] = ()


def find_parts(drawing: Drawing, layers: dict[str, str], fit_mm: float | None = None) -> Found:
    """Tell spring, tang and liner's holes apart, by the layers named or by their shapes.

    Two holes make a spring, one hole a tang; the liner's three stand on a layer of their own.
    Raises ValueError with every fault and its place.
    """
    joined = join(drawing.edges)
    faults = [*drawing.faults]
    known: dict[str, str] = {}
    tidied = tidy(joined.loops, fit_mm)
    loops = tidied.loops
    circles = [(Hole(center, width), layer) for center, width, layer in drawing.circles]
    circles += tidied.circles
    if max(len(loops), len(circles)) > _MOST_OUTLINES:
        raise ValueError(f"{len(loops)} outlines and {len(circles)} circles: keep the parts alone")
    of_liner = layers.get("liner") or _layer_like("liner", [layer for _, layer in circles])
    liner = _liner(circles, of_liner, loops, known, faults)
    own = [each for each in circles if each[1] != of_liner]
    if of_liner is None and liner:
        own = [each for each in own if each[0].center_mm not in liner]
    spring, tang = (
        _part(kind, holes, loops, own, layers.get(kind), known, faults)
        for kind, holes in (("spring", 2), ("tang", 1))
    )
    parts = {kind: each for kind, each in (("spring", spring), ("tang", tang)) if each}
    used = {each.layer for each in parts.values()}
    faults += [text for layer, text in joined.faults if len(parts) < 2 or layer in used]
    faults += [text for kind, each in parts.items() for text in faults_of(kind, each.loop.chain)]
    faults += twin_holes([each for each in circles if each[1] in used | {of_liner}])
    if faults or spring is None or tang is None or liner is None:
        raise ValueError("; ".join(faults))
    holes = in_order(spring.chain, spring.holes)
    pivot, middle, rear = pins_of(liner, abs(holes[0].center_mm - holes[1].center_mm))
    outlines = Outlines(spring.chain, holes, tang.chain, tang.holes[0], pivot, middle, rear)
    notes = [note for kind, each in parts.items() for note in tidied.note(each.loop, kind)]
    return Found(outlines, known, tuple(joined.gaps), tuple(notes))


@dataclass(frozen=True, slots=True)
class _Part:
    loop: Loop
    holes: list[Hole]

    @property
    def chain(self) -> Chain:
        return self.loop.chain

    @property
    def layer(self) -> str:
        return self.loop.layer


_Circles = Sequence[tuple[Hole, str]]


def _part(
    kind: str,
    holes: int,
    loops: Sequence[Loop],
    circles: _Circles,
    layer: str | None,
    known: dict[str, str],
    faults: list[str],
) -> _Part | None:
    named = layer or _layer_like(kind, [loop.layer for loop in loops])
    found = []
    for loop in loops:
        inside = [hole for hole, where in circles if _holds(loop, hole, where, named)]
        if (named is not None and loop.layer == named) or (named is None and len(inside) == holes):
            found.append((loop, inside))
    where = f"layer {named}" if named is not None else f"{holes} hole{'s' * (holes > 1)}"
    if len(found) != 1:
        places = ", ".join(place_text(loop.chain.vertices[0].at_mm) for loop, _ in found)
        count = f"{len(found)} outlines, at {places}" if found else "no closed outline"
        faults.append(f"{kind}: {count} with {where}")
        return None
    loop, inside = found[0]
    if len(inside) != holes:
        at = place_text(loop.chain.vertices[0].at_mm)
        faults.append(f"{kind} at {at}: needs {holes} hole{'s' * (holes > 1)}, has {len(inside)}")
        return None
    known[kind] = where
    return _Part(loop, inside)


def _holds(loop: Loop, hole: Hole, layer: str, named: str | None) -> bool:
    """Say whether a hole lies in an outline and belongs to it: on its layer where that is named."""
    return (named is None or layer == named) and contains(loop.chain, hole.center_mm)


def contains(chain: Chain, place: complex) -> bool:
    """Say whether a place lies inside an outline."""
    beside = place.real + _BESIDE_CORNERS_MM
    above = sum(height > place.imag for height in chain.heights_mm(beside))
    return above % 2 == 1


def _layer_like(kind: str, layers: Sequence[str]) -> str | None:
    like = {layer for layer in layers if kind in layer.lower()}
    return like.pop() if len(like) == 1 else None


def _liner(
    circles: _Circles,
    layer: str | None,
    loops: Sequence[Loop],
    known: dict[str, str],
    faults: list[str],
) -> list[complex] | None:
    """Find the centres of the liner's three holes: on its layer, or in the one outline of three."""
    if layer is None:
        held = [
            [hole.center_mm for hole, _ in circles if contains(loop.chain, hole.center_mm)]
            for loop in loops
        ]
        three = [places for places in held if len(places) == 3]
        if len(three) == 1:
            known["liner"] = "3 holes"
            return three[0]
    places = [hole.center_mm for hole, where in circles if where == layer]
    if layer is None or len(places) != 3:
        faults.append(
            "liner: needs a layer with the centres of pivot, middle and rear pin as circles, or an "
            "outline with 3 holes" + (f", {layer} has {len(places)}" if layer else "")
        )
        return None
    known["liner"] = f"layer {layer}"
    return places


def in_order(chain: Chain, holes: Sequence[Hole]) -> tuple[Hole, Hole]:
    """Order the spring's holes, the middle pin's first: beyond it the spring is the longer."""
    first, second = holes
    along = second.center_mm - first.center_mm
    if not along:
        raise ValueError("the spring's two holes are at one place")
    shares = [((vertex.at_mm - first.center_mm) / along).real for vertex in chain.vertices]
    return (first, second) if -min(shares) > max(shares) - 1.0 else (second, first)


def pins_of(places: Sequence[complex], span_mm: float) -> tuple[complex, complex, complex]:
    """Tell pivot, middle and rear pin: two stand as far apart as the spring's holes, nearly."""
    chances = [
        (abs(abs(middle - rear) - span_mm), abs(pivot - middle) - abs(pivot - rear), i)
        for i, (pivot, middle, rear) in enumerate(permutations(places))
    ]
    # The middle pin is that of the two which is nearer to the pivot.
    nearer = [chance for chance in chances if chance[1] < 0.0]
    if not nearer:
        raise ValueError("liner: its three pins are as far from one another: which is which?")
    _, _, best = min(nearer)
    pivot, middle, rear = list(permutations(places))[best]
    return pivot, middle, rear
