"""CalculiX as a subprocess: an input deck in, nodal displacements and stresses out.

Width: the solver builds a solid of one layer from a plane-stress element and lets the depth
change with the stress but keeps the sides straight across. Over the true width that blocks the
anticlastic curvature of a bent strip and makes it too stiff, by 1.4 % for a strip 2.3 mm wide and
3 mm thick and 7 % for one 10 mm wide. The error goes with the width squared, so a thin slice is
solved.
"""

import os
import resource
import shutil
import subprocess
import tempfile
from collections.abc import Iterable
from pathlib import Path

import numpy as np

from .plane_stress_mesh import Floats, Mesh

LIMIT_S = 600
SLICE_WIDTH_MM = 0.02
Term = tuple[int, int, float]


def equation(terms: Iterable[Term]) -> str:
    """The weighted displacements of the terms (node, axis, weight) sum to zero."""
    rows = [f"{node + 1},{axis},{weight:.12e}" for node, axis, weight in terms]
    return "\n".join(["*EQUATION", str(len(rows)), *rows])


def input_deck(mesh: Mesh, steel: tuple[float, float], support: str, loads: Iterable[Term]) -> str:
    """One linear step on a slice; steel as Young's modulus [MPa] and Poisson's ratio."""
    nodes = (f"{i},{x:.12e},{y:.12e},0." for i, (x, y) in enumerate(mesh.xy_mm, 1))
    elements = (
        f"{i}," + ",".join(str(node + 1) for node in row) for i, row in enumerate(mesh.elements, 1)
    )
    return "\n".join(
        [
            "*NODE, NSET=ALL",
            *nodes,
            "*ELEMENT, TYPE=CPS8R, ELSET=SPRING",
            *elements,
            "*MATERIAL, NAME=STEEL",
            "*ELASTIC",
            f"{steel[0]},{steel[1]}",
            "*SOLID SECTION, ELSET=SPRING, MATERIAL=STEEL",
            f"{SLICE_WIDTH_MM}",
            support,
            "*STEP",
            "*STATIC",
            "*CLOAD",
            *(f"{node + 1},{axis},{force:.12e}" for node, axis, force in loads),
            "*NODE FILE, OUTPUT=2D",
            "U",
            "*EL FILE, OUTPUT=2D",
            "S",
            "*END STEP\n",
        ]
    )


def run_calculix(deck: str) -> tuple[Floats, Floats]:
    """Displacements (three a node) and stresses (xx, yy, zz, xy, yz, zx) in node order."""
    answer, _ = calculix(deck)
    return frd_field(answer, "DISP", 3), frd_field(answer, "STRESS", 6)


def calculix(deck: str) -> tuple[str, str]:
    """Run the solver; returns what it wrote of fields, and what it printed to its table."""
    program = shutil.which("ccx")
    if program is None:
        raise FileNotFoundError("ccx not found: install CalculiX (Debian: calculix-ccx)")
    with tempfile.TemporaryDirectory() as folder:
        Path(folder, "model.inp").write_text(deck, encoding="ascii")
        done = subprocess.run(
            [program, "-i", "model"],
            cwd=folder,
            env={**os.environ, "OMP_NUM_THREADS": "1"},
            capture_output=True,
            text=True,
            check=False,
            preexec_fn=_limited,
        )
        if done.returncode != 0 or "*ERROR" in done.stdout:
            said = f"{done.stdout[-2000:]}{done.stderr[-800:]}"
            raise RuntimeError(f"ccx failed ({done.returncode}):\n{said}")
        return Path(folder, "model.frd").read_text("ascii"), Path(folder, "model.dat").read_text()


def _limited() -> None:
    """By the processor's time, not the clock's: on a shared machine it may wait long."""
    resource.setrlimit(resource.RLIMIT_CPU, (LIMIT_S, LIMIT_S))


def frd_field(answer: str, name: str, components: int) -> Floats:
    """Nodal values in node order: columns of twelve characters after the node's number."""
    block = answer.split(f" -4  {name}", 1)[1].split("\n -3", 1)[0]
    rows = [line for line in block.splitlines() if line.startswith(" -1")]
    starts = [13 + 12 * i for i in range(components)]
    values = np.array([[float(row[s : s + 12]) for s in starts] for row in rows])
    return np.asarray(values[np.argsort([int(row[3:13]) for row in rows])])
