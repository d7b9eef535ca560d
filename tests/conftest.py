"""What every test runs in: caches under build/, and small matrices on one thread.

A second thread only waits on those, at the cost of its core.
"""

import os
from pathlib import Path

_BUILD = Path(__file__).resolve().parents[1] / "build"
for name, place in (
    ("HYPOTHESIS_STORAGE_DIRECTORY", "cache/hypothesis"),
    ("XDG_CACHE_HOME", "cache"),
    ("IPYTHONDIR", "cache/ipython"),
    ("PYTEST_DEBUG_TEMPROOT", "temporary"),
):
    (_BUILD / place).mkdir(parents=True, exist_ok=True)
    os.environ.setdefault(name, str(_BUILD / place))

# Read as NumPy is loaded, which is later than this file.
for library in ("OPENBLAS", "OMP", "MKL"):
    os.environ.setdefault(f"{library}_NUM_THREADS", "1")
