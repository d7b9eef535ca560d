"""Advice holds when it is checked again, and a grid finds nothing where it finds nothing."""

import pytest

import advise_brute_force

# With single changes, with pairs alone, with none: the program compares hundreds, and finer.
DRAWN = dict(enumerate(advise_brute_force.drawn_designs(18)))
VALUES = (7, 3)


@pytest.mark.parametrize(("number", "kind"), [(0, "advice"), (17, "advice"), (15, "none")])
def test_a_drawn_design(number: int, kind: str) -> None:
    found = advise_brute_force.compare(*DRAWN[number], VALUES)
    assert found.wrong == ()
    assert found.kind.startswith(kind)
