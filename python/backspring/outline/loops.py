"""Loose lines and arcs joined to closed outlines, and what keeps them from closing."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field

from backspring.outline.chain import Chain, Piece, Vertex, closed_chain

# Ends nearer than this are one corner; nearer than the second they are joined and told.
_SAME_MM = 1e-6
WIDEST_GAP_MM = 0.1
_MOST_AT_PLACE = 40
_LEAST_CROSSING = 0.1


@dataclass(frozen=True, slots=True)
class Edge:
    """A line or an arc of a drawing, and the layer it stands on."""

    piece: Piece
    layer: str = ""


@dataclass(frozen=True, slots=True)
class Loop:
    """A closed outline of a drawing."""

    chain: Chain
    layer: str


@dataclass(slots=True)
class Joined:
    """All outlines that close, gaps that were closed with their widths, and what is wrong where.

    `faults` are layers with what is wrong on them.
    """

    loops: list[Loop] = field(default_factory=list)
    gaps: list[tuple[complex, float]] = field(default_factory=list)
    faults: list[tuple[str, str]] = field(default_factory=list)


def place_text(place: complex) -> str:
    """Write a place as a message tells it."""
    return f"({place.real:.3f}, {place.imag:.3f})"


def join(edges: Iterable[Edge]) -> Joined:
    """Join edges end to end, layer by layer."""
    joined = Joined()
    layers: dict[str, list[Piece]] = defaultdict(list)
    for edge in edges:
        if abs(edge.piece.end_mm - edge.piece.start_mm) > _SAME_MM:
            layers[edge.layer].append(edge.piece)
    for layer, pieces in layers.items():
        _join_layer(joined, layer, list(_without_twins(joined, layer, pieces)))
    return joined


def _without_twins(joined: Joined, layer: str, pieces: list[Piece]) -> Iterator[Piece]:
    """List every piece once: one drawn again over another, either way round, is a fault."""
    seen: set[tuple[complex, complex, float]] = set()
    for piece in pieces:
        start, end = _rounded(piece.start_mm), _rounded(piece.end_mm)
        bulge = round(piece.bulge, 6)
        if (start, end, bulge) in seen or (end, start, -bulge) in seen:
            twice = f"drawn twice from {place_text(start)} to {place_text(end)}"
            joined.faults.append((layer, twice))
            continue
        seen.add((start, end, bulge))
        yield piece


def _rounded(place: complex) -> complex:
    return complex(round(place.real, 5) + 0.0, round(place.imag, 5) + 0.0)


class _Ends:
    """Ends of pieces by place, for finding what goes on from one."""

    def __init__(self, pieces: list[Piece]) -> None:
        self._cells: dict[tuple[int, int], set[tuple[int, bool]]] = defaultdict(set)
        self._pieces = pieces
        for i, piece in enumerate(pieces):
            self._cells[self._cell(piece.start_mm)].add((i, True))
            self._cells[self._cell(piece.end_mm)].add((i, False))

    @staticmethod
    def _cell(place: complex) -> tuple[int, int]:
        return int(place.real // WIDEST_GAP_MM), int(place.imag // WIDEST_GAP_MM)

    def take(self, piece: int) -> None:
        """Take a piece out."""
        self._cells[self._cell(self._pieces[piece].start_mm)].discard((piece, True))
        self._cells[self._cell(self._pieces[piece].end_mm)].discard((piece, False))

    def near(self, place: complex) -> list[tuple[float, int, bool]]:
        """List ends within the widest gap, the nearest first."""
        i, j = self._cell(place)
        found = []
        for cell in ((i + a, j + b) for a in (-1, 0, 1) for b in (-1, 0, 1)):
            for piece, is_start in self._cells.get(cell, ()):
                each = self._pieces[piece]
                away = abs((each.start_mm if is_start else each.end_mm) - place)
                if away <= WIDEST_GAP_MM:
                    found.append((away, piece, is_start))
        return sorted(found)


def _join_layer(joined: Joined, layer: str, pieces: list[Piece]) -> None:
    ends, left = _Ends(pieces), set(range(len(pieces)))
    while left:
        first = min(left)
        left.remove(first)
        ends.take(first)
        way, gaps = [pieces[first]], []
        while abs(way[-1].end_mm - way[0].start_mm) > _SAME_MM:
            here = way[-1].end_mm
            following = ends.near(here)
            back = abs(here - way[0].start_mm)
            if (
                len(way) > 1
                and back <= WIDEST_GAP_MM
                and not (following and following[0][0] < back)
            ):
                gaps.append((here, back))
                break
            if not following:
                begun = f"open outline from {place_text(way[0].start_mm)} to {place_text(here)}"
                joined.faults.append((layer, begun))
                way = []
                break
            away, piece, is_start = following[0]
            if len(following) > _MOST_AT_PLACE:
                joined.faults.append((layer, f"{len(following)} ends at {place_text(here)}"))
                return
            same = [each for each in following if each[0] - away < _SAME_MM]
            if len(same) > 1:
                joined.faults.append((layer, f"{len(same) + 1} lines meet at {place_text(here)}"))
            if away > _SAME_MM:
                gaps.append((here, away))
            left.remove(piece)
            ends.take(piece)
            each = pieces[piece]
            way.append(each if is_start else Piece(each.end_mm, each.start_mm, -each.bulge))
        if len(way) > 1:
            joined.gaps += gaps
            joined.loops.append(Loop(closed_chain(_corners(way)), layer))


def _corners(way: list[Piece]) -> Iterator[Vertex]:
    """List the corners; at a gap two lines are carried on to where they cross."""
    meetings = [_meeting(way[i - 1], piece) for i, piece in enumerate(way)]
    for i, piece in enumerate(way):
        before, meeting = way[i - 1].end_mm, meetings[i]
        if meeting is not None:
            yield Vertex(meeting)
            continue
        if abs(before - piece.start_mm) > _SAME_MM:
            yield Vertex(before)
        yield Vertex(piece.start_mm, piece.bulge)


def _meeting(before: Piece, after: Piece) -> complex | None:
    gap = abs(after.start_mm - before.end_mm)
    if gap <= _SAME_MM or before.bulge or after.bulge:
        return None
    ways = before.direction(0.5), after.direction(0.5)
    turn = (ways[0].conjugate() * ways[1]).imag
    if abs(turn) < _LEAST_CROSSING:
        return None
    along = ((after.start_mm - before.end_mm).conjugate() * ways[1]).imag / turn
    meeting = before.end_mm + along * ways[0]
    return meeting if abs(meeting - after.start_mm) < 3.0 * gap else None
