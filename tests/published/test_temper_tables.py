"""Temper tables of makers and suppliers, one a steel: O1, A2, 52100, 440C, 420, 440A,
W2 and 5160 (5160 from memory).

Each table is read from the page named beside it. Rows are held exactly: a table is interpolated,
not fitted. A second source, where there is one, lies within the band the library gives.

O1: Diamond Metals (read); second: Garland after Carpenter (read), 1 to 3 HRC apart at their ends.
A2: Eastern Tool Steel (read); second: Buffalo (read), up to 3 HRC softer.
52100: a supplier's EN31 table (read); second: AOBO Steel, 60 HRC at 204 C (read).
440C: Rolled Alloys (read); second: the Atlas table (read), the same numbers.
420 and 440A: Allegheny Ludlum Blue Sheet (read); second for 420: CTW, about 52 HRC from 150 to
205 C (read).
W2: Ryerson (read). 5160: ASM table (from memory); second: 341 HB at 540 C (read).

Tempers for a wanted hardness of O1 were worked out from the Diamond table elsewhere, rounded to the
degree: straight lines between rows give them within 1 C.
"""

import pytest

from agreement import Agree
from backspring import OutOfRange
from backspring import steel as steels

ROWS = {
    "O1": [(149, 63), (204, 62), (260, 60), (316, 57), (371, 53), (427, 50), (482, 47), (538, 44),
           (593, 39), (649, 31)],
    "A2": [(150, 62), (205, 61), (260, 60), (315, 59), (370, 58), (425, 58), (480, 58), (540, 57),
           (595, 51)],
    "52100": [(100, 63.5), (150, 62.5), (200, 61.5), (250, 59.5), (300, 56.5), (350, 53.5)],
    "440C": [(149, 60), (204, 59), (260, 57), (316, 56), (371, 56), (427, 56)],
    "420": [(204, 48), (288, 44)],
    "440A": [(204, 54), (288, 50)],
    "W2": [(38, 67), (93, 67), (149, 65), (204, 62), (260, 59), (316, 55)],
    "5160": [(205, 58.7), (315, 54.7), (425, 48.5), (540, 36.6), (650, 27.6)],
}  # fmt: skip
SECOND = {
    "O1": [(149, 64), (177, 63), (204, 61.5), (232, 61), (260, 59), (316, 56), (371, 53),
           (427, 49)],
    "A2": [(316, 56), (427, 56), (593, 50)],
    "52100": [(204, 60)],
    "440C": [(204, 59), (260, 57), (316, 56), (371, 56)],
    "420": [(204, 52)],
    "5160": [(540, 36.6)],
}  # fmt: skip
LEVEL = {"A2": (370, 480), "440C": (316, 427), "W2": (38, 93)}


def pairs(table: dict[str, list[tuple[float, float]]]) -> list[tuple[str, float, float]]:
    return [(name, *row) for name, rows in table.items() for row in rows]


@pytest.mark.parametrize(("name", "temper_c", "hardness_hrc"), pairs(ROWS))
def test_a_row_is_given_exactly(
    agree: Agree, name: str, temper_c: float, hardness_hrc: float
) -> None:
    found = steels.hardness_after_temper(name, temper_c)
    agree(f"{name} tempered at {temper_c:g} C [HRC]", found.value, hardness_hrc)
    assert found.low < found.value < found.high


@pytest.mark.parametrize(("name", "temper_c", "hardness_hrc"), pairs(SECOND))
def test_a_second_source_lies_in_the_band(name: str, temper_c: float, hardness_hrc: float) -> None:
    found = steels.hardness_after_temper(name, temper_c)
    assert found.low <= hardness_hrc <= found.high


@pytest.mark.parametrize(
    ("hardness_hrc", "temper_c"),
    [(42, 560), (45, 519), (48, 464), (50, 427), (52, 390), (55, 344)],
)
def test_temper_of_o1_for_a_hardness(agree: Agree, hardness_hrc: float, temper_c: float) -> None:
    agree(
        f"temper of O1 for {hardness_hrc:g} HRC [C]",
        steels.temper_for_hardness("O1", hardness_hrc).value,
        temper_c,
        abs=1.0,
    )


@pytest.mark.parametrize("name", ROWS)
def test_hardness_falls_all_along_but_where_the_table_is_level(name: str) -> None:
    level_low, level_high = LEVEL.get(name, (0.0, 0.0))
    first, last = ROWS[name][0][0], ROWS[name][-1][0]
    for temper_c in range(int(first), int(last)):
        here, next_ = (
            steels.hardness_after_temper(name, each).value for each in (temper_c, temper_c + 1)
        )
        if level_low <= temper_c < level_high:
            assert next_ == here
        else:
            assert next_ < here


@pytest.mark.parametrize(("name", "level"), LEVEL.items())
def test_on_a_level_stretch_the_lower_temper_is_given_and_the_band_spans_it(
    name: str, level: tuple[float, float]
) -> None:
    hardness = steels.hardness_after_temper(name, level[0]).value
    found = steels.temper_for_hardness(name, hardness)
    assert found.value == level[0]
    assert found.high >= level[1]


@pytest.mark.parametrize("name", ROWS)
def test_nothing_is_said_outside_the_rows(name: str) -> None:
    first, last = ROWS[name][0], ROWS[name][-1]
    for temper_c in (first[0] - 1, last[0] + 1):
        message = f"temper: known from {first[0]} to {last[0]} C, got {temper_c} C"
        with pytest.raises(OutOfRange, match=message):
            steels.hardness_after_temper(name, temper_c)
    message = f"hardness after a temper: known from {last[1]:g} to {first[1]:g} HRC"
    with pytest.raises(OutOfRange, match=message):
        steels.temper_for_hardness(name, last[1] - 1)
