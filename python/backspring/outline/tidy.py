"""A drawing's closed outlines made fit to be read: holes told, tracings fitted, faults placed."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from backspring.outline.chain import Chain
from backspring.outline.crossing import crossing_of
from backspring.outline.loops import Loop, place_text
from backspring.outline.part_outlines import Hole
from backspring.outline.traced import TOLERANCE_MM, fitted, is_traced, round_of

_ROUND_SHARE = 1e-3
# A circle drawn as a polygon, by its corners.
_ROUND_MM = 0.02
_SAME_MM = 1e-4
_MOST_PIECES = {"spring": 1000, "tang": 150}


@dataclass(slots=True)
class Tidied:
    """Outlines and round holes with their layers; what was fitted and how far off it is."""

    loops: list[Loop] = field(default_factory=list)
    circles: list[tuple[Hole, str]] = field(default_factory=list)
    traced_mm: dict[int, tuple[int, int, float]] = field(default_factory=dict)

    def note(self, loop: Loop, kind: str) -> Iterator[str]:
        """Say how a part was traced."""
        if (how := self.traced_mm.get(id(loop))) is not None:
            yield (
                f"{kind}: traced, {how[0]} points fitted with {how[1]} lines and arcs, "
                f"{how[2]:.3f} mm off at most"
            )


def tidy(loops: Sequence[Loop], fit_mm: float | None) -> Tidied:
    """Tell holes from outlines, and fit those that are traced, or all where `fit_mm` is given."""
    tidied = Tidied()
    for loop in loops:
        hole = _as_hole(loop.chain, fit_mm)
        if hole:
            tidied.circles.append((hole, loop.layer))
            continue
        if fit_mm or (fit_mm is None and is_traced(loop.chain)):
            chain, off = fitted(loop.chain, fit_mm or TOLERANCE_MM)
            before, loop = len(loop.chain.vertices), Loop(chain, loop.layer)
            tidied.traced_mm[id(loop)] = (before, len(chain.vertices), off)
        tidied.loops.append(loop)
    return tidied


def faults_of(kind: str, chain: Chain) -> Iterator[str]:
    """Say where an outline crosses itself, or that it has more pieces than can be judged."""
    if len(chain.vertices) > _MOST_PIECES[kind]:
        yield f"{kind}: {len(chain.vertices)} lines and arcs: fit them, with --fit 0.05"
        return
    place = crossing_of(chain)
    if place is not None:
        yield f"{kind}: the outline crosses itself at {place_text(place)}"


def twin_holes(circles: Sequence[tuple[Hole, str]]) -> Iterator[str]:
    """Say which holes of a layer are drawn twice."""
    for i, (hole, layer) in enumerate(circles):
        for other, where in circles[:i]:
            if where == layer and abs(other.center_mm - hole.center_mm) < _SAME_MM:
                yield f"hole drawn twice at {place_text(hole.center_mm)} on layer {layer}"


def _as_hole(chain: Chain, fit_mm: float | None) -> Hole | None:
    """Return the hole where a loop is a circle drawn in pieces, or as a polygon."""
    pieces = chain.pieces
    if all(not piece.bulge for piece in pieces):
        within = TOLERANCE_MM if fit_mm is None and len(pieces) > 40 else fit_mm or _ROUND_MM
        circle = round_of(chain, within)
        return circle and Hole(circle[0], 2.0 * circle[1])
    if any(piece.bulge <= 0.0 for piece in pieces):
        return None
    centers = [piece.center_mm for piece in pieces]
    radius = pieces[0].radius_mm
    if max(abs(center - centers[0]) for center in centers) > _ROUND_SHARE * radius:
        return None
    return Hole(sum(centers) / len(centers), 2.0 * radius)
