"""Steels of one's own, from a folder or stated in the design, and faults of their files."""

from __future__ import annotations

import pickle
import re
import tomllib
from collections.abc import Iterator
from pathlib import Path

import pytest

import backspring as bs
from backspring.cli import main
from backspring.design.own_steel_checks import Checked
from backspring.design.own_steel_fields import SOURCE, STEEL
from backspring.steel import known
from backspring.steel.files import all_sources
from outline_pen import REPO, demo

BROOK = """name = "Brook 7"
also_called = ["B7"]

[elastic]
youngs_modulus_mpa = { value = 201000, low = 198000, high = 210000 }

[strength]
yield_ratio = { value = 0.86, sources = ["bench-notes"] }

[temper]
hold_h = 2
points = [
    { temper_c = 300, hardness_hrc = 55 },
    { temper_c = 500, hardness_hrc = 45 },
]
"""
NOTES = '[bench-notes]\ntitle = "Notes from the bench"\n'


@pytest.fixture(autouse=True)
def forgotten(monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """No test leaves a steel behind."""
    monkeypatch.setattr(known, "_own", {})
    monkeypatch.setattr(known, "_own_sources", {})
    known._by_any_name.cache_clear()
    yield
    known._by_any_name.cache_clear()


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    place = tmp_path / "steels"
    place.mkdir()
    (place / "brook.toml").write_text(BROOK)
    (place / "sources.toml").write_text(NOTES)
    return place


def test_a_steel_of_a_folder_is_known_by_all_its_names(folder: Path) -> None:
    assert bs.add_steels(folder) == ("Brook 7",)
    steel = bs.steel.steel("b7")
    assert steel.name == "Brook 7"
    assert (steel.youngs_modulus_mpa.low, steel.yield_ratio.low) == (198000.0, 0.86)
    assert bs.steel.hardness_after_temper("Brook 7", 400.0).value == pytest.approx(50.0)
    assert "Brook 7" in bs.steel.names()
    assert bs.steel.sources()["bench-notes"].title == "Notes from the bench"
    assert bs.add_steels(folder) == ("Brook 7",)


def test_a_design_of_it_is_checked_with_its_figures(folder: Path) -> None:
    bs.add_steels(folder)
    changes = {"spring.steel": "Brook 7", "spring.hardness": None, "spring.temper": "500 C"}
    check = bs.check(demo("heron").replace(**changes))
    shipped = bs.check(demo("heron").replace(**{"spring.youngs_modulus": "201 GPa"}))
    assert check.steel["youngs_modulus_mpa"] == 201000.0
    assert check.steel["hardness_hrc"] == pytest.approx(45.0)
    assert check.strokes[0].peak_pull_n == pytest.approx(shipped.strokes[0].peak_pull_n)
    titles = {source["key"]: source["title"] for source in check.steel["sources"]}
    assert titles["own-brook"] == "the steel's own file, brook.toml"


def test_a_design_takes_its_steel_along_to_another_process(folder: Path) -> None:
    bs.add_steels(folder)
    packed = pickle.dumps(demo("heron").replace(**{"spring.steel": "Brook 7"}))
    known._own.clear()
    known._own_sources.clear()
    known._by_any_name.cache_clear()
    assert bs.check(pickle.loads(packed)).steel["youngs_modulus_mpa"] == 201000.0


def test_the_command_takes_a_folder(
    folder: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    heron = (REPO / "data" / "designs" / "heron.toml").read_text("utf-8")
    design = tmp_path / "brook.toml"
    design.write_text(heron.replace('"O1"', '"Brook 7"'))
    assert main(["check", str(design)]) == 2
    assert "or its file by --steels FOLDER" in capsys.readouterr().err
    assert main(["check", str(design), "--steels", str(folder)]) in (0, 1)
    assert main(["steels", "--steels", str(folder)]) == 0
    assert "Brook 7" in capsys.readouterr().out


def test_modulus_and_yield_given_need_no_known_steel() -> None:
    given = {"spring.youngs_modulus": "200 GPa", "spring.yield": "1250 MPa"}
    check = bs.check(demo("heron").replace(**{"spring.steel": "a bar of mine"}, **given))
    same = bs.check(demo("heron").replace(**given))
    assert check.steel["name"] == "a bar of mine"
    assert check.travel.yield_margin == pytest.approx(same.travel.yield_margin, rel=1e-12)
    assert check.steel["confidence"]["youngs_modulus"] == "given"


def test_an_unknown_steel_with_one_of_both_is_told_what_else_it_needs() -> None:
    with pytest.raises(bs.InvalidInput, match="give youngs_modulus and yield"):
        demo("heron").replace(**{"spring.steel": "mine", "spring.yield": "1250 MPa"})


def test_a_temper_of_a_steel_without_data_is_refused() -> None:
    changes = {
        "spring.steel": "mine",
        "spring.youngs_modulus": "200 GPa",
        "spring.yield": "1250 MPa",
        "spring.hardness": None,
        "spring.temper": "500 C",
    }
    with pytest.raises(bs.InvalidInput, match="spring.temper: no temper data of mine"):
        demo("heron").replace(**changes)


@pytest.mark.parametrize(
    ("old", "new", "words"),
    [
        ('name = "Brook 7"', "", r"brook\.toml: name: missing"),
        ('name = "Brook 7"', 'name = "o1"', r':1: name: "o1" is taken: .* shipped'),
        (
            "value = 201000",
            "value = 201",
            r":5: elastic.youngs_modulus_mpa.value: must be from 1000",
        ),
        ("value = 201000", 'value = "201 GPa"', "must be a number, got '201 GPa'"),
        ("low = 198000", "low = 205000", "youngs_modulus_mpa.low: must be at most value, 201000"),
        ("yield_ratio", "yield_rato", 'unknown key: did you mean "yield_ratio"'),
        ("yield_ratio", "yield_rato", "strength.yield_ratio: missing"),
        ('"bench-notes"', '"hearsay"', 'no source "hearsay": put it into sources.toml'),
        ("temper_c = 500", "temper_c = 200", "must stand in rising order of temper_c"),
        ("hardness_hrc = 45", "hrc = 45", "temper.points.row 2.hrc: unknown key"),
        ("hold_h = 2", "hold_h = nan", "hold_h: must be a number"),
        ("[elastic]", "[elastic", "brook.toml:4:"),
    ],
)
def test_a_bad_file_says_what_and_where(old: str, new: str, words: str, folder: Path) -> None:
    (folder / "brook.toml").write_text(BROOK.replace(old, new))
    with pytest.raises(bs.InvalidInput) as refused:
        bs.add_steels(folder)
    assert re.search(words, str(refused.value)), refused.value
    assert "Brook 7" not in bs.steel.names()


def test_all_faults_of_all_files_are_told_at_once(folder: Path) -> None:
    (folder / "second.toml").write_text(BROOK.replace("value = 0.86", "value = 86"))
    (folder / "sources.toml").write_text(NOTES + "[shigley-9]\ntitle = 3\n")
    with pytest.raises(bs.InvalidInput) as refused:
        bs.add_steels(folder)
    said = str(refused.value).split("\n")
    assert len(said) == 5  # two of the source, the name twice over, the ratio
    assert sum("sources.toml" in line for line in said) == 2


def test_a_folder_without_a_steel_is_refused(tmp_path: Path) -> None:
    for place in (tmp_path, tmp_path / "none"):
        with pytest.raises(bs.InvalidInput, match="is no folder with a steel's .toml file"):
            bs.add_steels(place)


def test_every_shipped_file_has_fields_that_are_allowed() -> None:
    for path in sorted((REPO / "data" / "steels").glob("*.toml")):
        checked = Checked({*all_sources()})
        checked.table(STEEL, tomllib.loads(path.read_text("utf-8")), "")
        assert checked.faults == [], path
    for key, table in tomllib.loads((REPO / "data/sources.toml").read_text("utf-8")).items():
        checked = Checked(set())
        checked.table(SOURCE, table, key)
        assert checked.faults == []
