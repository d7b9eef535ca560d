"""The spring as a plane-stress solid, solved by CalculiX.

Source of the solver: CalculiX CrunchiX (Debian package calculix-ccx), a general finite-element
program; nothing of this project takes part in its answer.

Pins: a pin presses on the half of the hole it bears on, with a cosine pressure. That is written
as one equation a hole: the displacement into the pin, averaged over the bearing half with the
cosine as weight, is zero. The spring may turn on the pin and the hole may become oval, so the pin
adds no stiffness to the section. A hole edge that may only slide round a rigid pin does: it made
the two springs of the test 0.8 % stiffer. A rigid pin bearing on half the edge made 0.3 %.
An outward force at the pivot seats the spring on the belly side of the middle hole and on the
back side of the rear hole. Lengthwise only the middle hole is held: two pins on a straight
mid-line carry no thrust at small deflection.

A thin slice is solved that carries its share of the load, see plane_stress_solver.py; deflection
and stress are those of the full width.
"""

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from .plane_stress_mesh import SAME_PLACE_MM, Floats, Ints, Mesh, PlaneSpring, mesh_spring
from .plane_stress_solver import SLICE_WIDTH_MM, Term, equation, input_deck, run_calculix


@dataclass(frozen=True)
class PlaneSolution:
    """Answer to 1 N outward at the pivot station, on the working face."""

    deflection_at_pivot_mm: float
    back_x_mm: Floats
    back_stress_per_n_mpa: Floats
    element_count: int
    mesh: Mesh
    stress_per_n_mpa: Floats

    @property
    def stiffness_n_per_mm(self) -> float:
        return 1.0 / self.deflection_at_pivot_mm

    def back_stress_at(self, x_mm: float) -> float:
        """Stress along the back [MPa/N], tension positive."""
        return float(np.interp(x_mm, self.back_x_mm, self.back_stress_per_n_mpa))


def solve(spring: PlaneSpring, refine: int) -> PlaneSolution:
    mesh = mesh_spring(spring, refine)
    deck = input_deck(
        mesh,
        (spring.youngs_modulus_mpa, spring.poisson),
        _support(spring, mesh),
        _load_terms(spring, mesh),
    )
    displacement, stress = run_calculix(deck)
    back = _face_nodes(spring, mesh, side=+1)
    # A free face carries no normal or shear stress, so the trace is the stress along the face.
    along_back = stress[back, 0] + stress[back, 1]
    pivot = mesh.node_at(spring.pivot_mm, float(spring.middle_at(spring.pivot_mm)))
    return PlaneSolution(
        deflection_at_pivot_mm=float(displacement[pivot, 1]),
        back_x_mm=mesh.xy_mm[back, 0],
        back_stress_per_n_mpa=along_back,
        element_count=len(mesh.elements),
        mesh=mesh,
        stress_per_n_mpa=stress,
    )


def _face_nodes(spring: PlaneSpring, mesh: Mesh, side: int) -> Ints:
    x, y = mesh.xy_mm.T
    face = spring.middle_at(x) + side * 0.5 * spring.thickness_at(x)
    nodes = np.flatnonzero(abs(y - face) < 10 * SAME_PLACE_MM)
    return nodes[np.argsort(x[nodes])]


def even_shares(along: Floats) -> Floats:
    """Shares of an even load on a chain of quadratic edges (corner, middle, corner...); sum 1."""
    length = along[2::2] - along[:-2:2]
    shares = np.zeros_like(along)
    shares[1::2] += 4 * length
    shares[:-2:2] += length
    shares[2::2] += length
    return np.asarray(shares / shares.sum())


def _load_terms(spring: PlaneSpring, mesh: Mesh) -> Iterator[Term]:
    belly = _face_nodes(spring, mesh, side=-1)
    reach = spring.load_half_length_mm + 10 * SAME_PLACE_MM
    patch = belly[abs(mesh.xy_mm[belly, 0] - spring.pivot_mm) < reach]
    for node, share in zip(patch, even_shares(mesh.xy_mm[patch, 0]), strict=True):
        yield int(node), 2, float(share) * SLICE_WIDTH_MM / spring.width_mm


def hole_edge(spring: PlaneSpring, mesh: Mesh, centre_mm: float) -> tuple[Ints, Floats, Floats]:
    """Nodes of the hole's edge in order, their shares of it, and its outward directions."""
    arm = mesh.xy_mm - np.array([centre_mm, float(spring.middle_at(centre_mm))])
    distance = np.hypot(arm[:, 0], arm[:, 1])
    nodes = np.flatnonzero(abs(distance - 0.5 * spring.hole_diameter_mm) < 10 * SAME_PLACE_MM)
    angle = np.arctan2(arm[nodes, 1], arm[nodes, 0])
    # Starting at the element corner at 45 degrees keeps corners and middles in turn.
    nodes = nodes[np.argsort(np.round(angle - 0.25 * np.pi, 6) % (2 * np.pi))]
    direction = arm[nodes] / distance[nodes, None]
    chain = even_shares(np.arange(len(nodes) + 1, dtype=np.float64))
    chain[0] += chain[-1]
    return nodes, chain[:-1], direction


def _bearing_terms(
    spring: PlaneSpring, mesh: Mesh, centre_mm: float, toward: int
) -> Iterator[Term]:
    nodes, share, direction = hole_edge(spring, mesh, centre_mm)
    cosine = toward * direction[:, 1]
    # The largest term comes first: the solver eliminates it.
    for i in np.argsort(-cosine):
        for axis in (1, 0):
            weight = float(share[i] * cosine[i] * direction[i, axis])
            if cosine[i] > 1e-6 and abs(weight) > 1e-12:
                yield int(nodes[i]), axis + 1, weight


def _lengthwise_terms(spring: PlaneSpring, mesh: Mesh, centre_mm: float) -> Iterator[Term]:
    nodes, share, direction = hole_edge(spring, mesh, centre_mm)
    for i in np.argsort(-direction[:, 1]):
        yield int(nodes[i]), 1, float(share[i])


def _support(spring: PlaneSpring, mesh: Mesh) -> str:
    if not spring.hole_centres_mm:
        root = np.flatnonzero(abs(mesh.xy_mm[:, 0] - spring.stations_mm[0]) < SAME_PLACE_MM)
        return "\n".join(["*BOUNDARY", *(f"{node + 1},1,2,0." for node in root)])
    rear, middle = spring.hole_centres_mm
    held = [
        _bearing_terms(spring, mesh, middle, toward=-1),
        _bearing_terms(spring, mesh, rear, toward=+1),
        _lengthwise_terms(spring, mesh, middle),
    ]
    return "\n".join(equation(terms) for terms in held)
