"""CalculiX, plane-stress finite elements, run here: three curved springs.

See curved_springs.py.
"""

import pytest

from agreement import Agree

from .curved_springs import SPRINGS, compared

NEEDS_CALCULIX = True


@pytest.mark.parametrize("name", SPRINGS)
def test_a_curved_spring_is_as_stiff_as_the_solid(agree: Agree, name: str) -> None:
    row = compared(name)
    agree(f"{name}, stiffness [N/mm]", row.beam, row.solid, rel=0.01)
    # The lean must show, or the check would say nothing of it.
    assert abs(row.straight_beam / row.solid - 1.0) > 0.025
