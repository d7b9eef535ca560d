"""Grange and Baughman, Trans. ASM 48, 1956: a steel of 0.82 C and 0.75 Mn, rows at 1 h (read).

The fit of 1080 is held to the rows it was made from: no row may be off by more than the greatest
error stated with it, and their squared errors may not add up to more than those of all points. The
row at 649 C lies outside the fitted tempers and is refused.

Tempers for a wanted hardness after 2 h were worked out from the same fit elsewhere, in a table
rounded to the degree: held to 1 C, for the rounding of the parameters.

Their own parameter has C = 18 with time in hours (from memory); the fit, which had C free, found
18.25, about 1 % of T in kelvin away.
"""

import pytest

from agreement import Agree
from backspring import OutOfRange
from backspring import steel as steels

ROWS = [
    (204, 61.3), (260, 59.5), (316, 56.7), (371, 51.0), (427, 47.0), (482, 43.2), (538, 38.8),
    (593, 32.5),
]  # fmt: skip
OUTSIDE = (649, 27.0)


def test_the_fit_gives_the_rows_within_its_stated_error(agree: Agree) -> None:
    temper = steels.steel("1080").temper
    assert temper is not None
    assert temper.fit is not None
    errors = [
        steels.hardness_after_temper("1080", temper_c, 1.0).value - hardness_hrc
        for temper_c, hardness_hrc in ROWS
    ]
    # Stated to one decimal, so half of that is allowed on top.
    assert max(map(abs, errors)) <= temper.fit.greatest_error_hrc + 0.05
    all_points = temper.fit.number_of_points * temper.fit.rms_hrc**2
    assert sum(error**2 for error in errors) <= all_points
    agree("constant of the parameter, time in hours", temper.fit.time_constant, 18.0, rel=0.02)
    stated = [(row.temper_c, row.hardness_hrc) for row in temper.points]
    assert stated == [*ROWS, OUTSIDE]


def test_the_row_outside_the_fit_is_refused() -> None:
    with pytest.raises(OutOfRange, match="temper: known from 195 to 620 C, got 649 C"):
        steels.hardness_after_temper("1080", OUTSIDE[0], 1.0)


@pytest.mark.parametrize(
    ("hardness_hrc", "temper_c"),
    [(42, 484), (45, 450), (48, 415), (50, 389), (52, 363), (55, 320)],
)
def test_temper_for_a_hardness_after_two_hours(
    agree: Agree, hardness_hrc: float, temper_c: float
) -> None:
    found = steels.temper_for_hardness("1080", hardness_hrc, 2.0)
    agree(f"temper of 1080 for {hardness_hrc:g} HRC after 2 h [C]", found.value, temper_c, abs=1.0)
