"""Two blades on one spring against dense finite elements of the whole spring.

The elements are stepped over tapers and the tangs meet nodes 0.05 mm apart: worth 0.3 % of a
force. Resultants may lie a node apart where a face bears along a stretch.
"""

from __future__ import annotations

from functools import cache

import numpy as np
import pytest

from backspring import _core
from oracle.dense_two_blades import CELL_MM, DenseTwoBlades
from oracle.two_blades import SPAN_MM, twins, unlike

PLACES = [(180.0, 180.0), (1.0, 1.0), (50.0, 2.0), (91.0, 180.0), (130.0, 47.0), (20.0, 110.0)]
FORCE, PLACE_MM = 0.003, 2.0 * CELL_MM
MAKE = {"twins": twins, "unlike": unlike}


@cache
def dense(name: str, span: float | None) -> DenseTwoBlades:
    design = MAKE[name](span)
    steel = design.steel
    return DenseTwoBlades(design.to_dict(), steel["youngs_modulus_mpa"], steel["poisson"])


@pytest.mark.parametrize("place", PLACES)
@pytest.mark.parametrize("span", [None, SPAN_MM])
@pytest.mark.parametrize("name", MAKE)
def test_forces_at_both_ends(name: str, span: float | None, place: tuple[float, float]) -> None:
    slow = dense(name, span)
    both = _core.two_contacts_at(MAKE[name](span).two_blades, *place)
    found = zip((both.first, both.second), slow.forces_n(*place), (0, 1), strict=True)
    for contact, force, end in found:
        own = slow.x_mm[slow.pads[end]]
        own = own if end == 0 else -slow.span_mm - own
        assert contact.force_n == pytest.approx(force.sum(), rel=FORCE)
        touches = contact.touches[: contact.count]
        resultant = sum(touch.x_mm * touch.force_n for touch in touches) / contact.force_n
        assert resultant == pytest.approx(float(own @ force / force.sum()), abs=PLACE_MM)


def test_the_balance_of_one_pin_is_found_by_the_elements_too() -> None:
    slow = dense("unlike", None)
    for place in PLACES:
        first, second = slow.forces_n(*place)
        moments = first @ slow.x_mm[slow.pads[0]], second @ -slow.x_mm[slow.pads[1]]
        assert np.isclose(*moments, rtol=1e-3)
