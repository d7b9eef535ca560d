"""Hollomon and Jaffe, Time-temperature relations in tempering steel, Trans. AIME 162, 1945, p. 223.

Steels of 0.74 and 0.98 C, tempered 10 s, 90 s, 15 min, 2.5 h and 24 h (times and tempers read; rows
at 2.5 h read). The fits of 1075 and 1095 are held to the rows they were made from: no row may be
off by more than the greatest error stated with the fit, and their squared errors may not add up to
more than those of all points, which the rms error and the number of points give.

Tempers for a wanted hardness after 2 h were worked out from the same fits elsewhere, in a table
rounded to the degree: held to 1 C, for the rounding of the parameters.

Beside 1095: a kiln maker's shop table, 2 x 40 min after fast oil. It reads 1.4 to 2.7 HRC softer
than the fit at its own time (and 0.7 to 2.2 softer than the 2.5 h curve): held to 3 HRC, the band
that the library gives to 1095.
"""

import pytest

from agreement import Agree
from backspring import OutOfRange
from backspring import steel as steels
from backspring.steel.records import Fit

ROWS = {
    "1075": [(200, 59.5), (250, 58.0), (300, 53.5), (400, 47.5), (500, 38.5)],
    "1095": [(200, 62.5), (250, 57.5), (300, 55.5), (406, 45.5), (500, 35.5)],
}
TEMPERS = {
    "1075": [(42, 468), (45, 431), (48, 391), (50, 362), (52, 333), (55, 287)],
    "1095": [(42, 454), (45, 424), (48, 390), (50, 366), (52, 340), (55, 298)],
}
SHOP_1095 = [(200, 60.5), (230, 57.5), (260, 55.5), (290, 53.5), (320, 52.5), (340, 50.0)]


def fit(name: str) -> Fit:
    temper = steels.steel(name).temper
    assert temper is not None
    assert temper.fit is not None
    return temper.fit


@pytest.mark.parametrize("name", ROWS)
def test_the_fit_gives_the_rows_within_its_stated_error(name: str) -> None:
    errors = [
        steels.hardness_after_temper(name, temper_c, 2.5).value - hardness_hrc
        for temper_c, hardness_hrc in ROWS[name]
    ]
    # Stated to one decimal, so half of that is allowed on top.
    assert max(map(abs, errors)) <= fit(name).greatest_error_hrc + 0.05
    all_points = fit(name).number_of_points * fit(name).rms_hrc ** 2
    assert sum(error**2 for error in errors) <= all_points


@pytest.mark.parametrize("name", ROWS)
def test_the_rows_in_the_data_are_the_published_ones(name: str) -> None:
    temper = steels.steel(name).temper
    assert temper is not None
    assert [(row.temper_c, row.hardness_hrc) for row in temper.points] == ROWS[name]
    assert temper.hold_h == 2.5


@pytest.mark.parametrize(
    ("name", "hardness_hrc", "temper_c"),
    [(name, *row) for name, rows in TEMPERS.items() for row in rows],
)
def test_temper_for_a_hardness_after_two_hours(
    agree: Agree, name: str, hardness_hrc: float, temper_c: float
) -> None:
    found = steels.temper_for_hardness(name, hardness_hrc, 2.0)
    agree(
        f"temper of {name} for {hardness_hrc:g} HRC after 2 h [C]", found.value, temper_c, abs=1.0
    )
    assert found.low < found.value < found.high


@pytest.mark.parametrize("name", ROWS)
def test_one_hour_against_two_is_worth_half_to_one_point(name: str) -> None:
    # From 250 to 450 C "about 0.5-1 HRC", worked out with the tempers above: read to half a point.
    for temper_c in range(250, 451, 25):
        one, two = (
            steels.hardness_after_temper(name, temper_c, hours).value for hours in (1.0, 2.0)
        )
        assert 0.25 <= one - two <= 1.25


@pytest.mark.parametrize(("temper_c", "hardness_hrc"), SHOP_1095)
def test_a_shop_table_of_1095_lies_in_the_band(temper_c: float, hardness_hrc: float) -> None:
    fitted = steels.hardness_after_temper("1095", temper_c, "80 min")
    assert 1.3 < fitted.value - hardness_hrc < 2.75
    assert fitted.low <= hardness_hrc <= fitted.high


@pytest.mark.parametrize("name", ROWS)
def test_limits_are_those_of_the_times_that_were_fitted(name: str) -> None:
    assert (fit(name).shortest_s, fit(name).longest_h) == (600.0, 24.0)
    with pytest.raises(OutOfRange, match="temper time: known from 10 min to 24 h"):
        steels.hardness_after_temper(name, 400, "90 s")
