"""A design that states its temper: strength and band from it, a measured hardness before it."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

import backspring as bs
from backspring import _core
from backspring import steel as steels

HERON = bs.load(Path(__file__).resolve().parents[2] / "data" / "designs" / "heron.toml")


def tempered(**spring: Any) -> bs.Design:
    changes: dict[str, Any] = {"hardness": None, "temper": 519} | spring
    return HERON.replace(**{f"spring.{key}": value for key, value in changes.items()})


def notices(design: bs.Design) -> dict[str, str]:
    return {each.code: each.message for each in design.notices}


def test_strength_is_that_of_the_hardness_which_the_temper_leaves() -> None:
    steel = tempered().steel
    # O1 between 482 C (47 HRC) and 538 C (44 HRC), 2 HRC either way.
    hardness = 47.0 - 3.0 * (519 - 482) / (538 - 482)
    assert steel["hardness_hrc"] == round(hardness, 1)
    assert steel["hardness_low_hrc"] == round(hardness - 2.0, 1)
    assert steel["hardness_high_hrc"] == round(hardness + 2.0, 1)
    likely, low, high = (_core.tensile_mpa(hardness + step) for step in (0.0, -2.0, 2.0))
    assert steel["tensile_mpa"] == pytest.approx(likely.value)
    assert steel["yield_mpa"] == pytest.approx(0.85 * likely.value)
    assert steel["yield_low_mpa"] == pytest.approx(0.80 * low.low)
    assert steel["yield_high_mpa"] == pytest.approx(0.92 * high.high)
    assert steel["confidence"]["hardness"] == "read"
    cited = [each["key"] for each in steel["sources"] if each["figure"] == "hardness"]
    assert cited == ["diamond-metals-o1"]


def test_the_margin_is_wider_than_with_a_measured_hardness() -> None:
    by_temper, measured = bs.check(tempered()).travel, bs.check(HERON).travel
    assert by_temper.yield_margin == pytest.approx(measured.yield_margin, rel=0.002)
    assert by_temper.yield_margin_low < 0.96 * measured.yield_margin_low
    assert by_temper.yield_margin_high > 1.04 * measured.yield_margin_high


def test_5160_carries_four_points_either_way_into_its_yield() -> None:
    steel = tempered(steel="5160", temper=425).steel
    assert (steel["hardness_low_hrc"], steel["hardness_high_hrc"]) == (44.5, 52.5)
    ratio = steels.steel("5160").yield_ratio
    assert steel["yield_low_mpa"] == pytest.approx(ratio.low * _core.tensile_mpa(44.5).low)
    assert steel["yield_high_mpa"] == pytest.approx(ratio.high * _core.tensile_mpa(52.5).high)


def test_a_design_keeps_its_temper_in_any_units() -> None:
    inch = tempered(temper="966.2 F", temper_time="60 min")
    assert inch.to_dict()["spring"]["temper"] == pytest.approx(519.0)
    assert inch.to_dict()["spring"]["temper_time"] == 1.0
    assert inch.replace(units="in").steel == inch.steel


def test_a_measured_hardness_comes_before_a_temper() -> None:
    both = tempered(hardness="46 HRC", temper="515 C", temper_time="2 h")
    assert both.steel["hardness_hrc"] == 46.0
    assert both.steel["yield_mpa"] == HERON.replace(**{"spring.hardness": 46}).steel["yield_mpa"]
    assert notices(both)["temper-not-used"] == (
        "the hardness of 46 HRC is used; the temper would give 45.2 HRC"
    )
    unknown = tempered(hardness="46 HRC", temper="700 C")
    assert notices(unknown)["temper-not-used"] == (
        "the hardness of 46 HRC is used; of the temper nothing is known: "
        "temper: known from 149 to 649 C, got 700 C"
    )


def test_a_temper_in_the_brittle_band_is_told() -> None:
    design = tempered(temper=360)
    assert notices(design)["embrittlement"] == (
        "a temper of 360 C lies between 230 and 370 C, where O1 turns brittle (memory): "
        "Tempered-martensite embrittlement of carbon and low-alloy steels (general metallurgy)."
    )
    assert "embrittlement" not in notices(tempered())
    assert "embrittlement" not in notices(HERON)


def test_what_was_filled_in_is_told() -> None:
    defaults = tempered().defaults
    assert "spring.temper_time: that of the data, 1 h per inch, 1 h at least" in defaults
    assert "spring.temper_time: 2 h" in tempered(steel="1095", temper=420).defaults
    assert any(line.endswith("MPa, from the temper") for line in defaults)
    assert not any("temper_time" in line for line in tempered(temper_time=1).defaults)


@pytest.mark.parametrize(
    ("spring", "message"),
    [
        ({"temper": 700}, "spring.temper: temper: known from 149 to 649 C, got 700 C"),
        ({"temper": "515 N"}, 'spring.temper: must be a temperature, got "515 N", which is a f'),
        ({"temper_time": "2 mm"}, 'spring.temper_time: must be a time, got "2 mm", which is a l'),
        ({"temper_time": "9 h"}, "spring.temper: temper time: the table holds 1 h and is used f"),
        ({"temper": None, "temper_time": 2}, "spring.temper: missing: temper_time needs the temp"),
        ({"steel": "17-7PH"}, "spring.temper: no temper data of 17-7PH: measure the hardness and"),
        (
            {"temper": 250},
            "spring.temper: gives 60.4 HRC, by its data 58.4 to 62.4: tensile strength by HRC",
        ),
        (
            {"temper": None},
            'spring.hardness: missing: give it as "45 HRC", or give temper or yield',
        ),
    ],
)
def test_a_temper_that_cannot_be_used_is_refused(spring: Any, message: str) -> None:
    with pytest.raises(bs.InvalidInput) as caught:
        tempered(**spring)
    assert str(caught.value).startswith(message)
    assert "\n" not in str(caught.value)
