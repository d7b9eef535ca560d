"""The core against the slow reference: designs of every kind; see core_against_slow.py."""

from __future__ import annotations

import pytest

from oracle.core_against_slow import compared, compared_worst
from oracle.designs import KINDS, Design, generated_designs
from oracle.designs_as_built import AS_BUILT

DESIGNS = generated_designs(4 * len(KINDS), seed=20)
BUILT = generated_designs(len(AS_BUILT), 20, AS_BUILT)
BOTH = [*DESIGNS, *BUILT]


@pytest.mark.parametrize(("label", "slow"), BOTH, ids=[label for label, _ in BOTH])
def test_core_agrees_with_the_slow_reference(label: str, slow: Design) -> None:
    found = list(compared(slow))
    assert len(found) > 15
    assert [each for each in found if not each.used <= 1.0] == [], label


def test_the_kinds_number_fifty_designs_at_least() -> None:
    assert len(DESIGNS) >= 50
    assert len(KINDS) == len({label.rsplit(" ", 1)[0] for label, _ in DESIGNS})


@pytest.mark.parametrize("index", range(0, len(DESIGNS), len(KINDS) // 3))
def test_travel_agrees_with_the_slow_reference(index: int) -> None:
    label, slow = DESIGNS[index]
    assert [each for each in compared_worst(slow) if not each.used <= 1.0] == [], label
