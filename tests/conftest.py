"""What every test runs in: caches under build/, small matrices on one thread, figures held.

A second thread only waits on those, at the cost of its core. Laws that hold for every design are
tried on a few, always the same; the long profile draws others each time: DEVELOPERS.md.
"""

import os
from pathlib import Path

import pytest
from hypothesis import HealthCheck, settings

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

# A shared machine may be slow at any moment, and a whole design is no small thing to draw.
_SLOW = (HealthCheck.too_slow, HealthCheck.data_too_large, HealthCheck.function_scoped_fixture)
settings.register_profile(
    "few", derandomize=True, max_examples=15, deadline=None, suppress_health_check=_SLOW
)
settings.register_profile(
    "long", max_examples=2000, deadline=None, suppress_health_check=_SLOW, print_blob=True
)
settings.load_profile("few")


def pytest_addoption(parser: pytest.Parser) -> None:
    """What `backspring evidence` asks with."""
    parser.addoption("--evidence", metavar="FILE", help="write the rows of `agree`, run no other")
    parser.addoption("--joints", type=int, metavar="N", help="so many drawn joints of one blade")


def pytest_configure(config: pytest.Config) -> None:
    """Collect rows where they are asked for."""
    if config.getoption("--evidence"):
        config.pluginmanager.register(Collector(Path(config.getoption("--evidence"))))
