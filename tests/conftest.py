"""What every test runs in: caches under build/, small matrices on one thread, figures held.

A second thread only waits on those, at the cost of its core.
"""

import os
from pathlib import Path

import pytest

from agreement import Collector, agree

__all__ = ["agree"]

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


def pytest_addoption(parser: pytest.Parser) -> None:
    """What `backspring evidence` asks with."""
    parser.addoption("--evidence", metavar="FILE", help="write the rows of `agree`, run no other")
    parser.addoption("--joints", type=int, metavar="N", help="so many drawn joints of one blade")


def pytest_configure(config: pytest.Config) -> None:
    """Collect rows where they are asked for."""
    if config.getoption("--evidence"):
        config.pluginmanager.register(Collector(Path(config.getoption("--evidence"))))
