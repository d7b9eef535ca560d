"""The table of fields: its words, the command that prints it, and what is generated from it."""

from __future__ import annotations

import json
import re
import subprocess
import sys
import tomllib
from pathlib import Path
from typing import Any

import jsonschema
import pytest

import backspring as bs
from backspring import _core
from backspring.cli import main
from backspring.design.fields import BLADE_KEYS, ROWS, is_number
from backspring.design.schema import design_schema
from backspring.report.keys import keys_reference

ROOT = Path(__file__).resolve().parents[2]
DESIGNS = sorted((ROOT / "data" / "designs").glob("*.toml"))
BAD = tomllib.loads(Path(__file__).with_name("bad_designs.toml").read_text("utf-8"))
HERON = bs.load(ROOT / "data" / "designs" / "heron.toml")
TURNSTONE = bs.load(ROOT / "data" / "designs" / "turnstone.toml")
SCHEMA = jsonschema.Draft202012Validator(design_schema())


def tables(text: str) -> dict[str, Any]:
    return tomllib.loads(text)


def test_the_schema_under_data_is_the_one_that_is_generated() -> None:
    jsonschema.Draft202012Validator.check_schema(design_schema())
    written = json.loads((ROOT / "data" / "design.schema.json").read_text("utf-8"))
    assert written == design_schema()


def test_the_reference_under_data_is_the_one_that_is_generated() -> None:
    assert (ROOT / "data" / "keys.md").read_text("utf-8") == keys_reference()


@pytest.mark.parametrize("path", DESIGNS, ids=lambda path: path.stem)
def test_the_schema_takes_every_demo(path: Path) -> None:
    assert [*SCHEMA.iter_errors(tables(path.read_text("utf-8")))] == []


@pytest.mark.parametrize(
    "reason",
    [
        "width missing",
        "section missing",
        "key misspelt",
        "kick without radius",
        "kick a number",
        "list",
        "no stations",
        "row of three",
        "pad of one",
        "finish unknown",
        "huge",
        "friction above one",
    ],
)
def test_the_schema_refuses_what_needs_no_units_to_refuse(reason: str) -> None:
    row = next(each for each in BAD["bad"] if each["reason"] == reason)
    assert SCHEMA.is_valid(tables(BAD["good"]))
    assert not SCHEMA.is_valid(tables(BAD["good"].replace(row["old"], row["new"], 1)))


@pytest.mark.parametrize("key", ROWS)
def test_each_key_is_described(key: str) -> None:
    row = ROWS[key]
    assert re.fullmatch(r"[A-Z].{15,}\.", row.meaning)
    assert row.left_out and row.example
    if is_number(row):
        assert row.least < row.greatest


LINERS = {"frame.liner_thickness": 1.0, "frame.liner_height": 12}
SCALES = {"frame.scale_thickness": 3, "frame.scale_modulus": "12 GPa"}
# What must go, or stand beside it, for a key's example to make sense in the Heron.
BESIDE: dict[str, dict[str, Any]] = {
    "tang.outline": {"tang.corner_radius": None, "tang.front": None},
    "spring.temper_time": {"spring.temper": 515},
    "tang.round_end": {"tang.half_stop": None},
    "tang.kick.distance": {"tang.kick": {"distance": 5, "height": 0.2, "radius": 0.5}},
    "tang.kick.height": {"tang.kick": {"distance": 5, "height": 0.2, "radius": 0.5}},
    "tang.kick.radius": {"tang.kick": {"distance": 5, "height": 0.2, "radius": 0.5}},
    **dict.fromkeys(("frame.liner_metal", "frame.liner_modulus", *LINERS), LINERS),
    **dict.fromkeys(SCALES, LINERS | SCALES),
}


@pytest.mark.parametrize("key", [key for key, row in ROWS.items() if row.in_file])
def test_each_example_is_a_value_that_a_file_may_hold(key: str) -> None:
    example = tomllib.loads(f"x = {ROWS[key].example}")["x"]
    if key.startswith("blades."):
        content = TURNSTONE.to_dict()
        content["blades"][0][key.removeprefix("blades.")] = example
        assert bs.Design(**content).blades[1] == content["blades"][0]["name"]
        return
    assert HERON.replace(**BESIDE.get(key, {}) | {key: example}).name == "Heron"


def test_the_command_tells_one_key(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["keys", "spring.width", "--units", "in"]) == 0
    text = capsys.readouterr().out
    assert "from liner to liner" in text
    assert "0.001968504 in to 1.968504 in" in text and "width = 2.3" in text


def test_the_command_tells_all_keys_as_json(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["keys", "--json"]) == 0
    rows = json.loads(capsys.readouterr().out)["data"]["keys"]
    assert [row["key"] for row in rows] == [*ROWS]
    width = next(row for row in rows if row["key"] == "spring.width")
    assert (width["unit"], width["least"], width["greatest"]) == ("mm", 0.05, 50.0)
    assert {row["key"] for row in rows if row["dimension"]} == {d.key for d in _core.dimensions()}


@pytest.mark.parametrize("name", ["tang", "tang.kick", "pivot", "blades.name"])
def test_the_command_finds_tables_and_bare_names(
    name: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["keys", name, "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["data"]["keys"]


@pytest.mark.parametrize(
    ("words", "message"),
    [
        (["spring.widht"], 'spring.widht: unknown key: did you mean "spring.width"?'),
        (["tang", "--schema"], "give one of KEY, --schema, --reference and --drawing"),
    ],
)
def test_the_command_refuses(
    words: list[str], message: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["keys", *words]) == 2
    assert message in capsys.readouterr().err


def test_the_command_prints_what_stands_under_data(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["keys", "--schema"]) == 0
    assert json.loads(capsys.readouterr().out) == design_schema()
    assert main(["keys", "--reference"]) == 0
    assert capsys.readouterr().out == keys_reference()


def test_a_further_blade_has_the_keys_of_the_first_that_it_can_have() -> None:
    assert {"name", "end", "pad", "tang.kick.radius", "fit.dial"} <= BLADE_KEYS.keys()
    assert not {"fit.rear_pin_offset", "spring.width", "friction.spring"} & BLADE_KEYS.keys()


def test_a_check_does_not_wait_for_what_it_does_not_use() -> None:
    question = (
        "import sys; from backspring.cli import main; main(sys.argv[1:]); print(*sys.modules)"
    )
    words = [sys.executable, "-c", question, "check", DESIGNS[1], "--json"]
    done = subprocess.run(words, capture_output=True, text=True)
    assert done.returncode == 0
    assert not {"numpy", "rich", "typing_extensions"} & {*done.stdout.split()}
