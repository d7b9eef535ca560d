"""How long a check takes from Python, and how many times faster that is than other ways.

Run: python tests/oracle/bench_check.py. Prints figures of this machine; it judges nothing. The
other ways: the slow reference in NumPy, which does the same as a check, and SciPy's solve_bvp on
the beam of one blade angle, its force and place known beforehand.
"""

from __future__ import annotations

import sys
import time
from collections.abc import Callable
from pathlib import Path
from statistics import median

sys.path.insert(0, str(Path(__file__).parents[1]))

import numpy as np
import numpy.typing as npt
from scipy.integrate import solve_bvp

import backspring as bs
from backspring import _core
from oracle import worked_example
from oracle.slow_spring import solve_rests, travel

Floats = npt.NDArray[np.float64]


def seconds(call: Callable[[], object], repeats: int) -> float:
    """Median time of one call."""
    call()
    times = []
    for _ in range(repeats):
        start = time.perf_counter()
        call()
        times.append(time.perf_counter() - start)
    return median(times)


def bent_by_bvp(place_mm: float, force_n: float) -> float:
    """Deflection where a force bends the worked example: bending alone, no holes [mm]."""
    spring = worked_example.DESIGN["spring"]
    stations, thickness = np.transpose(spring["thickness"])
    rear, modulus = spring["rear_pin"], 205000.0

    def flexibility(x: Floats) -> Floats:
        return np.asarray(
            12.0 / (modulus * spring["width"] * np.interp(x, stations, thickness) ** 3)
        )

    behind = np.linspace(-rear, 0.0, 2001)
    turn_per_nmm = np.trapezoid((1.0 + behind / rear) ** 2 * flexibility(behind), behind)

    def grows(x: Floats, y: Floats) -> Floats:
        return np.vstack((y[1], y[2] * flexibility(x), -force_n * np.ones_like(x)))

    def ends(pin: Floats, end: Floats) -> Floats:
        return np.array([pin[0], pin[1] - turn_per_nmm * pin[2], end[2]])

    along = np.linspace(0.0, place_mm, 12)
    found = solve_bvp(grows, ends, along, np.zeros((3, along.size)), tol=1e-6)
    return float(found.y[0, -1])


def main() -> None:
    slow = worked_example.DESIGN
    spring = slow["spring"] | {"steel": "O1", "hardness": 45}
    whole = bs.Design(name="Heron", spring=spring, tang=slow["tang"], fit=slow["fit"])
    design = whole.core

    check_s = seconds(lambda: bs.check(whole), 400)
    core_s = seconds(lambda: _core.check(design), 400)
    slow_s = seconds(lambda: (solve_rests(slow), travel(slow, 1.0)), 3)
    contact = _core.contact_at(design, 50.0)
    place, force = contact.touches[0].x_mm, contact.touches[0].force_n
    contact_s = seconds(lambda: _core.contact_at(design, 50.0), 400)
    bvp_s = seconds(lambda: bent_by_bvp(place, force), 9)
    print(f"bs.check:                      {1e6 * check_s:10.0f} us (median of 400, one core)")
    print(f"core, full check:              {1e6 * core_s:10.0f} us")
    print(f"NumPy reference, the same:     {1e6 * slow_s:10.0f} us, {slow_s / core_s:.0f} times")
    print(f"core, one blade angle:         {1e6 * contact_s:10.1f} us, joint and all")
    print(f"SciPy solve_bvp, its bending:  {1e6 * bvp_s:10.0f} us, {bvp_s / contact_s:.0f} times")


if __name__ == "__main__":
    main()
