"""A design that brings its own steel along in `[steel]`."""

from __future__ import annotations

import json
import pickle
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import jsonschema
import pytest

import backspring as bs
from backspring.design.draft import Draft
from backspring.design.schema import design_schema
from backspring.question.advise_steel import steel_changes
from backspring.question.advise_steps import Steps
from backspring.report.page import _sources
from backspring.report.page_keys import key_tables
from backspring.steel import known
from outline_pen import REPO, demo

STEEL: dict[str, Any] = {
    "name": "Brook 7",
    "also_called": ["B7"],
    "elastic": {"youngs_modulus_mpa": {"value": 201000, "low": 198000, "high": 210000}},
    "strength": {"yield_ratio": {"value": 0.86, "sources": ["bar-label"]}},
    "temper": {
        "hold_h": 2,
        "points": [
            {"temper_c": 300, "hardness_hrc": 55},
            {"temper_c": 500, "hardness_hrc": 45},
        ],
    },
    "sources": {"bar-label": {"title": "The label on the bar"}},
}
TABLE = """[steel]
name = "Brook 7"
elastic.youngs_modulus_mpa = { value = 201000, low = 198000, high = 210000 }

[steel.strength]
yield_ratio = { value = 0.86, sources = ["bar-label"] }

[steel.temper]
hold_h = 2
points = [
    { temper_c = 300, hardness_hrc = 55 },
    { temper_c = 500, hardness_hrc = 45 },
]

[steel.sources.bar-label]
title = "The label on the bar"

"""


