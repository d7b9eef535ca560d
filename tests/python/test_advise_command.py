"""`backspring advise`: exit codes, JSON, and a text whose lines can be pasted."""

from __future__ import annotations

import json
import tomllib
from pathlib import Path
from typing import Any

import pytest

import backspring as bs
from backspring.cli import main

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"
KESTREL = str(DESIGNS / "kestrel.toml")


def altered(folder: Path, old: str, new: str, name: str = "kestrel") -> str:
    text = (DESIGNS / f"{name}.toml").read_text(encoding="utf-8")
    assert old in text
    path = folder / f"{name}.toml"
    path.write_text(text.replace(old, new), encoding="utf-8")
    return str(path)


@pytest.fixture(scope="module")
def stiffer(tmp_path_factory: pytest.TempPathFactory) -> str:
    return altered(tmp_path_factory.mktemp("stiffer"), "pull = [2, 4]", "pull = [2.6, 4]")


@pytest.fixture(scope="module")
def greedy(tmp_path_factory: pytest.TempPathFactory) -> str:
    folder = tmp_path_factory.mktemp("greedy")
    return altered(folder, "yield_margin = 1.0", "yield_margin = 2.2")


def asked(capsys: pytest.CaptureFixture[str], path: str, code: int) -> dict[str, Any]:
    assert main(["advise", path, "--json"]) == code
    document: dict[str, Any] = json.loads(capsys.readouterr().out)
    return document


def test_nothing_to_change_exits_0(capsys: pytest.CaptureFixture[str]) -> None:
    document = asked(capsys, KESTREL, 0)
    assert (document["status"], document["data"]["advice"]) == ("pass", [])


def test_advice_exits_1_and_carries_values_with_units(
    stiffer: str, capsys: pytest.CaptureFixture[str]
) -> None:
    document = asked(capsys, stiffer, 1)
    assert document["status"] == "fail"
    design = bs.load(stiffer)
    for way in document["data"]["advice"]:
        assert way["met"] and bs.check(design.replace(**way["changes"])).status == "pass"
        assert way["figures"]["peak_pull_n"] > document["data"]["figures"]["peak_pull_n"]
    width = next(each for each in document["data"]["limits"] if each["key"] == "spring.width")
    assert (width["now"], width["step"]) == ("0.09375 in", "0.0005 in")


def test_without_advice_it_exits_3_and_says_what_is_in_the_way(
    greedy: str, capsys: pytest.CaptureFixture[str]
) -> None:
    data = asked(capsys, greedy, 3)["data"]
    assert data["advice"] == [] and data["nearest"]["met"] is False
    assert ["pull", "yield_margin"] in [each["targets"] for each in data["exclusive"]]


def pasted(said: str) -> dict[str, Any]:
    """Lines for the design file, as keys for replace()."""
    lines = said.split("In the design file, for 1\n")[1].split("\n\n")[0]
    tables = tomllib.loads(lines)
    return {f"{table}.{key}": v for table, keys in tables.items() for key, v in keys.items()}


@pytest.mark.parametrize("units", ["mm", "in"])
def test_the_text_fits_80_columns_and_its_lines_can_be_pasted(
    units: str, stiffer: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["advise", stiffer, "--units", units, "--all"]) == 1
    said = capsys.readouterr().out
    head, *lines = said.splitlines()
    assert head.startswith("Kestrel: meets every target with ")
    assert max(map(len, [head, *lines[:-1]])) <= 80
    assert bs.check(bs.load(stiffer).replace(**pasted(said))).status == "pass"


def test_the_text_without_advice_fits_80_columns(
    greedy: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["advise", greedy]) == 3
    said = capsys.readouterr().out
    assert "exclude each other" in said and "Nearest" in said
    assert max(map(len, said.splitlines()[:-1])) <= 80


def test_all_shows_what_is_left_out(stiffer: str, capsys: pytest.CaptureFixture[str]) -> None:
    main(["advise", stiffer])
    assert "more with --all" in capsys.readouterr().out
    main(["advise", stiffer, "--all"])
    assert "more with --all" not in capsys.readouterr().out


def test_the_blade_that_may_change_is_named(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = altered(tmp_path, "yield_margin = 1.05", "yield_margin = 1.30", "sanderling")
    assert main(["advise", path, "--blade", "sheep"]) == 1
    said = capsys.readouterr().out
    assert said.startswith("Sanderling, sheep: ")
    assert "sheep's preload" in said and "clip's preload" not in said
