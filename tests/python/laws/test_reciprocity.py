"""Maxwell and Betti: a force here moves the spring there as much as one there moves it here."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

import backspring as bs
from backspring import _core
from law_designs import ENDS, ONE, designs

SHARE = st.floats(0.05, 1.0)


@given(designs(), SHARE, SHARE)
def test_of_two_stations(design: bs.Design, one: float, other: float) -> None:
    core = design.core
    bent = _core.make_flexibility(core.spring)
    here, there = one * core.pad.end_mm, other * core.pad.end_mm
    gone = _core.deflection_per_force(bent, here, there)
    assert gone > 0.0
    assert _core.deflection_per_force(bent, there, here) == pytest.approx(gone, rel=1e-12)
    # No shape of the spring stores less than nothing.
    own = [_core.deflection_per_force(bent, x, x) for x in (here, there)]
    assert gone**2 <= own[0] * own[1] * (1 + 1e-12)


@given(designs(kinds=(ONE, ENDS)), SHARE, SHARE)
def test_a_weight_and_the_dial_change_places(design: bs.Design, one: float, other: float) -> None:
    """With frame and all: what a dial finds against the liners is no plain movement, so without."""
    bare = design.replace(frame=None).seen_from(design.blades[0])
    end = bare.core.pad.end_mm
    here, there = (max(0.06, share * end) for share in (one, other))

    def moved(hung: float, dial: float) -> float:
        return _core.hung_movement_mm(bare.replace(**{"fit.dial": dial}).core, 10.0, hung)

    assert moved(here, there) == pytest.approx(moved(there, here), rel=1e-10)
