"""A bar of a notch mesh in bending, solved by CalculiX.

Both ends carry the stresses of a beam: bending in a straight line over the depth and, with a
cross force, shear as a parabola. They balance, so that the three held displacements carry nothing.
"""

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from .plane_stress import even_shares
from .plane_stress_mesh import SAME_PLACE_MM, Floats, Ints
from .plane_stress_notch_mesh import NotchedBar
from .plane_stress_solver import SLICE_WIDTH_MM, Term, input_deck, run_calculix

STEEL = (205000.0, 0.29)


@dataclass(frozen=True)
class EdgeStress:
    """Stress along the notched edge for 1 mm of width, tension positive."""

    xy_mm: Floats
    stress_mpa: Floats

    @property
    def largest_mpa(self) -> float:
        return float(np.max(self.stress_mpa))

    @property
    def smallest_mpa(self) -> float:
        return float(np.min(self.stress_mpa))

    def where_largest_mm(self) -> tuple[float, float]:
        x, y = self.xy_mm[int(np.argmax(self.stress_mpa))]
        return float(x), float(y)


def bend(bar: NotchedBar, moment_nmm: float, cross_n: float = 0.0) -> EdgeStress:
    """The bar under a moment at x = 0 that pulls the belly, and a cross force along it.

    The moment falls with x by the cross force. The width is 1 mm.
    """
    deck = input_deck(bar.mesh, STEEL, _support(bar), _loads(bar, moment_nmm, cross_n))
    _, stress = run_calculix(deck)
    # A free edge carries no normal or shear stress, so the trace is the stress along it.
    return EdgeStress(bar.mesh.xy_mm[bar.edge], stress[bar.edge, 0] + stress[bar.edge, 1])


def _end(bar: NotchedBar, x_mm: float) -> Ints:
    x, y = bar.mesh.xy_mm.T
    nodes = np.flatnonzero(abs(x - x_mm) < 10 * SAME_PLACE_MM)
    return nodes[np.argsort(y[nodes])]


def _loads(bar: NotchedBar, moment_nmm: float, cross_n: float) -> Iterator[Term]:
    for x, sign in zip(bar.ends_mm, (-1.0, 1.0), strict=True):
        nodes = _end(bar, x)
        y = bar.mesh.xy_mm[nodes, 1]
        held = float(y[-1] - y[0])
        depth, middle = (2 * held, 0.0) if bar.halved else (held, 0.5 * float(y[0] + y[-1]))
        bending = -(moment_nmm - cross_n * x) * 12.0 * (y - middle) / depth**3
        shear = 1.5 * cross_n / depth * (1.0 - (2.0 * (y - middle) / depth) ** 2)
        area = even_shares(y) * held * SLICE_WIDTH_MM
        for node, along, across in zip(nodes, bending * area, shear * area, strict=True):
            yield int(node), 1, float(sign * along)
            if cross_n:
                yield int(node), 2, float(sign * across)


def _support(bar: NotchedBar) -> str:
    left, right = (_end(bar, x) for x in bar.ends_mm)
    if bar.halved:
        mid_line = np.flatnonzero(abs(bar.mesh.xy_mm[:, 1]) < 10 * SAME_PLACE_MM)
        rows = [f"{node + 1},1,1,0." for node in mid_line] + [f"{left[-1] + 1},2,2,0."]
        # The bar's turn is held as well: mirrored bending leaves only its rise free.
        return "\n".join(["*BOUNDARY", *rows])
    rows = [f"{left[0] + 1},1,2,0.", f"{right[0] + 1},2,2,0."]
    return "\n".join(["*BOUNDARY", *rows])
