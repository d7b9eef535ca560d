"""Advice holds when it is checked again, and a grid finds nothing where it finds nothing."""

import pytest

import advise_brute_force

# One with single changes, one with pairs alone, one without any: see the program for hundreds.
DRAWN = {number: each for number, each in enumerate(advise_brute_force.drawn_designs(24))}


@pytest.mark.parametrize("number", [0, 5, 7])
def test_drawn_design(number: int) -> None:
    found = advise_brute_force.compare(*DRAWN[number])
    assert not found.wrong
