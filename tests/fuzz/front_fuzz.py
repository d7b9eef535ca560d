"""Fuzzes the front: `front_fuzz.py TARGET [FOLDER] [-runs=N and other options of libFuzzer]`.

Needs atheris (pip install atheris). Targets stand in front_targets.py; FOLDER gathers inputs.
"""

from __future__ import annotations

import os
import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent))
for library in ("OPENBLAS", "OMP", "MKL"):
    os.environ.setdefault(f"{library}_NUM_THREADS", "1")

import atheris

with atheris.instrument_imports(include=["backspring", "tomllib", "svgelements", "ezdxf"]):
    import front_targets

# Bytes: enough for what a maker writes, and short enough to be many a second.
LONGEST = {
    "front_design": 4000,
    "front_unit": 80,
    "front_dxf": 20_000,
    "front_svg": 4000,
    "front_log": 2000,
}


def main() -> None:
    """Run one target until it is told to end."""
    name = sys.argv[1] if len(sys.argv) > 1 else ""
    if name not in front_targets.TARGETS:
        sys.exit(f"targets: {', '.join(front_targets.TARGETS)}")
    options = [f"-max_len={LONGEST[name]}", "-timeout=30", "-rss_limit_mb=2500", *sys.argv[2:]]
    atheris.Setup([sys.argv[0], *options], front_targets.TARGETS[name])
    atheris.Fuzz()


if __name__ == "__main__":
    main()
