"""CalculiX, plane-stress finite elements, run here: 45 pairs of liners as plates with holes."""

from __future__ import annotations

import pytest

from agreement import Agree
from oracle.liner_plate import seat_mm_per_n
from oracle.test_liner_plate import METALS, beam_seat_mm_per_n, plate

NEEDS_CALCULIX = True


@pytest.mark.parametrize("depth_mm", [1.5, 2.0, 3.0])
@pytest.mark.parametrize("height_mm", [8.0, 10.0, 12.0, 14.0, 16.0])
@pytest.mark.parametrize("metal", METALS, ids=[each.name for each in METALS])
def test_liners(agree: Agree, metal: object, height_mm: float, depth_mm: float) -> None:
    liner = plate(metal, 1.0, height_mm, depth_mm)
    case = f"{metal.name}, {height_mm:g} mm high, pins {depth_mm:g} mm deep, give [mm/N]"
    agree(case, beam_seat_mm_per_n(metal, liner), seat_mm_per_n(liner, 2), rel=0.05)
