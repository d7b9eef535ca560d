"""What changes between two designs: figures, kinds, blades, targets, the picture."""

from __future__ import annotations

import math
from pathlib import Path
from typing import Any

import pytest
from matplotlib.figure import Figure

import backspring as bs
from backspring.question.compare_figures import MAIN

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"
HERON = bs.load(DESIGNS / "heron.toml")
TURNSTONE = bs.load(DESIGNS / "turnstone.toml")


def one(a: bs.Design, b: bs.Design) -> bs.Comparison:
    found = bs.compare(a, b)
    assert isinstance(found, bs.Comparison)
    return found


def changed(**changes: Any) -> bs.Design:
    return HERON.replace(**{key.replace("__", "."): value for key, value in changes.items()})


def assert_pull_adds_up(found: bs.Comparison) -> None:
    change = found["peak_pull_n"].change
    assert math.fsum(found.caused("peak_pull_n").values()) == pytest.approx(change, rel=1e-12)


def test_the_same_design_changes_nothing() -> None:
    found = one(HERON, HERON)
    assert found.causes == ()
    assert {each.change for each in found.figures} <= {0.0, None}
    assert found.status == "pass"
    assert "nothing" in found.report()


@pytest.mark.parametrize(
    "other",
    [
        changed(fit__preload=1.0, spring__width=2.4),
        changed(tang__half_stop=None, fit__preload=0.85),
        changed(spring__steel="1095", spring__hardness="47 HRC", tang__closed=4.62),
        changed(spring__thickness=[[-38, 3.2], [0, 3.8], [36.5, 2.4]]),
    ],
)
def test_signs_turn_when_the_designs_change_places(other: bs.Design) -> None:
    there, back = one(HERON, other), one(other, HERON)
    for name in MAIN:
        ahead, behind = there.caused(name), back.caused(name)
        size = sum(map(abs, ahead.values())) + 1e-9
        for key in {*ahead, *behind}:
            left = ahead.get(key, 0.0) + behind.get(key, 0.0)
            assert left == pytest.approx(0.0, abs=1e-5 * size)


def test_what_differs_in_kind_is_one_step() -> None:
    found = one(HERON, changed(tang__half_stop=None))
    (step,) = found.causes
    assert (step.key, step.sort, step.a, step.b) == ("tang.half_stop", "kind", (4.62,), (None,))
    assert step.changes["peak_pull_n"] == found["peak_pull_n"].change
    assert found["reading_loaded_half_stop_mm"].b is None
    assert found["reading_loaded_half_stop_mm"].change is None


def test_a_kind_stands_beside_the_numbers() -> None:
    found = one(HERON, changed(tang__half_stop=None, spring__width=2.5))
    assert {(each.key, each.sort) for each in found.causes} == {
        ("tang.half_stop", "kind"),
        ("spring.width", "number"),
    }
    assert_pull_adds_up(found)


def test_another_steel_is_one_cause_named_by_the_steel() -> None:
    found = one(HERON, changed(spring__steel="1095", spring__hardness="47 HRC"))
    (steel,) = (each for each in found.causes if each.sort != "together")
    assert (steel.key, steel.a, steel.b) == ("spring.steel", ("O1",), ("1095",))
    assert steel.changes["yield_margin"] == found["yield_margin"].change


def test_a_station_more_on_the_same_line_is_no_change() -> None:
    rows = [[-38, 3.2], [-4, 3.8], [0, 3.8], [7, 3.1], [25, 2.4], [30.75, 2.45], [36.5, 2.5]]
    found = one(HERON, changed(spring__thickness=rows))
    assert max(abs(each.change or 0.0) for each in found.figures) < 1e-9


def test_a_grind_is_caused_by_what_the_grinder_takes() -> None:
    ground = bs.grind(HERON, back="0.1 mm", region=(5, 30))
    found = one(HERON, ground)
    rows = bs.grind_table(HERON, "back", "0.1 mm", "0.1 mm", (5, 30)).to_dict()["rows"]
    assert found["peak_pull_n"].change == pytest.approx(
        rows[-1]["peak_pull_n"] - rows[0]["peak_pull_n"], rel=1e-9
    )
    assert found.caused("peak_pull_n")["spring.thickness"] == found["peak_pull_n"].change


def test_each_of_several_blades_is_compared() -> None:
    other = TURNSTONE.replace(**{"blades.pen.tang.closed": 4.27, "spring.width": 2.1})
    found = bs.compare(TURNSTONE, other)
    assert isinstance(found, bs.BladesComparison)
    assert [*found.blades] == ["long", "pen"]
    keys = {name: {each.key for each in c.causes} for name, c in found.blades.items()}
    assert keys["long"] >= {"spring.width", "blades.pen.tang.closed"}
    assert keys["pen"] >= {"spring.width", "tang.closed"}
    assert_pull_adds_up(found.blades["long"])
    seen = bs.compare(TURNSTONE.seen_from("pen"), other.seen_from("pen"))
    assert isinstance(seen, bs.Comparison)
    assert seen["peak_pull_n"] == found.blades["pen"]["peak_pull_n"]


def test_blades_of_no_common_name_are_refused() -> None:
    with pytest.raises(bs.InvalidInput, match="no name in common: long, pen and main"):
        bs.compare(TURNSTONE, HERON)


def test_a_target_lost_is_a_fail_and_one_missed_by_both_is_not() -> None:
    wanting = changed(targets__pull=["2.6 lbf", "6 lbf"])
    assert one(wanting, wanting.replace(**{"fit.preload": 0.95})).status == "pass"
    found = one(wanting, wanting.replace(**{"fit.preload": 0.8}))
    assert found.status == "fail"
    assert [each.name for each in found.targets if each.lost] == ["pull"]
    assert "no longer met: pull" in found.report()


def test_the_sentence_names_what_causes_most_first() -> None:
    found = one(HERON, changed(fit__preload=1.1, spring__width=2.4))
    assert "pull rises by 1.7 N: 1.2 from preload, 0.53 from width" in found.report()
    assert "pull rises by 0.38 lbf" in found.report("in")


def test_both_pull_curves_stand_on_one_picture() -> None:
    found = one(HERON, changed(fit__preload=1.1))
    drawn = bs.plot(found)
    assert isinstance(drawn, Figure)
    legend = drawn.axes[0].get_legend()
    assert legend is not None
    names = [text.get_text() for text in legend.get_texts()]
    assert names == ["Heron (A)", "Heron (A), closing", "Heron (B)", "Heron (B), closing"]
    peaks = [max(line.get_ydata()) for line in drawn.axes[0].lines[:3:2]]  # type: ignore[arg-type]
    pull = found["peak_pull_n"]
    assert peaks == pytest.approx([pull.a, pull.b], rel=1e-3)
    ax = Figure().add_subplot()
    assert bs.plot(found, ax=ax, units="in") is ax
    assert "lbf" in ax.get_ylabel()
    blades = bs.compare(TURNSTONE, TURNSTONE.replace(**{"spring.width": 2.1}))
    assert len(bs.plot(blades).get_axes()) == 2