@pytest.fixture(autouse=True)
def forgotten(monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """No test leaves a steel behind."""
    monkeypatch.setattr(known, "_own", {})
    monkeypatch.setattr(known, "_own_sources", {})
    known._by_any_name.cache_clear()
    yield
    known._by_any_name.cache_clear()


def own(**changes: Any) -> bs.Design:
    """Heron of a steel that nobody else knows."""
    return demo("heron").replace(**{"steel": STEEL, "spring.steel": None} | changes)


def own_file(tmp_path: Path, old: str = "", new: str = "") -> Path:
    """Heron's file with the table before its others and no steel named."""
    heron = (REPO / "data" / "designs" / "heron.toml").read_text("utf-8")
    bare = re.sub(r"(?m)^steel = .*\n", "", heron, count=1)
    assert bare != heron
    path = tmp_path / "own.toml"
    text = bare.replace("[spring]", TABLE + "[spring]")
    assert old in text
    path.write_text(text.replace(old, new) if old else text, encoding="utf-8")
    return path


def test_the_spring_is_of_the_steel_of_its_own_file(tmp_path: Path) -> None:
    design = bs.load(own_file(tmp_path))
    check = bs.check(design)
    shipped = bs.check(demo("heron").replace(**{"spring.youngs_modulus": "201 GPa"}))
    assert (check.steel["name"], check.steel["youngs_modulus_mpa"]) == ("Brook 7", 201000.0)
    assert check.strokes[0].peak_pull_n == pytest.approx(shipped.strokes[0].peak_pull_n, rel=1e-12)
    titles = {source["key"]: source["title"] for source in check.steel["sources"]}
    assert titles["bar-label"] == "The label on the bar"
    assert design == own(steel={**STEEL, "also_called": None})
    assert "Brook 7" not in bs.steel.names()


def test_its_temper_counts() -> None:
    design = own(**{"spring.hardness": None, "spring.temper": "400 C"})
    assert design.steel["hardness_hrc"] == pytest.approx(50.0)


@pytest.mark.parametrize("name", ["Brook 7", "brook 7", "B7"])
def test_the_spring_may_name_it(name: str) -> None:
    assert own(**{"spring.steel": name}).steel["name"] == "Brook 7"


def test_it_goes_along_through_copies_writing_and_other_processes() -> None:
    design = own(**{"fit.preload": 0.8})
    content = json.loads(json.dumps(design.to_dict()))
    for again in (pickle.loads(pickle.dumps(design)), bs.Design(**content), design.replace()):
        assert (again, again.sha256, hash(again)) == (design, design.sha256, hash(design))
        assert again.steel == design.steel
    real = {"elastic": {"youngs_modulus_mpa": {"value": 201000.0, "low": 198e3, "high": 210e3}}}
    assert own(steel=STEEL | real).sha256 == own().sha256
    assert own(**{"steel.elastic.poisson": {"value": 0.28}}).sha256 != own().sha256


def test_a_changed_table_is_still_the_springs_steel() -> None:
    assert own().replace(**{"steel.name": "Burn 3"}).steel["name"] == "Burn 3"
    stiffer = own().replace(**{"steel.elastic.youngs_modulus_mpa.value": 205000})
    assert stiffer.steel["youngs_modulus_mpa"] == 205000.0
    assert own().steel["youngs_modulus_mpa"] == 201000.0
    with pytest.raises(bs.InvalidInput, match=r"spring\.steel: missing"):
        own().replace(steel=None)


def test_another_steel_may_be_tried_and_the_table_stays() -> None:
    design = own().replace(**{"spring.steel": "1095"})
    assert [each.code for each in design.notices if "steel" in each.code] == ["other-steel"]
    assert "[steel], Brook 7, is not used: spring.steel names 1095" in str(
        [each.text("mm") for each in design.notices]
    )
    assert design.replace(**{"spring.steel": "Brook 7"}) == own()
    with pytest.raises(bs.InvalidInput, match=r'did you mean "Brook 7"\?'):
        design.replace(**{"spring.steel": "Brok 7"})


def test_a_folder_of_steels_serves_beside_it_but_not_with_the_same_name(tmp_path: Path) -> None:
    folder = tmp_path / "steels"
    folder.mkdir()
    (folder / "burn.toml").write_text(TABLE.partition("\n[steel.str")[0].replace("Brook 7", "Burn")
        .replace("[steel]", "strength.yield_ratio = { value = 0.8 }"))  # fmt: skip
    bs.add_steels(folder)
    assert own(**{"spring.steel": "Burn"}).steel["name"] == "Burn"
    with pytest.raises(bs.InvalidInput, match=r'steel\.name: "Burn" is taken'):
        own(steel=STEEL | {"name": "Burn"})


def test_a_page_shows_it_and_what_it_cites() -> None:
    words = [each for each in key_tables(own(), "mm") if each.title == "[steel]"]
    assert words[0].rows[0][:2] == ("name", "Brook 7")
    assert ("elastic.youngs_modulus_mpa.value", "201000") in [row[:2] for row in words[0].rows]
    cited = {row[0]: row[1] for row in _sources([bs.check(own())]).rows}
    assert cited["bar-label"] == "The label on the bar"


def test_an_advice_goes_from_it_to_shipped_steels_and_back() -> None:
    for start in (own(), own(**{"spring.steel": "O1"})):
        draft = Draft.of(start)
        hardness, other = steel_changes(draft, Steps(0.01, 0.1, 5.0))
        assert hardness.key == "spring.hardness"
        assert {*other.words} == {"Brook 7", *bs.steel.names()}
        assert other.words[0] == start.steel["name"]
        for place, name in enumerate(other.words):
            changed = draft.changed(other.put(draft, place))
            assert changed.choice.steel.name == name


@pytest.mark.parametrize(
    ("old", "new", "words"),
    [
        ('name = "Brook 7"\n', "", r":\d+: steel\.name: missing"),
        ('name = "Brook 7"', 'name = "o1"', r'steel\.name: "o1" is taken: .* shipped'),
        ("value = 201000", "value = 201", r"mpa\.value: must be from 1000 to 1e\+06, got 201$"),
        ("yield_ratio", "yield_rato", 'yield_rato: unknown key: did you mean "yield_ratio"'),
        ('["bar-label"]', '["hearsay"]', r"describe it under \[steel\.sources\.KEY\]"),
        ("title =", "titel =", r"steel\.sources\.bar-label\.title: missing"),
        ("sources.bar-label", "sources.shigley-9", r"is the key of a shipped source"),
        ("temper_c = 500", "temper_c = 200", "must stand in rising order of temper_c"),
        ("[steel]\nname", "[stel]\nname", 'unknown section "stel": did you mean "steel"'),
        ("hold_h = 2", "hold_h = 1e300", r"hold_h: must be from 0.001 to 1000, got one"),
    ],
)
def test_a_bad_table_says_what_and_where(old: str, new: str, words: str, tmp_path: Path) -> None:
    path = own_file(tmp_path, old, new)
    with pytest.raises(bs.InvalidInput) as refused:
        bs.load(path)
    said = [line for line in str(refused.value).split("\n") if re.search(words, line)]
    assert said, refused.value
    assert re.search(r"own\.toml:\d+: ", said[0])


def test_what_is_no_table_or_nested_without_end_is_refused() -> None:
    for steel in (["Brook 7"], 7):
        with pytest.raises(bs.InvalidInput, match=r"steel: must be a table, as \[steel\]"):
            own(steel=steel)
    deep: list[Any] = []
    for _ in range(100_000):
        deep = [deep]
    with pytest.raises(bs.InvalidInput, match="nested too deep"):
        own(steel=STEEL | {"family": deep})


def test_all_faults_of_table_and_design_are_told_at_once(tmp_path: Path) -> None:
    path = own_file(tmp_path, "hold_h = 2", "hold_h = -2")
    path.write_text(path.read_text("utf-8").replace("width = 2.3", "width = -2.3"), "utf-8")
    with pytest.raises(bs.InvalidInput) as refused:
        bs.load(path)
    assert [fault.key for fault in refused.value.faults] == ["steel.temper.hold_h", "spring.width"]


def test_an_editor_is_told_of_it() -> None:
    validator = jsonschema.Draft202012Validator(design_schema())
    held = own().to_dict()
    del held["spring"]["steel"]
    validator.validate(held)
    for wrong in ({"steel": None}, {"steel": {"name": "x"}}):
        bad = {key: each for key, each in (held | wrong).items() if each is not None}
        assert not validator.is_valid(bad)
