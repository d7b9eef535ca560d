"""The verdict in words: what fails first, what is only a note, and what to change at the end."""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path

import pytest

import backspring as bs
from backspring import _core
from backspring.report.check import check_report
from backspring.report.sentences import margin_sentence
from backspring.report.tables import Lines, Report, TextTable
from backspring.report.to_change import to_change
from backspring.report.verdict import MEANINGS
from backspring.units import System

DESIGNS = sorted((Path(__file__).resolve().parents[2] / "data" / "designs").glob("*.toml"))
PASSING = [path for path in DESIGNS if path.stem not in ("heron", "bittern")]
HERON = bs.load(next(path for path in DESIGNS if path.stem == "heron"))
GROUPS = {
    "holds": {"yield", "set", "strain", "hole-edge", "kink", "shoulder", "curve"}
    | {f"{pin}-pin-{way}" for pin in ("middle", "rear") for way in ("shear", "bearing", "liner")},
    "lasts": {"fatigue", "spring-trade"},
    "wears": {"contact-pressure", "galling"},
    "feels": {"rap"},
}


@cache
def checked(path: Path) -> list[bs.Check]:
    design = bs.load(path)
    found = [bs.check(design.seen_from(blade)) for blade in design.blades]
    return [each for each in found if isinstance(each, bs.Check)]


def check_of(design: bs.Design) -> bs.Check:
    found = bs.check(design)
    assert isinstance(found, bs.Check)
    return found


@pytest.mark.parametrize("path", DESIGNS, ids=lambda path: path.stem)
def test_rows_carry_group_and_word_with_failures_first(path: Path) -> None:
    for check in checked(path):
        rows = check.to_dict()["verdict"]
        words = [row["word"] for row in rows]
        assert words == sorted(words, key=[*MEANINGS].index)
        for row in rows:
            assert row["name"] in GROUPS[row["group"]]
            assert row["fails"] == (row["word"] == "fails")
            if row["name"] in ("rap", "galling", "spring-trade"):
                assert row["word"] == "note"
            else:
                assert row["fails"] == (row["margin"] < 1.0)


@pytest.mark.parametrize("path", PASSING, ids=lambda path: path.stem)
def test_a_demo_that_passes_fails_in_nothing(path: Path) -> None:
    for check in checked(path):
        assert check.status == "pass"
        assert "fails" not in {row["word"] for row in check.to_dict()["verdict"]}
        assert check.to_dict()["to_change"].startswith("nothing: all targets are met")


def test_every_kind_is_in_its_group() -> None:
    assert {_core.Margin(kind=kind).name for kind in _core.MarginKind} == set().union(
        *GROUPS.values()
    )


def test_a_yield_margin_of_1_is_a_target_when_none_is_stated() -> None:
    bare = HERON.replace(**{f"targets.{key}": None for key in ("pull", "reading", "openings")})
    bare = bare.replace(**{"targets.yield_margin": None})
    assert check_of(bare).status == "pass"
    soft = check_of(bare.replace(**{"fit.preload": 1.4}))
    assert soft.status == "fail"
    assert "none stated: at the likely strength" in soft.report()
    assert soft.to_dict()["to_change"].startswith("less stress: ")


def test_only_stainless_on_stainless_can_gall() -> None:
    content = HERON.to_dict()
    content["blade"]["hardness"] = "60 HRC"
    for steel, blade, told in (
        ("O1", "stainless", False),
        ("440C", None, False),
        ("440C", "carbon", False),
        ("440C", "stainless", True),
    ):
        content["spring"]["steel"] = steel
        content["blade"]["steel"] = blade
        names = {row.name: row for row in check_of(bs.Design(**content)).verdict}
        assert ("galling" in names) == told
    assert "both stainless" in margin_sentence(names["galling"])


def test_a_wanted_gap_is_judged_alike_by_check_and_tolerance() -> None:
    gap = {
        each.name: each.value
        for row in check_of(HERON).verdict
        if row.name == "rap"
        for each in row.parameters
    }["gap_eased"]
    for wanted, met in ((gap - 0.01, True), (gap + 0.01, False)):
        design = HERON.replace(**{"targets.edge_gap": wanted})
        check = check_of(design)
        (target,) = (each for each in check.targets if each.name == "edge_gap")
        assert (target.met, target.value) == (met, pytest.approx(gap, rel=1e-12))
        assert ("room under the edge" in check.to_dict()["to_change"]) != met
        study = bs.tolerance(design, {"fit.preload": "0 mm"}, n=8, shares=False)
        assert {each.name: each.met for each in study.targets}["edge_gap"] == 8 * met


def test_a_life_is_told_in_openings_with_its_least() -> None:
    rows = {path.stem: checked(path)[0] for path in DESIGNS}
    said = {
        name: margin_sentence(next(each for each in check.verdict if each.name == "fatigue"))
        for name, check in rows.items()
    }
    lasts = r"99 springs of 100 last \d+ openings, half of them (\d+|without limit), at worst \d+"
    assert re.search(rf"for 20000 openings: .*; {lasts}$", said["kestrel"])
    assert re.search(rf"; {lasts}; burnishing the hole to .* openings$", said["heron"])


@pytest.mark.parametrize("units", ["mm", "in"])
@pytest.mark.parametrize("path", DESIGNS, ids=lambda path: path.stem)
def test_a_report_fits_a_terminal(path: Path, units: System) -> None:
    reports = [bs.check(bs.load(path)).report(units)] + [
        check_report(each, units, everything=everything).plain()
        for each in checked(path)
        for everything in (False, True)
    ]
    for text in reports:
        assert max(map(len, text.splitlines())) <= 80
        # No line ends in a number whose unit begins the next.
        assert not re.search(r"\d\n +(?:mm|MPa|N|mJ|deg|in|thou|ksi|lbf|%|openings)\b", text)
        assert "\u00a0" not in text


def test_folding_loses_nothing() -> None:
    line = "of 12.5 mm the spring gives 3 N at station 7.25 mm, " * 4
    table = TextTable("T", ("", "closing peak pull N", "at deg"), (("closed to open", "1.2", "3"),))
    plain = Report("", (Lines("H", (line.strip(),)), table), 40).plain()
    whole = f"H {line.strip()} T closing peak pull N at deg closed to open 1.2 3"
    assert sorted(plain.split()) == sorted(whole.split())
    assert max(map(len, plain.splitlines())) <= 40


def test_what_to_change_goes_by_what_fails() -> None:
    said = to_change(check_of(HERON), "mm")
    assert said.startswith("more pull at less stress: a wider spring")
    assert "pin hole" in said and "`backspring fit DESIGN`" in said
    assert said.endswith("`backspring advise DESIGN` looks for sizes that meet all")
    heavy = HERON.replace(**{"targets.pull": [1.0, 5.0], "targets.reading": None})
    assert to_change(check_of(heavy), "mm").startswith("less pull: ")
    sharp = check_of(HERON.replace(**{"tang.corner_radius": 0.4}))
    assert re.search(r"a corner radius from 0\.\d\d mm on", to_change(sharp, "mm"))
    assert re.search(r"a corner radius from 0\.0\d+ in on", to_change(sharp, "in"))
