"""A design of several blades as a value, and its check as a result."""

from __future__ import annotations

import json
import pickle
from pathlib import Path

import numpy as np
import pytest

import backspring as bs
from backspring import _core
from several_blades import side_by_side, three, twins, unlike

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"
TURNSTONE = bs.load(DESIGNS / "turnstone.toml")
SANDERLING = bs.load(DESIGNS / "sanderling.toml")


def test_blades_have_their_names_in_the_order_of_the_file() -> None:
    assert TURNSTONE.blades == ("long", "pen") and three().blades == ("main", "sheep", "pen")
    assert (TURNSTONE.blade, TURNSTONE.title, TURNSTONE.of_all_blades) == (
        "long", "Turnstone", True,
    )  # fmt: skip
    pen = TURNSTONE.seen_from("pen")
    assert (pen.blade, pen.title, pen.of_all_blades) == ("pen", "Turnstone, pen", False)
    assert pen.identity() == {"name": "Turnstone", "sha256": TURNSTONE.sha256, "blade": "pen"}


def test_one_blade_is_seen_from_itself_and_stays_as_it_was() -> None:
    heron = bs.load(DESIGNS / "heron.toml")
    assert heron.blades == ("main",) and not heron.of_all_blades
    seen = heron.seen_from("main")
    assert seen.core == heron.core and seen.title == "Heron"
    assert bs.check(seen).to_dict() == bs.check(heron).to_dict()


@pytest.mark.parametrize("design", [TURNSTONE, SANDERLING, three()], ids=lambda d: d.name)
def test_seen_from_and_back_is_the_same(design: bs.Design) -> None:
    for blade in design.blades:
        seen = design.seen_from(blade)
        assert seen.core.blades[0].name == blade
        assert seen.seen_from(design.blades[0]).core == design.core
        assert seen.seen_from(blade) == seen
        assert seen.to_dict() == design.to_dict() and seen.sha256 == design.sha256
    with pytest.raises(bs.InvalidInput, match='no blade is called "wren": known are'):
        design.seen_from("wren")


@pytest.mark.parametrize("design", [TURNSTONE, SANDERLING, three()], ids=lambda d: d.name)
def test_a_design_is_a_value(design: bs.Design) -> None:
    again = bs.Design(**design.to_dict())
    assert again == design and hash(again) == hash(design) and again.core == design.core
    assert again.replace(**{"blade.name": "other"}) != design
    for one in (design, design.seen_from(design.blades[1])):
        sent = pickle.loads(pickle.dumps(one))
        assert (sent, sent.blade, sent.core) == (one, one.blade, one.core)
    assert design.seen_from(design.blades[0]) != design.seen_from(design.blades[1])


def test_fingerprints_tell_blades_apart() -> None:
    changed = TURNSTONE.replace(**{"blades.pen.tang.closed": 4.25})
    assert changed.sha256 != TURNSTONE.sha256
    assert changed.shape_sha256 != TURNSTONE.shape_sha256
    renamed = TURNSTONE.replace(**{"blades.pen.blade.nail_nick": 27})
    assert renamed.sha256 != TURNSTONE.sha256
    assert renamed.shape_sha256 == TURNSTONE.shape_sha256


def test_keys_of_replace_go_to_the_blade_that_is_meant() -> None:
    pen = TURNSTONE.seen_from("pen")
    for changed, key, value in (
        (TURNSTONE.replace(**{"tang.closed": 4.3}), "long", 4.3),
        (TURNSTONE.replace(**{"blades.pen.tang.closed": 4.31}), "pen", 4.31),
        (TURNSTONE.replace(**{"blades.long.tang.closed": 4.32}), "long", 4.32),
        (pen.replace(**{"tang.closed": 4.33}), "pen", 4.33),
        (pen.replace(**{"blades.long.tang.closed": 4.34}), "long", 4.34),
    ):
        content = changed.to_dict()
        tangs = {"long": content["tang"], "pen": content["blades"][0]["tang"]}
        assert tangs[key]["closed"] == value
        assert changed.seen_from(key).core.tang.closed_mm == value
    assert pen.replace(**{"spring.pad": [26.5, 36.5]}).to_dict()["blades"][0]["pad"] == [26.5, 36.5]
    assert TURNSTONE.replace(blades=None, **{"spring.support": "clamped"}).blades == ("long",)


