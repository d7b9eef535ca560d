"""Curved springs as beams against plane-stress solids; see curved_springs.py."""

import pytest

from .curved_springs import SPRINGS, compared


@pytest.mark.parametrize("name", SPRINGS)
def test_a_curved_spring_is_as_stiff_as_the_solid(name: str) -> None:
    row = compared(name)
    assert row.off == pytest.approx(0.0, abs=0.01)
    # The lean must show, or the check would say nothing of it.
    assert abs(row.straight_beam / row.solid - 1.0) > 0.025
