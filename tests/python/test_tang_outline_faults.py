"""What is no outline of a tang, or does not go with one, is told in one sentence."""

from __future__ import annotations

import math

import pytest

import backspring as bs
from drawn_tangs import EGG, restated
from outline_pen import demo


def with_corner(at: int, row: list[float]) -> list[list[float]]:
    return [row if i == at else each for i, each in enumerate(EGG)]


@pytest.mark.parametrize(
    ("rows", "said"),
    [
        (EGG[:2], "must be from 3 to 500 rows of [x, y] or [x, y, bulge], got 2 rows"),
        (EGG * 100, "must be from 3 to 500 rows of [x, y] or [x, y, bulge], got 600 rows"),
        (with_corner(2, [-4.4]), "row 3: must be [x, y] or [x, y, bulge], got [-4.4]"),
        (with_corner(2, [-4.4, math.nan]), "row 3, y"),
        (with_corner(2, [-4.4, 2.2, math.nan]), "row 3: a bulge is a plain number"),
        (with_corner(2, [-1.5, 4.5]), "row 2 is at the same place as row 3"),
        ([*EGG, EGG[0]], "row 7 is at the same place as the first, which is not written twice"),
        (EGG[::-1], "goes round clockwise: write the rows the other way round"),
        ([EGG[0], EGG[3], EGG[2], *EGG[4:]], "crosses itself at"),
        ([[u + 20.0, *rest] for u, *rest in EGG], "must go round the pivot at [0, 0]"),
        (with_corner(0, [600.0, 4.5]), "must be at most 500 mm"),
    ],
)  # fmt: skip
def test_what_is_no_outline_is_told_once(rows: list[list[float]], said: str) -> None:
    with pytest.raises(bs.InvalidInput) as refused:
        restated(demo("heron"), rows)
    assert len(refused.value.faults) == 1
    assert refused.value.faults[0].key == "tang.outline"
    assert said in refused.value.faults[0].message


def test_keys_that_an_outline_says_are_refused_beside_it() -> None:
    with pytest.raises(bs.InvalidInput) as refused:
        demo("heron").replace(**{"tang.outline": EGG})
    told = {fault.key: fault.message for fault in refused.value.faults}
    assert {*told} == {"tang.corner_radius", "tang.front"}
    assert "stands beside tang.outline" in told["tang.front"]


def test_a_face_that_none_may_have_is_told_of_the_row_that_makes_it() -> None:
    """In the file no face is written, so the row that reaches as far is named."""
    with pytest.raises(bs.InvalidInput) as refused:
        restated(demo("heron"), [[24.0 * u, 24.0 * w, *rest] for u, w, *rest in EGG])
    told = [(fault.key, fault.message) for fault in refused.value.faults]
    assert told == [
        ("tang.outline", f"row {row}: makes tang.{face}, which must be at most 100 mm, got {got}")
        for row, face, got in (
            (1, "open", "108 mm"),
            (3, "half_stop", "105.6 mm"),
            (6, "closed", "110.6871 mm"),
        )
    ]


def test_a_face_far_out_of_the_outline_is_refused() -> None:
    with pytest.raises(bs.InvalidInput, match="at most 3 mm out of the drawn outline"):
        restated(demo("heron"), EGG).replace(**{"tang.closed": 8.0})
