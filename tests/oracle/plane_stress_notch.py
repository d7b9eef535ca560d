"""Local stress of the core's closed forms beside plane-stress models, shape by shape.

Table: `backspring evidence --only plane_stress_notch`. Source of the models' numbers: CalculiX,
run here.

Holes: a free hole in a parallel bar under a moment leaves bearing out. The tapered spring on two
pins has it in: each pin presses with a cosine pressure on half of its hole, see plane_stress.py.
Kinks: the bent belly of one side; Heron's taper has the cross force of its load, too.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from backspring import _core
from oracle.plane_stress import hole_edge, solve
from oracle.plane_stress_mesh import PlaneSpring
from oracle.plane_stress_notch_bar import bend
from oracle.plane_stress_notch_shapes import kinked, shouldered, with_hole
from stations import stations

THICKNESS_MM = 3.8
TAPER = ((-38.0, 3.2), (-4.0, 3.8), (0.0, 3.8), (7.0, 3.1), (25.0, 2.4), (36.5, 2.5))
MOMENT_NMM = 1000.0


@dataclass(frozen=True)
class Row:
    """One shape: what the section carries, the closed form, and the model."""

    shape: str
    nominal_mpa: float
    form_mpa: float
    model_mpa: float

    @property
    def difference(self) -> float:
        return self.form_mpa / self.model_mpa - 1.0


def free_hole(ratio: float, offset: float) -> Row:
    """A parallel bar 1 mm wide; diameter and offset over the thickness."""
    diameter, offset_mm = ratio * THICKNESS_MM, offset * THICKNESS_MM
    hole = _core.Hole(center_mm=0.0, diameter_mm=diameter, offset_mm=offset_mm)
    # The hole lies towards the back: the moment is turned to have its near edge in tension.
    form = _core.hole_edge_stress(THICKNESS_MM, 1.0, hole, -MOMENT_NMM)
    model = bend(with_hole(THICKNESS_MM, diameter, offset_mm, refine=4), -MOMENT_NMM)
    shape = f"free hole, d/t {ratio:.2f}, offset/t {offset:.2f}"
    return Row(shape, form.nominal_mpa, form.local_mpa, model.largest_mpa)


def pinned_hole(ratio: float) -> Row:
    """The middle pin of a tapered spring, 100 N outward at the pivot, bearing included."""
    force_n = 100.0
    spring = PlaneSpring(
        width_mm=2.3,
        thickness_mm=TAPER,
        pivot_mm=32.0,
        youngs_modulus_mpa=205000.0,
        poisson=0.29,
        rear_pin_mm=34.0,
        hole_diameter_mm=ratio * THICKNESS_MM,
    )
    solution = solve(spring, 3)
    nodes, _, direction = hole_edge(spring, solution.mesh, 0.0)
    xx, yy, _, xy, *_ = solution.stress_per_n_mpa[nodes].T
    x, y = direction.T
    # The pin presses on the edge, so the stress along it is taken, not the trace.
    along = xx * y * y + yy * x * x - 2.0 * xy * x * y
    hole = _core.Hole(center_mm=0.0, diameter_mm=spring.hole_diameter_mm)
    form = _core.hole_edge_stress(THICKNESS_MM, spring.width_mm, hole, force_n * spring.pivot_mm)
    shape = f"pin hole of a tapered spring, d/t {ratio:.2f}"
    return Row(shape, form.nominal_mpa, form.local_mpa, force_n * float(np.max(along)))


def bent_face(
    shape: str, section_mm: float, factor: float, model_mpa: float, moment_nmm: float = MOMENT_NMM
) -> Row:
    nominal = 6.0 * moment_nmm / section_mm**2
    form = _core.local_stress(nominal, factor, 0.0)
    return Row(shape, nominal, form.local_mpa, model_mpa)


def even_kink(degrees: float, root_mm: float, thickness_mm: float = 3.1) -> Row:
    """Both stretches slope alike and long, the moment the same everywhere."""
    angle = float(np.radians(degrees))
    ends = (2.5 * thickness_mm, 2.5 * thickness_mm)
    model = bend(kinked(thickness_mm, (angle / 2, -angle / 2), root_mm, ends), MOMENT_NMM)
    factor = _core.kink_factor(angle, thickness_mm, root_mm)
    shape = f"even kink, {degrees:.1f} deg, root {root_mm:g}"
    return bent_face(shape, thickness_mm, factor, model.largest_mpa)


def tapered_kink(slopes: tuple[float, float], root_mm: float) -> Row:
    """Heron's kink at 7 mm, load at 32 mm; slopes are the taper before and behind it."""
    thickness, (before, behind) = 3.1, np.arctan(slopes)
    arm = 25.0
    bar = kinked(thickness, (float(before), float(behind)), root_mm, (7.0, 18.0))
    model = bend(bar, MOMENT_NMM, MOMENT_NMM / arm)
    profile = stations(
        [
            (0.0, thickness + 7.0 * slopes[0]),
            (7.0, thickness),
            (25.0, thickness - 18.0 * slopes[1]),
        ]
    )
    (kink,) = _core.find_kinks(profile)
    factor = _core.kink_factor(kink.angle_rad, kink.thickness_mm, root_mm)
    shape = f"kink of a taper, {np.degrees(kink.angle_rad):.1f} deg, root {root_mm:g}"
    return bent_face(shape, thickness, factor, model.largest_mpa)


def shoulder(large_mm: float, small_mm: float, fillet_mm: float, both_sides: bool) -> Row:
    model = bend(shouldered(large_mm, small_mm, fillet_mm, both_sides), MOMENT_NMM)
    form = _core.shoulder_factor if both_sides else _core.one_sided_shoulder_factor
    sides = "both faces" if both_sides else "belly"
    shape = f"shoulder of {sides}, {large_mm:g} to {small_mm:g}, fillet {fillet_mm:g}"
    return bent_face(shape, small_mm, form(large_mm, small_mm, fillet_mm), model.largest_mpa)


HERON = (0.1, 0.7 / 18.0)
SHARPER = (0.2174, 0.7 / 18.0)

CASES: tuple[tuple[Callable[..., Row], tuple[object, ...]], ...] = (
    *((free_hole, (ratio, 0.0)) for ratio in (0.1, 0.3, 0.5, 0.65, 0.75)),
    *((free_hole, case) for case in ((0.1, 0.05), (0.1, 0.3), (0.3, 0.1), (0.3, 0.2))),
    *((free_hole, case) for case in ((0.5, 0.05), (0.5, 0.1), (0.65, 0.05))),
    *((pinned_hole, (ratio,)) for ratio in (0.3, 0.5, 0.65)),
    *((tapered_kink, (slopes, root)) for slopes in (HERON, SHARPER) for root in (0.5, 2.0)),
    *((even_kink, case) for case in ((1.0, 0.3), (3.5, 0.031), (10.0, 0.1), (10.0, 6.0))),
    *((even_kink, case) for case in ((20.0, 1.0), (30.0, 0.3), (45.0, 0.031), (45.0, 3.1))),
    *((shoulder, (4.2, 3.0, fillet, True)) for fillet in (0.3, 1.0, 3.0)),
    *((shoulder, (3.6, 3.0, fillet, False)) for fillet in (0.3, 1.0, 3.0)),
    *((shoulder, (*case, False)) for case in ((3.15, 3.0, 0.15), (4.5, 3.0, 0.15))),
    *((shoulder, (*case, False)) for case in ((9.0, 3.0, 0.3), (9.0, 3.0, 3.0))),
)
