"""Tempers by name: bands, units, later heats, ranges."""

from __future__ import annotations

import math
from typing import Any

import pytest

from backspring import Error, InvalidInput, OutOfRange
from backspring import steel as steels
from backspring.steel import tempering

FITTED = ("1075", "1080", "1095")
TABLED = ("420", "440A", "440C", "5160", "52100", "A2", "O1", "W2")


def notices(name: str, temper_c: float, time_h: float | None) -> dict[str, str]:
    found = tempering.temper_notices(steels.steel(name), temper_c, time_h)
    return {each.code: each.message for each in found}


def test_every_steel_but_17_7ph_has_a_temper() -> None:
    have = [name for name in steels.names() if steels.steel(name).temper is not None]
    assert sorted(have) == sorted((*FITTED, *TABLED))


@pytest.mark.parametrize(
    ("temper", "time"),
    [("515 C", "2 h"), ("959 F", "120 min"), ("788.15 K", "7200 s"), (515, 2), ("515", "2")],
)
def test_temperatures_and_times_take_units(temper: Any, time: Any) -> None:
    found = steels.hardness_after_temper("1075", temper, time)
    assert found.value == pytest.approx(steels.hardness_after_temper("1075", 515.0, 2.0).value)


def test_5160_carries_four_points_either_way() -> None:
    found = steels.hardness_after_temper("5160", 425)
    assert (found.value, found.low, found.high) == (48.5, 44.5, 52.5)
    assert found.confidence == "memory"


def test_a_fit_carries_its_rms_error_or_what_a_second_source_asks_for() -> None:
    for name, half_hrc in (("1075", 0.42), ("1080", 0.54), ("1095", 3.0)):
        found = steels.hardness_after_temper(name, 400, 2)
        assert found.high - found.value == pytest.approx(half_hrc)
        assert found.value - found.low == pytest.approx(half_hrc)


def test_the_band_of_a_temper_is_where_the_band_of_the_hardness_ends() -> None:
    found = steels.temper_for_hardness("O1", 45)
    assert steels.temper_for_hardness("O1", 47).value == pytest.approx(found.low)
    assert steels.temper_for_hardness("O1", 43).value == pytest.approx(found.high)
    # At the end of the data it is cut there.
    assert steels.temper_for_hardness("O1", 63).low == 149.0


@pytest.mark.parametrize("name", FITTED)
def test_two_hours_are_meant_where_time_counts_and_none_is_given(name: str) -> None:
    assert steels.hardness_after_temper(name, 400) == steels.hardness_after_temper(name, 400, 2)


@pytest.mark.parametrize("name", FITTED)
def test_a_second_temper_alike_is_a_longer_temper(name: str) -> None:
    twice = steels.hardness_after_heat(name, 400, 2, 400, 2)
    longer = steels.hardness_after_temper(name, 400, 4)
    assert twice.hardness_hrc.value == pytest.approx(longer.value, abs=1e-9)
    assert not twice.extrapolated_in_time


@pytest.mark.parametrize("name", FITTED)
def test_a_hot_moment_by_the_equivalent_time_worked_by_hand(name: str) -> None:
    temper = steels.steel(name).temper
    assert temper is not None
    assert temper.fit is not None
    c = temper.fit.time_constant
    # 2 h at 400 C as a time at 480 C: 10^((673.15 / 753.15) (C + log10 2) - C) hours.
    same_h = 10 ** (673.15 / 753.15 * (c + 0.301029995663981) - c)
    moment = steels.hardness_after_heat(name, "400 C", "2 h", "480 C", "60 s")
    # The sum is under 600 s, so it is set against a temper that has the same parameter.
    wanted = 753.15 * (c + math.log10(same_h + 1 / 60)) / (c + 0.301029995663981) - 273.15
    same = steels.hardness_after_temper(name, wanted, 2)
    assert moment.hardness_hrc.value == pytest.approx(same.value, abs=1e-9)
    assert moment.extrapolated_in_time
    assert moment.hardness_hrc.value < moment.before_hrc.value


def test_a_table_keeps_its_hardness_up_to_its_temper_and_says_nothing_above() -> None:
    kept = steels.hardness_after_heat("O1", "515 C", None, "400 C", "60 s")
    assert kept.hardness_hrc == kept.before_hrc
    with pytest.raises(OutOfRange, match="above the temper of 515 C, got 600 C"):
        steels.hardness_after_heat("O1", "515 C", None, "600 C", "60 s")


@pytest.mark.parametrize(
    ("call", "error", "message"),
    [
        (
            lambda: steels.hardness_after_temper("17-7PH", 480),
            OutOfRange,
            "no temper data of 17-7PH: measure the hardness and give it",
        ),
        (
            lambda: steels.hardness_after_temper("O1", "515 N"),
            InvalidInput,
            'must be a temperature, got "515 N", which is a force',
        ),
        (
            lambda: steels.hardness_after_temper("1075", 400, 0),
            OutOfRange,
            "temper time: known from 10 min to 24 h, got 0 s",
        ),
        (
            lambda: steels.hardness_after_temper("O1", 400, "10 min"),
            OutOfRange,
            "temper time: the table holds 1 h and is used from 30 min to 4 h, got 10 min",
        ),
        (
            lambda: steels.hardness_after_temper("1095", 620, 2),
            OutOfRange,
            "hardness after the heat: known down to 25 HRC, got 17.6 HRC",
        ),
        (
            lambda: steels.temper_for_hardness("1075", 66, 2),
            OutOfRange,
            "hardness after 2 h: known from 26.8 to 60.9 HRC, got 66 HRC",
        ),
        (
            lambda: steels.temper_for_hardness("440C", 45),
            OutOfRange,
            "hardness after a temper: known from 56 to 60 HRC, got 45 HRC",
        ),
        (
            lambda: steels.hardness_after_heat("1075", 400, 2, "700 C", "5 s"),
            OutOfRange,
            "later heat: known up to 620 C, got 700 C",
        ),
        (
            lambda: steels.hardness_after_temper("1075", float("nan"), 2),
            InvalidInput,
            "must be a finite number, got nan",
        ),
    ],
)
def test_what_is_not_known_is_refused(call: Any, error: type[Error], message: str) -> None:
    with pytest.raises(error) as caught:
        call()
    assert str(caught.value) == message


def test_a_brittle_temper_and_a_time_not_counted_are_told() -> None:
    assert set(notices("O1", 300, None)) == {"embrittlement"}
    assert set(notices("O1", 370, 1)) == {"embrittlement"}
    assert set(notices("O1", 371, 1)) == set()
    assert set(notices("440C", 500, None)) == {"embrittlement"}
    assert set(notices("1095", 400, 4)) == set()
    assert notices("O1", 400, 2)["temper-time"] == (
        "the time of 2 h is not counted: the temper data of O1 know one hold only, "
        "1 h per inch, 1 h at least"
    )
    assert notices("W2", 250, 2)["temper-time"] == (
        "the time of 2 h is not counted: the temper data of W2 state no hold"
    )
