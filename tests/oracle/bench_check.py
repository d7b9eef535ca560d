"""What answers cost from Python, and how many times more the same costs by other ways, in one run.

Run: python tests/oracle/bench_check.py. Prints times of this machine's processor; it judges
nothing. A figure stands beside each answer, so that it can be seen that both answered the same.
Under "times" a way of our own is told in full checks; another way in what of ours does the same.

The other ways: the slow solution in NumPy (every rest, and the travel by whole degrees, without a
verdict); SciPy's solve_bvp and CalculiX on the spring alone, with 50 N at the pivot.
"""

from __future__ import annotations

import resource
import shutil
import sys
import time
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from statistics import median

sys.path.insert(0, str(Path(__file__).parents[1]))

import numpy as np

import backspring as bs
from backspring import _core
from oracle.plane_stress import solve
from oracle.slow_spring import solve_rests, travel
from oracle.test_boundary_value import FORCE_N, SPRINGS, by_boundary_value
from oracle.test_plane_stress import REFINE, SMALL, as_beam
from oracle.worked_example import DESIGN

DESIGNS = Path(__file__).parents[2] / "data" / "designs"
ROUNDS, FEW_ROUNDS, ROWS = 21, 3, 64


@dataclass(frozen=True)
class Way:
    """One way to an answer: its call, how often it is called for a reading, and its figure.

    `beside` is the way of ours that does the same.
    """

    what: str
    call: Callable[[], float]
    unit: str
    calls: int = 1
    parts: int = 1  # answers of one call
    beside: str = ""


def processor_s() -> float:
    """Of this program and of those it ran; what else the machine does not count."""
    ran = resource.getrusage(resource.RUSAGE_CHILDREN)
    return time.process_time() + ran.ru_utime + ran.ru_stime


def measured(ways: list[Way], rounds: int) -> dict[str, tuple[float, float]]:
    """Median seconds and the figure of each way, by turns so that all see the same machine."""
    spent: dict[str, list[float]] = {way.what: [] for way in ways}
    figures = {}
    for _ in range(rounds):
        for way in ways:
            start = processor_s()
            for _ in range(way.calls):
                figures[way.what] = way.call()
            spent[way.what].append((processor_s() - start) / (way.calls * way.parts))
    return {what: (median(each), figures[what]) for what, each in spent.items()}


def bent_mm(spring: _core.Spring) -> float:
    """What the spring alone gives at the pivot, worked out from its drawing."""
    pivot = SMALL.pivot_mm
    return FORCE_N * _core.deflection_per_force(_core.make_flexibility(spring), pivot, pivot)


def peak_pull_n(check: _core.Check | bs.Check) -> float:
    return max(stroke.peak_pull_n for stroke in check.strokes)


def force_by_numpy_n() -> float:
    travel(DESIGN, 1.0)
    return float(solve_rests(DESIGN)["closed"]["force_n"])


def ours() -> list[Way]:
    heron, osprey, bittern = (
        bs.load(DESIGNS / f"{name}.toml") for name in ("heron", "osprey", "bittern")
    )
    holed = as_beam(SMALL)
    kept = {key: getattr(holed, key) for key in ("thickness", "width_mm", "support", "elastic")}
    plain = _core.Spring(**kept)
    preloads = {"fit.preload": np.linspace(0.8, 0.9, ROWS)}

    def row() -> float:
        many = bs.check_many(heron, preloads, columns=["peak_pull_n"], threads=1)
        return float(many["peak_pull_n"][-1])

    return [
        Way("check", lambda: _core.check(heron.core).positions[-1].force_n, "N closed", 20),
        Way("the same from Python", lambda: peak_pull_n(bs.check(heron)), "N pull", 20),
        Way("check with a kick", lambda: peak_pull_n(_core.check(osprey.core)), "N pull", 10),
        Way("check that yields", lambda: _core.check(bittern.core).travel.peak_stress_mpa,
            "MPa", 10),
        Way("gradient", lambda: float(_core.gradient(heron.core).value[0]), "", 10),
        Way(f"a row of {ROWS}", row, "N pull", parts=ROWS),
        Way("one blade angle", lambda: _core.contact_at(heron.core, 50.0).torque_nmm, "N mm", 200),
        Way("spring without holes", lambda: bent_mm(plain), "mm", 500),
        Way("spring with holes", lambda: bent_mm(holed), "mm", 500),
    ]  # fmt: skip


def theirs() -> list[Way]:
    bvp, solid = SPRINGS["tapered, two pins"], SMALL
    ways = [
        Way("NumPy, pressure free", force_by_numpy_n, "N closed", beside="check"),
        Way("SciPy solve_bvp", lambda: by_boundary_value(*bvp)[0], "mm",
            beside="spring without holes"),
    ]  # fmt: skip
    if shutil.which("ccx") is None:
        print("CalculiX is not installed (the command ccx)")
        return ways
    return [
        *ways,
        Way("CalculiX, plane stress",
            lambda: FORCE_N * solve(solid, REFINE).deflection_at_pivot_mm, "mm",
            beside="spring with holes"),
    ]  # fmt: skip


def main() -> None:
    of_ours, of_theirs = ours(), theirs()
    found = measured(of_ours, ROUNDS) | measured(of_theirs, FEW_ROUNDS)
    print(f"{'':23}{'us':>11}{'times':>9}  {'of':22}answer")
    for way in [*of_ours, *of_theirs]:
        (cost, figure), beside = found[way.what], way.beside or "check"
        times = cost / found[beside][0]
        print(
            f"{way.what:23}{1e6 * cost:11.1f}{times:9.{0 if way.beside else 3}f}  {beside:22}"
            f"{figure:.5g} {way.unit}"
        )


if __name__ == "__main__":
    main()
