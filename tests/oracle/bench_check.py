"""How long one full check takes, and how many times faster that is than the slow reference.

Run: python tests/oracle/bench_check.py. Prints figures of this machine; it judges nothing.
"""

from __future__ import annotations

import sys
import time
from collections.abc import Callable
from pathlib import Path
from statistics import median

sys.path.insert(0, str(Path(__file__).parents[1]))

import backspring as bs
from backspring import _core
from oracle import worked_example
from oracle.slow_spring import solve_rests, travel


def seconds(call: Callable[[], object], repeats: int) -> float:
    """Median time of one call."""
    call()
    times = []
    for _ in range(repeats):
        start = time.perf_counter()
        call()
        times.append(time.perf_counter() - start)
    return median(times)


def main() -> None:
    slow = worked_example.DESIGN
    spring = slow["spring"] | {"steel": "O1", "hardness": 45}
    design = bs.Design(name="Heron", spring=spring, tang=slow["tang"], fit=slow["fit"]).core

    core_s = seconds(lambda: _core.check(design), 400)
    slow_s = seconds(lambda: (solve_rests(slow), travel(slow, 1.0)), 3)
    print(f"core, full check:          {1e6 * core_s:10.0f} us (median of 400, one core)")
    print(f"NumPy reference, the same: {1e6 * slow_s:10.0f} us (median of 3)")
    print(f"ratio:                     {slow_s / core_s:10.0f}")


if __name__ == "__main__":
    main()