@pytest.mark.parametrize("blade", ["long", "pen"])
def test_grinding_the_back_from_either_end_is_the_same_spring(blade: str) -> None:
    ground = bs.grind(TURNSTONE.seen_from(blade), back="0.1 mm")
    assert ground.blade == blade
    rows = np.array(ground.to_dict()["spring"]["thickness"])
    was = np.array(TURNSTONE.to_dict()["spring"]["thickness"])
    assert rows[:, 0] == pytest.approx(was[:, 0], abs=1e-12)
    assert rows[:, 1] == pytest.approx(was[:, 1] - 0.1, abs=1e-12)


def test_a_pad_under_two_blades_takes_preload_from_both() -> None:
    ground = bs.grind(SANDERLING.seen_from("sheep"), pad="0.1 mm").to_dict()
    assert ground["fit"]["preload"] == pytest.approx(0.65)
    assert ground["blades"][0]["fit"]["preload"] == pytest.approx(0.65)


def test_a_size_of_the_rear_blade_is_written_into_the_file() -> None:
    sized = bs.size(TURNSTONE.seen_from("pen"), pull="7 N").solutions[0]
    again = bs.Design(**sized.design.to_dict())
    rows = bs.check(again).blades["pen"].beside
    assert max(stroke.peak_pull_n for row in rows for stroke in row.strokes) == pytest.approx(
        7.0, rel=1e-4
    )


def test_a_check_holds_every_blade_and_survives_being_sent() -> None:
    check = bs.check(TURNSTONE)
    assert isinstance(check, bs.BladesCheck) and set(check.blades) == {"long", "pen"}
    assert [len(each.beside) for each in check.blades.values()] == [2, 3]
    assert pickle.loads(pickle.dumps(check)).to_dict() == check.to_dict()
    data = json.loads(json.dumps(check.to_dict(), allow_nan=False))
    for name, each in check.blades.items():
        assert data["blades"][name] == json.loads(json.dumps(each.to_dict()))
        first = data["blades"][name]["beside"][0]
        assert all(other["position"] == "closed" for other in first["others"].values())
        assert first["positions"] == data["blades"][name]["positions"]


def test_targets_are_those_of_the_worst_blade_in_its_worst_case() -> None:
    check = bs.check(TURNSTONE)
    pulls = [
        max(stroke.peak_pull_n for stroke in row.strokes)
        for each in check.blades.values()
        for row in each.beside
        if row.strokes
    ]
    least = TURNSTONE.replace(**{"targets.pull": [0.1, max(pulls) - 1e-6]})
    most = TURNSTONE.replace(**{"targets.pull": [0.1, max(pulls) + 1e-6]})
    assert [bs.check(each).status for each in (least, most)] == ["fail", "pass"]


def test_what_one_blade_says_names_it() -> None:
    for design in (side_by_side(), twins()):
        for name in design.blades:
            assert bs.check(design.seen_from(name)).report().startswith(f"{design.name}, {name}: ")


def test_a_loose_blade_beside_a_prouder_one_says_why() -> None:
    check = bs.check(side_by_side(half_stop=4.62, closed=4.66))
    said = [notice.message for notice in check.notices if notice.code == "lifted-off"]
    assert any(
        line.startswith("main") and "sheep beside it stands prouder and holds the spring up" in line
        for line in said
    )


def test_angles_of_contacts_are_one_for_each_blade() -> None:
    design = unlike(18.0)
    for angles in ({"main": 0.0}, {"main": 0.0, "pen": 0.0, "wren": 1.0}):
        with pytest.raises(bs.InvalidInput, match="must be one for each blade, main, pen"):
            bs.contacts(design, angles)
    with pytest.raises(bs.OutOfRange):
        bs.contacts(design, {"main": 10.0, "pen": 300.0})


def test_a_study_reaches_the_numbers_of_another_blade() -> None:
    closed = np.array([4.24, 4.26])
    many = bs.check_many(TURNSTONE, {"blades.pen.tang.closed": closed})
    for row, value in enumerate(closed):
        one = TURNSTONE.replace(**{"blades.pen.tang.closed": value}).seen_from("long")
        assert isinstance(one.core, _core.Design)
        pull = max(s.peak_pull_n for b in bs.check(one).beside for s in b.strokes)
        assert many.columns["peak_pull_n"][row] == pytest.approx(pull, rel=1e-12)
    with pytest.raises(bs.InvalidInput, match='did you mean "blades.pen.tang.closed"'):
        bs.check_many(TURNSTONE, {"blades.pen.tang.closd": closed})
    with pytest.raises(bs.InvalidInput, match='no blade is called "wren"'):
        bs.check_many(TURNSTONE, {"blades.wren.tang.closed": closed})
