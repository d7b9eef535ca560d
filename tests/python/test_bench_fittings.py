"""Whole fittings in a closed loop: a few here, bench_fittings.py prints a table of five hundred."""

from __future__ import annotations

import pytest

import backspring as bs
from bench_fittings import HERON, OSPREY, WREN, fitted


@pytest.mark.parametrize(
    ("design", "count"), [(HERON, 10), (OSPREY, 3), (WREN, 10)], ids=["Heron", "Osprey", "Wren"]
)
def test_hidden_knives_end_flush_with_the_tip_in_its_place(design: bs.Design, count: int) -> None:
    went = [fitted(design, (7, number)) for number in range(count)]
    for each in went:
        assert each.good, each
    assert max(len(each.trips) for each in went) <= 12
