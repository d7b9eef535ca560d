"""What comes off comes off: no pass is no change, two are one, a depth gives its pull."""

from __future__ import annotations

from typing import Any, get_args

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

import backspring as bs
from backspring.question.grind_result import Face
from law_designs import ENDS, ONE, designs
from law_figures import STANDS, stand

FACES = st.sampled_from(get_args(Face))
DEPTH = st.floats(0.005, 0.15)


def ground(design: bs.Design, face: str, depth_mm: float) -> bs.Design:
    """What is left; a joint that would have no steel left there is another's."""
    try:
        return bs.grind(design, **{face: depth_mm})
    except bs.InvalidInput:
        assume(False)
        raise


def alike(one: bs.Design, other: bs.Design, angles: list[float]) -> None:
    here, there = stand(one, angles), stand(other, angles)
    assert there.energy == pytest.approx(here.energy, rel=1e-9, abs=1e-9)
    assert there.forces == pytest.approx(here.forces, rel=1e-9, abs=1e-9 * here.scale)


@given(designs(kinds=(ONE, ENDS)), FACES)
def test_no_pass_is_no_change(design: bs.Design, face: str) -> None:
    seen = design.seen_from(design.blades[0])
    assert bs.grind(seen, **{face: 0.0}).core == seen.core


@given(designs(kinds=(ONE, ENDS)), FACES, DEPTH, st.floats(0.1, 0.9), STANDS)
def test_two_passes_are_one(
    design: bs.Design, face: str, depth_mm: float, share: float, angles: list[float]
) -> None:
    seen = design.seen_from(design.blades[0])
    once = ground(seen, face, depth_mm)
    twice = ground(ground(seen, face, share * depth_mm), face, depth_mm - share * depth_mm)
    alike(once, twice, angles)


@given(designs(kinds=(ONE,)), DEPTH, DEPTH, STANDS)
def test_back_and_belly_in_either_order(
    design: bs.Design, back_mm: float, belly_mm: float, angles: list[float]
) -> None:
    """Each takes its own face down; neither moves the working face, so the order is free."""
    one = ground(ground(design, "back", back_mm), "belly", belly_mm)
    other = ground(ground(design, "belly", belly_mm), "back", back_mm)
    alike(one, other, angles)


def peak_pull_n(design: bs.Design) -> float | None:
    pulls: Any = [stroke.peak_pull_n for stroke in bs.check(design).strokes]
    return max(pulls, default=None)


@given(designs(kinds=(ONE,)), FACES, st.floats(0.01, 0.1))
def test_the_depth_for_a_pull_gives_it(design: bs.Design, face: Any, depth_mm: float) -> None:
    wanted = peak_pull_n(ground(design, face, depth_mm))
    assume(wanted)
    try:
        found = bs.grind_depth(design, wanted, face)
    except bs.NoConvergence:
        # Where pull does not fall all the way the first fall decides.
        assume(False)
        raise
    assert peak_pull_n(bs.grind(design, **{face: found})) == pytest.approx(wanted, rel=1e-6)


@given(
    designs(kinds=(ONE,)), st.floats(0.7, 1.3), st.sampled_from(("thickness", "width", "preload"))
)
def test_a_size_gives_the_pull_it_was_asked_for(design: bs.Design, share: float, vary: str) -> None:
    now = peak_pull_n(design)
    assume(now)
    assert now is not None
    for answer in bs.size(design, pull=share * now, vary=vary).solutions:
        assert peak_pull_n(answer.design) == pytest.approx(share * now, rel=1e-6)
        assert answer.check.travel.yield_margin == pytest.approx(answer.yield_margin, rel=1e-9)
