"""Small matrices are solved on one thread: a second one only waits, at the cost of its core."""

import os

# Read as NumPy is loaded, which is later than this file.
for library in ("OPENBLAS", "OMP", "MKL"):
    os.environ.setdefault(f"{library}_NUM_THREADS", "1")
