"""How far a pin hole's edge is stretched where the spring folds over its middle pin.

The spring as a plane-stress solid of hardening steel, held by its pins as in plane_stress.py and
pushed out over the crest, then let go. Run it for the rows that the core's estimate is held to; a
row takes a quarter of a minute. Needs CalculiX; nothing of this project takes part in the answer.
"""

from dataclasses import replace

import numpy as np

from .plane_stress import _face_nodes, _support, even_shares
from .plane_stress_mesh import PlaneSpring, mesh_spring
from .plane_stress_solver import SLICE_WIDTH_MM, calculix, equation, frd_field

# Stress and plastic strain: proof stress, one per cent, uniform strain, and far beyond.
HARDENING = ((1135.03, 0.0), (1250.0, 0.01), (1388.4, 0.04), (1415.1, 0.06), (1450.0, 0.2))
BITTERN = PlaneSpring(
    width_mm=2.3,
    thickness_mm=((-38, 3.2), (-4, 3.8), (0, 3.8), (7, 3.3), (25, 2.8), (36.5, 2.8)),
    pivot_mm=31.281,
    youngs_modulus_mpa=205000.0,
    poisson=0.29,
    rear_pin_mm=34.0,
    hole_diameter_mm=2.0,
)


def fold(spring: PlaneSpring, rise_mm: float, refine: int = 2) -> tuple[float, float]:
    """Greatest plastic strain, and the lasting turn of the fold [rad]."""
    mesh = mesh_spring(spring, refine)
    held = len(mesh.xy_mm)
    belly = _face_nodes(spring, mesh, -1)
    patch = belly[abs(mesh.xy_mm[belly, 0] - spring.pivot_mm) < spring.load_half_length_mm + 1e-6]
    shares = even_shares(mesh.xy_mm[patch, 0])
    terms = [(int(patch[i]), 2, float(shares[i])) for i in np.argsort(-shares)]
    step = "*STEP, INC=200\n*STATIC\n0.1,1.,1e-5,0.2"
    output = "*NODE FILE, OUTPUT=2D\nU\n*EL FILE, OUTPUT=2D\nPEEQ\n*END STEP\n"
    deck = "\n".join(
        [
            "*NODE, NSET=ALL",
            *(f"{i},{x:.12e},{y:.12e},0." for i, (x, y) in enumerate(mesh.xy_mm, 1)),
            f"{held + 1},{spring.pivot_mm},-10.,0.",
            "*ELEMENT, TYPE=CPS8R, ELSET=SPRING",
            *(
                f"{i}," + ",".join(str(node + 1) for node in row)
                for i, row in enumerate(mesh.elements, 1)
            ),
            "*MATERIAL, NAME=STEEL",
            f"*ELASTIC\n{spring.youngs_modulus_mpa},{spring.poisson}",
            "*PLASTIC",
            *(f"{stress},{strain}" for stress, strain in HARDENING),
            f"*SOLID SECTION, ELSET=SPRING, MATERIAL=STEEL\n{SLICE_WIDTH_MM}",
            _support(spring, mesh),
            equation([*terms, (held, 2, -1.0)]),
            f"{step}\n*BOUNDARY\n{held + 1},2,2,{rise_mm}\n{output}",
            f"{step}\n*BOUNDARY, OP=NEW\n*CLOAD, OP=NEW\n{held + 1},2,0.\n{output}",
        ]
    )
    answer, _ = calculix(deck)
    last = answer.rsplit(" -4  DISP", 1)[1]
    rise = frd_field(" -4  DISP" + last, "DISP", 3)[patch, 1] @ shares
    return float(frd_field(last, "PE", 1).max()), float(rise) / spring.pivot_mm


def main() -> None:
    """Print the rows: diameter, turn, strain."""
    for diameter, rise in ((2.0, 2.86584), (2.0, 3.10), (2.4, 2.75)):
        strain, turn = fold(replace(BITTERN, hole_diameter_mm=diameter), rise)
        print(f"hole {diameter} mm: turn {turn:.5f} rad, strain {strain:.4f}")


if __name__ == "__main__":
    main()
