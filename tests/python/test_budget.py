"""What is left out of an answer, sized for its design: check, fit, page, JSON and text."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import Any

import pytest

import backspring as bs
from backspring.report.budget import EFFECTS, SETTLED_BY
from backspring.report.check import check_report
from backspring.report.tables import Lines

DESIGNS = Path(__file__).parents[2] / "data" / "designs"
NAMES = ("liners", "pin-clearance", "pivot-clearance", "bow", "modulus")


@cache
def heron() -> bs.Design:
    return bs.load(DESIGNS / "heron.toml")


def effects(**stated: Any) -> set[str]:
    checked = bs.check(heron().replace(**{key.replace("__", "."): stated[key] for key in stated}))
    assert isinstance(checked, bs.Check)
    return {row.effect for row in checked.budget}


def test_all_effects_have_words_and_a_test_that_settles_them() -> None:
    checked = bs.check(heron())
    assert {row.effect for row in checked.budget} == EFFECTS.keys()
    assert {row.settled_by for row in checked.budget} <= SETTLED_BY.keys()


def test_what_the_file_states_is_not_left_out() -> None:
    assert effects() >= {*NAMES}
    stated = {
        "spring__pin_clearance": 0.0,
        "tang__pivot_clearance": 0.0,
        "spring__youngs_modulus": 205000.0,
        "spring__mid_line": [[-38.0, 0.0], [36.5, 0.0]],
        "frame__seat": 1e-4,
    }
    assert not effects(**stated) & {*NAMES}


def test_a_blade_of_several_states_its_own_pivot() -> None:
    sanderling = bs.load(DESIGNS / "sanderling.toml")
    stated = sanderling.replace(**{"blades.clip.tang.pivot_clearance": 0.0})
    checked = bs.check(stated)
    assert isinstance(checked, bs.BladesCheck)
    found = {name: {row.effect for row in each.budget} for name, each in checked.blades.items()}
    assert "pivot-clearance" not in found["clip"]
    assert "pivot-clearance" in found["sheep"]


def test_json_of_check_and_fit_is_one() -> None:
    data, left = bs.check(heron()).to_dict(), bs.allowance(heron()).to_dict()
    assert data["budget"] == left["budget"]
    assert data["budget_sum"] == left["budget_sum"]
    low, high = data["budget_sum"]["reading_mm"]
    squares = [
        (row["reading_low_mm"] or 0.0, row["reading_high_mm"] or 0.0) for row in data["budget"]
    ]
    assert low**2 == pytest.approx(sum(min(each, 0.0) ** 2 for each, _ in squares))
    assert high**2 == pytest.approx(sum(max(each, 0.0) ** 2 for _, each in squares))


@pytest.mark.parametrize(("units", "target"), [("mm", "0.025 mm"), ("in", "1.0 thou")])
def test_a_band_wider_than_the_target_leads_what_is_left_out_after_the_plan(
    units: bs.units.System, target: str
) -> None:
    told = f"readings are not known to their target of {target}"
    text = bs.check(heron()).report(units)
    assert " ".join(text[text.index("Left out") :].split()).startswith(f"Left out {told}")
    for answer in (
        bs.allowance(heron()),
        bs.fit_plan(heron(), half_stop=0.3, closed=0.4, state="unloaded"),
    ):
        blocks = answer.laid_out(units).blocks
        at = next(i for i, each in enumerate(blocks) if getattr(each, "heading", "") == "Left out")
        block = blocks[at]
        assert isinstance(block, Lines)
        # What to leave or to grind comes first; only notices and the caution come after.
        assert {each.heading for each in blocks[at + 1 :]} <= {"Notices", "Caution"}
        assert told in block.lines[0]
        assert "blue the spring's end" in block.lines[0]
    wide = bs.check(heron().replace(**{"targets.reading": 0.2}))
    assert "not known to their target" not in wide.report(units)
    assert wide.to_dict()["budget_sum"]["beyond_target"] is False


def test_three_greatest_are_shown_and_the_rest_when_asked() -> None:
    checked = bs.check(heron())
    short, whole = (check_report(checked, everything=each).plain() for each in (False, True))
    shown = [" ".join(each.split()) for each in (short, whole)]
    words = [EFFECTS[row.effect] + ":" for row in checked.budget]
    assert [word in shown[0] for word in words] == [True] * 3 + [False] * (len(words) - 3)
    assert all(word in shown[1] for word in words)


def test_a_page_has_the_whole_budget(undrawn: None) -> None:
    del undrawn
    html = bs.page(heron(), units="in").html
    section = html.partition("What is left out</h2>")[2].partition("<h2")[0]
    assert all(words.replace("'", "&#x27;") in section for words in EFFECTS.values())
    assert " mm" not in section


def test_a_blade_that_slides_from_its_rest_does_not_stick() -> None:
    design = bs.Design(
        name="Reed",
        spring={
            "steel": "5160",
            "hardness": 43,
            "pad": [33.127, 44.911],
            "rear_pin": 31.143,
            "thickness": [[-35.143, 2.058], [0, 2.582], [33.127, 2.195], [44.911, 2.195]],
            "width": 4,
            "pin_clearance": 0.02,
        },
        tang={
            "pivot": 37.735,
            "open": 5.301,
            "half_stop": 5.301,
            "closed": 5.301,
            "front": 5.519,
            "corner_radius": 1.68,
            "kick": {"distance": 4.996, "height": 1.022, "radius": 0.407},
        },
        fit={"preload": 0.422, "stop": "middle"},
        friction={"spring": 0.184, "pivot": 0.13, "pivot_pin": 3.999},
    )
    checked = bs.check(design)
    assert isinstance(checked, bs.Check)
    assert {"liners", "modulus"} <= {row.effect for row in checked.budget}
