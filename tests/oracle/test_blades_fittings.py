"""Two-ended springs are fitted to the end by their plans, and no pass goes below the target."""

from __future__ import annotations

import pytest

from oracle.blades_fittings import fitting


@pytest.mark.parametrize("pins", [1, 2])
def test_both_ends_are_fitted_together(pins: int) -> None:
    for seed in range(4):
        found = fitting(seed, pins)
        assert found.started_mm > 0.05
        assert found.good, found
