"""Analysis and Design of Machine Elements, table 14.3, p. 408, and two tables for coil springs:
bending stress the spring trade allows, as a fraction of tensile strength.

Table 14.3: torsion springs, read; the table states one number each for below 10^3 cycles, from
there to 10^6, and beyond, and no stress cycle. Ends of extension springs, music wire and 302,
stress from 0, not peened: read on an engineering site that cites Shigley and the Standard Handbook
of Machine Design. Torsion springs, stress from 0, not peened: the handbook of a spring maker
(Shigley Table 10-10), from memory.

These are the nearest published relatives of a flat spring; between stated lives the fraction is
straight in the logarithm of cycles, and nothing is said outside.
"""

from math import sqrt

import pytest

from agreement import Agree
from backspring import _core as core

CARBON, STAINLESS = core.SpringSteel.carbon, core.SpringSteel.stainless

STEPS = [
    (CARBON, "high-carbon", (0.78, 0.62, 0.54)),
    (CARBON, "oil-tempered", (0.80, 0.64, 0.55)),
    (STAINLESS, "stainless steel", (0.75, 0.60, 0.50)),
]
POINTS = [
    (CARBON, "extension", 1e5, 0.51, "read"),
    (CARBON, "extension", 1e6, 0.47, "read"),
    (STAINLESS, "extension", 1e7, 0.45, "read"),
    (CARBON, "valve-spring", 1e5, 0.55, "memory"),
    (CARBON, "valve-spring", 1e6, 0.53, "memory"),
    (STAINLESS, "torsion spring, music wire", 1e5, 0.53, "memory"),
    (CARBON, "torsion spring, music wire", 1e6, 0.50, "memory"),
]


def _entry(steel: core.SpringSteel, stated_for: str, cycles: float) -> core.SpringAllowable:
    found = [a for a in core.spring_allowables(steel, cycles) if stated_for in a.stated_for]
    assert len(found) == 1
    return found[0]


@pytest.mark.parametrize(("steel", "stated_for", "fractions"), STEPS)
def test_table_14_3(
    agree: Agree, steel: core.SpringSteel, stated_for: str, fractions: tuple[float, float, float]
) -> None:
    few, some, many = fractions
    lives = {100.0: few, 999.0: few, 1e3: some, 3e4: some, 1e6: some, 1.01e6: many, 1e8: many}
    for cycles, fraction in lives.items():
        entry = _entry(steel, stated_for, cycles)
        agree(f"{stated_for}, fraction at {cycles:g} cycles", entry.fraction, fraction)
        assert entry.confidence == "read"


@pytest.mark.parametrize(("steel", "stated_for", "cycles", "fraction", "confidence"), POINTS)
def test_stated_lives(
    agree: Agree,
    steel: core.SpringSteel,
    stated_for: str,
    cycles: float,
    fraction: float,
    confidence: str,
) -> None:
    entry = _entry(steel, stated_for, cycles)
    agree(
        f"{stated_for}, {steel.name}, fraction at {cycles:g} cycles",
        entry.fraction,
        fraction,
        rel=1e-12,
    )
    assert entry.confidence == confidence


def test_between_stated_lives(agree: Agree) -> None:
    halfway = sqrt(1e5 * 1e6)
    agree(
        "extension, between two stated lives",
        _entry(CARBON, "extension", halfway).fraction,
        0.49,
        rel=1e-12,
    )


@pytest.mark.parametrize("cycles", [9.9e4, 1.01e7])
def test_nothing_is_said_outside_the_stated_lives(cycles: float) -> None:
    sources = {a.source for a in core.spring_allowables(CARBON, cycles)}
    assert sources == {"machine-elements-spring-table"}
