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
WREN = str(DESIGNS / "wren.toml")


def altered(folder: Path, old: str, new: str, name: str = "wren") -> str:
    text = (DESIGNS / f"{name}.toml").read_text(encoding="utf-8")
    assert old in text
    path = folder / f"{name}.toml"
    path.write_text(text.replace(old, new), encoding="utf-8")
    return str(path)


@pytest.fixture(scope="module")
def safer(tmp_path_factory: pytest.TempPathFactory) -> str:
    return altered(tmp_path_factory.mktemp("safer"), "yield_margin = 1.1", "yield_margin = 1.2")


@pytest.fixture(scope="module")
def greedy(tmp_path_factory: pytest.TempPathFactory) -> str:
    folder = tmp_path_factory.mktemp("greedy")
    return altered(folder, "yield_margin = 1.1", "yield_margin = 2.2")


def asked(capsys: pytest.CaptureFixture[str], path: str, code: int) -> dict[str, Any]:
    assert main(["advise", path, "--json"]) == code
    document: dict[str, Any] = json.loads(capsys.readouterr().out)
    return document


def test_nothing_to_change_exits_0(capsys: pytest.CaptureFixture[str]) -> None:
    document = asked(capsys, WREN, 0)
    assert (document["status"], document["data"]["advice"]) == ("pass", [])


def test_advice_exits_1_and_carries_values_with_units(
    safer: str, capsys: pytest.CaptureFixture[str]
) -> None:
    document = asked(capsys, safer, 1)
    assert document["status"] == "fail"
    design = bs.load(safer)
    for way in document["data"]["advice"]:
        assert way["met"] and bs.check(design.replace(**way["changes"])).status == "pass"
        assert way["figures"]["yield_margin"] > document["data"]["figures"]["yield_margin"]
    width = next(each for each in document["data"]["limits"] if each["key"] == "spring.width")
    assert (width["now"], width["step"]) == ("2.4 mm", "0.01 mm")


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
    units: str, safer: str, capsys: pytest.CaptureFixture[str]
) -> None:
    everything = ["--all"] if units == "in" else []
    assert main(["advise", safer, "--units", units, *everything]) == 1
    said = capsys.readouterr().out
    assert ("more with --all" in said) == (units == "mm")
    head, *lines = said.splitlines()
    assert head.startswith("Wren: meets every target with ")
    assert max(map(len, [head, *lines[:-1]])) <= 80
    assert bs.check(bs.load(safer).replace(**pasted(said))).status == "pass"


def test_the_blade_that_may_change_is_named(capsys: pytest.CaptureFixture[str]) -> None:
    path = str(DESIGNS / "sanderling.toml")
    assert main(["advise", path, "--blade", "sheep", "--json"]) == 0
    data = json.loads(capsys.readouterr().out)["data"]
    assert {*data["figures"]["blades"]} == {"clip", "sheep"}
    names = {each["name"] for each in data["limits"]}
    assert "sheep's preload" in names and "clip's preload" not in names
