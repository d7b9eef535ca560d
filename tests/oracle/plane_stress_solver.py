"""CalculiX as a subprocess: an input deck in, nodal displacements and stresses out."""

import os
import shutil
import subprocess
import tempfile
from pathlib import Path

import numpy as np

from .plane_stress_mesh import Floats

TIME_LIMIT_S = 300


def run_calculix(deck: str) -> tuple[Floats, Floats]:
    """Displacements (three a node) and stresses (xx, yy, zz, xy, yz, zx) in node order."""
    program = shutil.which("ccx")
    if program is None:
        raise FileNotFoundError("ccx not found: install CalculiX (Debian: calculix-ccx)")
    with tempfile.TemporaryDirectory() as folder:
        Path(folder, "spring.inp").write_text(deck, encoding="ascii")
        done = subprocess.run(
            [program, "-i", "spring"],
            cwd=folder,
            env={**os.environ, "OMP_NUM_THREADS": "1"},
            capture_output=True,
            text=True,
            timeout=TIME_LIMIT_S,
            check=False,
        )
        if done.returncode != 0 or "*ERROR" in done.stdout:
            raise RuntimeError(f"ccx failed ({done.returncode}):\n{done.stdout[-2000:]}")
        answer = Path(folder, "spring.frd").read_text(encoding="ascii")
    return _frd_field(answer, "DISP", 3), _frd_field(answer, "STRESS", 6)


def _frd_field(answer: str, name: str, components: int) -> Floats:
    """Nodal values in node order: columns of twelve characters after the node's number."""
    block = answer.split(f" -4  {name}", 1)[1].split("\n -3", 1)[0]
    rows = [line for line in block.splitlines() if line.startswith(" -1")]
    starts = [13 + 12 * i for i in range(components)]
    values = np.array([[float(row[s : s + 12]) for s in starts] for row in rows])
    return np.asarray(values[np.argsort([int(row[3:13]) for row in rows])])
