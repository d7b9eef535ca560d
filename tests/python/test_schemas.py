"""Every JSON document has a shape that is written down, shipped, closed, and kept."""

from __future__ import annotations

import copy
import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from backspring.cli import COMMANDS, answer, main
from backspring.document.schemas import DATA, document_schema, schema_text

REPO = Path(__file__).resolve().parents[2]
SCHEMAS = REPO / "data" / "schemas"
HERON, OSPREY, TURNSTONE = (
    str(REPO / "data" / "designs" / f"{name}.toml") for name in ("heron", "osprey", "turnstone")
)
# Documents that a command of any test writes are held against their schemas in conftest, these too.
ASKED = (
    ["compare", "--ground", "back", "0.1 mm"],
    ["check"],
    ["fit"],
    ["grind", "--remove", "0.1 mm", "--step", "0.1 mm"],
    ["load"],
    ["size", "--pull", "9 N", "--vary", "fit.preload"],
)
OTHERS = (
    ["codes"],
    ["codes", "yields"],
    ["completion", "bash"],
    ["functions"],
    ["functions", "--reference"],
    ["keys"],
    ["keys", "--schema"],
    ["schema"],
    ["schema", "check"],
    ["steels"],
    *(["steels", name] for name in ("O1", "1095", "17-7PH", "A2")),
    ["steels", "O1", "--temper", "450 C", "--after", "500 C", "60 s"],
    ["steels", "1095", "--hardness", "47"],
    ["fit", HERON, "--closed", "0.4 mm", "--half-stop", "0.3 mm", "--state", "unloaded"],
    ["grind", HERON, "--flush"],
    ["grind", HERON, "--to-pull", "9 N"],
    ["size", HERON, "--pull", "9 N", "--taper", "1.6 mm"],
    ["chek", HERON],
    ["check", "no such file"],
    ["grind", HERON, "--to-pull", "900 N"],
)


def validator(command: str) -> Any:
    return jsonschema.Draft202012Validator(document_schema(command))


def document(words: list[str], capsys: pytest.CaptureFixture[str]) -> Any:
    main([*words, "--json"])
    return json.loads(capsys.readouterr().out)


def test_every_command_has_a_schema() -> None:
    assert sorted(DATA) == sorted(COMMANDS)


@pytest.mark.parametrize("command", DATA)
def test_a_schema_is_one_and_shipped_as_written(command: str) -> None:
    jsonschema.Draft202012Validator.check_schema(document_schema(command))
    shipped = (SCHEMAS / f"{command}.schema.json").read_text("utf-8")
    assert shipped == schema_text(command) + "\n", (
        f"backspring schema {command} > data/schemas/{command}.schema.json"
    )


def test_nothing_else_is_shipped() -> None:
    assert {path.name for path in SCHEMAS.iterdir()} == {f"{each}.schema.json" for each in DATA}


@pytest.mark.parametrize("words", ASKED, ids=" ".join)
def test_what_is_said_of_one_blade_or_two_has_its_shape(
    words: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    for design in (OSPREY, TURNSTONE):
        document([words[0], design, *words[1:]], capsys)


@pytest.mark.parametrize("words", OTHERS, ids=" ".join)
def test_what_is_said_besides_has_its_shape(
    words: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    document(words, capsys)


def test_the_habits_of_a_shop_and_an_undone_entry_have_their_shape(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    log = str(tmp_path / "heron.csv")
    (tmp_path / "heron.toml").write_text(Path(HERON).read_text("utf-8"))
    fit = ["fit", HERON, "--log", log]
    assert main([*fit, "--closed", "0.4 mm", "--half-stop", "0.3 mm", "--state", "unloaded"]) == 0
    capsys.readouterr()
    assert document(["habits", str(tmp_path)], capsys)["data"]["logs"] == 1
    assert document([*fit, "--pull", "12 N"], capsys)["data"]["knife"]["entries"] == 2
    assert document([*fit, "--undo"], capsys)["data"]["log"] == {"entries": 1}


Change = Callable[[dict[str, Any]], object]
WRONG: dict[str, Change] = {
    "a key too many": lambda whole: whole.update(more=1),
    "a status of its own": lambda whole: whole.update(status="done"),
    "data beside an error": lambda whole: whole.update(status="error"),
    "a figure too many": lambda whole: whole["data"]["travel"].update(peak_force_lbf=1.0),
    "a figure missing": lambda whole: whole["data"]["travel"].pop("peak_force_n"),
    "a number as text": lambda whole: whole["data"]["travel"].update(peak_force_n="9"),
    "a margin of a group of its own": lambda whole: whole["data"]["verdict"][0].update(group="x"),
    "a diagnostic without severity": lambda whole: whole["diagnostics"].append({"code": "yields"}),
}


@pytest.mark.parametrize("change", WRONG.values(), ids=WRONG)
def test_a_schema_refuses_a_document_that_is_not_so(
    change: Change, capsys: pytest.CaptureFixture[str]
) -> None:
    good = document(["check", HERON], capsys)
    wrong = copy.deepcopy(good)
    change(wrong)
    assert wrong != good
    assert validator("check").is_valid(good) and not validator("check").is_valid(wrong)


def test_the_documents_of_all_tests_are_held_against_their_schemas() -> None:
    with pytest.raises(AssertionError, match="steels: "):
        answer._document("steels", "pass", {"steel": 7}, [])
