"""What a drawing holds, whatever file it came from."""

from __future__ import annotations

from dataclasses import dataclass, field

from backspring.outline.curves import Curve, arcs_of
from backspring.outline.loops import Edge

_MOST_CURVED = 3000


@dataclass(slots=True)
class Drawing:
    """Lines, arcs and circles [mm], with what could not be taken.

    `mm_per_unit` is None where the file does not say its units; then places are in those.
    A circle is its centre, its diameter and its layer.
    """

    mm_per_unit: float | None
    edges: list[Edge] = field(default_factory=list)
    circles: list[tuple[complex, float, str]] = field(default_factory=list)
    left_out: dict[str, int] = field(default_factory=dict)
    faults: list[str] = field(default_factory=list)
    _curved: int = 0

    def add_curve(self, curve: Curve, layer: str) -> None:
        """Add the lines and arcs of a curve; ValueError where all of them come to very many."""
        pieces = arcs_of(curve)
        self._curved += len(pieces)
        if self._curved > _MOST_CURVED:
            raise ValueError(f"splines that take more than {_MOST_CURVED} arcs")
        self.edges += [Edge(piece, layer) for piece in pieces]
