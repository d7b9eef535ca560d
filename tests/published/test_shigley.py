"""R. G. Budynas and J. K. Nisbett, Shigley's Mechanical Engineering Design, 9th ed., problem 6-21
and example 6-11.

Problem 6-21, a latch spring of 18 x 3 mm strip, 100 mm long, sprung 2 mm and then 4 mm more: 50.3
and 150.9 N. Read in the solutions and recomputed; tolerance half of the last digit printed.

Example 6-11, a leaf spring on a cam follower, 32 x 2 x 1/4 in, preloaded 2 or 5 in, stroke 2 in.
Inputs read, results derived: 7.15256 lbf/in and 10.98633 kpsi per inch, both to the 6 digits
evaluated; E is 30 Mpsi. Units as printed.
"""

import pytest

from agreement import Agree
from published.beam import belly_stress, cantilever, tip_deflection, uniform

LATCH = cantilever(uniform(100.0, 3.0), 18.0, 207e3)
FOLLOWER = cantilever(uniform(32.0, 0.25), 2.0, 30e6)


@pytest.mark.parametrize(("sprung_mm", "printed_n"), [(2.0, 50.3), (6.0, 150.9)])
def test_problem_6_21_latch_spring_force(agree: Agree, sprung_mm: float, printed_n: float) -> None:
    agree(
        f"problem 6-21, force sprung {sprung_mm:g} mm [N]",
        sprung_mm / tip_deflection(LATCH, 1.0),
        printed_n,
        abs=0.05,
    )


def test_example_6_11_stiffness(agree: Agree) -> None:
    agree(
        "example 6-11, stiffness [lbf/in]", 1.0 / tip_deflection(FOLLOWER, 1.0), 7.15256, rel=1e-6
    )


@pytest.mark.parametrize(("preload_in", "mean_kpsi"), [(2.0, 32.959), (5.0, 65.918)])
def test_example_6_11_stress_range(agree: Agree, preload_in: float, mean_kpsi: float) -> None:
    per_inch = 1.0 / tip_deflection(FOLLOWER, 1.0)
    low, high = (
        belly_stress(FOLLOWER, 0.0, sprung * per_inch) / 1000.0
        for sprung in (preload_in, preload_in + 2.0)
    )
    agree(
        f"example 6-11, preload {preload_in:g} in, amplitude [kpsi]",
        (high - low) / 2.0,
        10.986,
        abs=5e-4,
    )
    agree(
        f"example 6-11, preload {preload_in:g} in, mean stress [kpsi]",
        (high + low) / 2.0,
        mean_kpsi,
        abs=5e-4,
    )
