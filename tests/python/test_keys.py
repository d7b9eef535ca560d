"""The table of fields: the command that prints it, what is generated from it, what it refuses."""

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
from backspring.design.fields import KEYS, ROWS, is_number, kind_of
from backspring.design.schema import design_schema
from backspring.report.keys import keys_reference
from backspring.units import parse, shown

ROOT = Path(__file__).resolve().parents[2]
DESIGNS = sorted((ROOT / "data" / "designs").glob("*.toml"))
BAD = tomllib.loads(Path(__file__).with_name("bad_designs.toml").read_text("utf-8"))
HERON = bs.load(ROOT / "data" / "designs" / "heron.toml")
SCHEMA = jsonschema.Draft202012Validator(design_schema())
NUMBERS = {key: row for key, row in ROWS.items() if row.form is _core.Form.number}


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


# What must go, or stand beside it, for a key's example to make sense in the Heron.
BESIDE: dict[str, dict[str, Any]] = {
    "spring.temper_time": {"spring.temper": 515},
    "tang.round_end": {"tang.half_stop": None},
    "tang.kick.distance": {"tang.kick": {"distance": 5, "height": 0.2, "radius": 0.5}},
    "tang.kick.height": {"tang.kick": {"distance": 5, "height": 0.2, "radius": 0.5}},
    "tang.kick.radius": {"tang.kick": {"distance": 5, "height": 0.2, "radius": 0.5}},
}


@pytest.mark.parametrize("key", [key for key, row in ROWS.items() if row.in_file])
def test_each_example_is_a_value_that_a_file_may_hold(key: str) -> None:
    example = tomllib.loads(f"x = {ROWS[key].example}")["x"]
    assert HERON.replace(**BESIDE.get(key, {}), **{key: example}).name == "Heron"


@pytest.mark.parametrize("key", [key for key, row in NUMBERS.items() if row.in_file])
def test_a_slip_of_units_is_refused_at_once(key: str, tmp_path: Path) -> None:
    """What makes no sense is told with file, line, key, rule and value, in the file's unit."""
    row = NUMBERS[key]
    section, _, name = key.rpartition(".")
    path = tmp_path / "dunnock.toml"
    path.write_text(f'format = 1\nname = "Dunnock"\nunits = "in"\n[{section}]\n{name} = 1e7\n')
    with pytest.raises(bs.InvalidInput) as refused:
        bs.load(path)
    value = shown(parse(1e7, kind_of(row), "in"), row.quantity, "in")
    greatest = shown(row.greatest, row.quantity, "in")
    expected = f"{path}:5: {key}: must be at most {greatest}, got {value}"
    assert expected in str(refused.value).splitlines()


@pytest.mark.parametrize(
    ("key", "value", "message"),
    [
        (
            "spring.yield",
            "500 ksi",
            'must be at most 3000 MPa, got 3447.379 MPa (written "500 ksi")',
        ),
        ("spring.width", 5e-324, "must be at least 0.1 mm, got 4.940656e-324 mm"),
        ("fit.preload", "0.9 in", 'must be at most 10 mm, got 22.86 mm (written "0.9 in")'),
    ],
)
def test_nonsense_is_refused_by_its_range(key: str, value: Any, message: str) -> None:
    with pytest.raises(bs.InvalidInput) as refused:
        HERON.replace(**{key: value})
    assert str(refused.value) == f"{key}: {message}"


@pytest.mark.parametrize("key", [row.key for row in _core.dimensions() if not row.derived])
def test_file_core_and_batch_have_the_same_limits(key: str) -> None:
    """What a file may not hold is a row with a status in a study, and a fault of the core."""
    kicked = {"tang.kick": {"distance": 5, "height": 0.2, "radius": 0.5}}
    design = HERON
    if key.startswith("tang.kick"):
        design = HERON.replace(**kicked)
    if key == "tang.round_end":
        design = HERON.replace(**{"tang.half_stop": None})
    beyond = ROWS[key].greatest * (1.0 + 1e-9)
    faults = _core.faults(_core.with_dimension(design.core, key, beyond))
    assert (key, "at_most") in {(fault.key, fault.rule) for fault in faults}
    assert bs.check_many(design, {key: [beyond]}).status.tolist() == ["invalid"]
    with pytest.raises(bs.InvalidInput, match=re.escape(key)):
        design.replace(**{key: beyond})


def test_a_fault_is_data() -> None:
    (fault,) = _core.faults(_core.with_dimension(HERON.core, "spring.width", -2.3))
    assert (fault.key, fault.rule, fault.limits, fault.values, fault.quantity) == (
        "spring.width",
        "greater_than",
        [0.0],
        [-2.3],
        _core.Quantity.length,
    )
    assert fault.message == "must be greater than 0 mm, got -2.3 mm"


def test_a_rule_is_told_in_the_units_of_the_file(tmp_path: Path) -> None:
    kestrel = (ROOT / "data" / "designs" / "kestrel.toml").read_text("utf-8")
    path = tmp_path / "kestrel.toml"
    path.write_text(kestrel.replace('"1 1/2 in"]\n', '"1 3/4 in"]\n').replace('"3/32 in"\n', "3\n"))
    with pytest.raises(bs.InvalidInput) as refused:
        bs.load(path)
    assert [each.message for each in refused.value.faults] == [
        "must be at most 1.968504 in, got 3 in",
        "must lie on the spring, which ends at 1.5 in, got 1.09375 in to 1.75 in",
    ]


def test_one_thickness_flattens_and_a_scale_keeps_the_shape_everywhere() -> None:
    def pulls(many: bs.ManyChecks) -> list[float]:
        return [float(each) for each in many["peak_pull_n"]]

    for key, value in (("spring.thickness", 2.6), ("spring.thickness_scale", 1.03)):
        design = HERON.replace(**{key: value})
        expected = max(stroke.peak_pull_n for stroke in bs.check(design).strokes)
        assert pulls(bs.check_many(HERON, {key: [value]})) == pytest.approx([expected], rel=1e-9)
    thick = HERON.replace(**{"spring.thickness_scale": 1.5, "spring.width": 2}).to_dict()["spring"]
    assert (thick["thickness"][2], thick["width"]) == ([0.0, pytest.approx(5.7)], 2.0)


def test_sizing_by_the_scale_is_sizing_by_the_thickness_at_the_middle_pin() -> None:
    by_scale = bs.size(
        HERON, pull=12, vary="spring.thickness_scale", bounds={"spring.thickness_scale": (0.5, 2)}
    )
    by_size = bs.size(HERON, pull=12, vary="spring.thickness", bounds={"thickness": (1.9, 7.6)})
    assert by_scale.to_dict() == by_size.to_dict()
    (solution,) = by_scale.solutions
    scale = solution.sizes_mm["spring.thickness"] / 3.8
    again = HERON.replace(**{"spring.thickness_scale": scale})
    assert max(s.peak_pull_n for s in bs.check(again).strokes) == pytest.approx(12, rel=1e-6)


def test_the_command_tells_one_key(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["keys", "spring.width", "--units", "in"]) == 0
    text = capsys.readouterr().out
    assert "from liner to liner" in text
    assert "0.003937008 in to 1.968504 in" in text and "width = 2.3" in text


def test_the_command_tells_all_keys_as_json(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["keys", "--json"]) == 0
    rows = json.loads(capsys.readouterr().out)["data"]["keys"]
    assert [row["key"] for row in rows] == [*ROWS]
    width = next(row for row in rows if row["key"] == "spring.width")
    assert (width["unit"], width["least"], width["greatest"]) == ("mm", 0.1, 50.0)
    assert {row["key"] for row in rows if row["dimension"]} == {d.key for d in _core.dimensions()}


@pytest.mark.parametrize("name", ["tang", "tang.kick", "pivot", "second.tang.pivot"])
def test_the_command_finds_tables_and_bare_names(
    name: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["keys", name, "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["data"]["keys"]


@pytest.mark.parametrize(
    ("words", "message"),
    [
        (["spring.widht"], 'spring.widht: unknown key: did you mean "spring.width"?'),
        (["tang", "--schema"], "give one of KEY, --schema and --reference"),
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


def test_the_second_blade_has_the_keys_of_the_first_that_its_end_can_have() -> None:
    second = {key for key in KEYS if key.startswith("second.")}
    assert "second.pad" in second and "second.tang.kick.radius" in second
    assert not second & {"second.fit.rear_pin_offset", "second.blade.hardness"}


def test_a_check_does_not_wait_for_what_it_does_not_use() -> None:
    question = (
        "import sys; from backspring.cli import main; main(sys.argv[1:]); print(*sys.modules)"
    )
    words = [sys.executable, "-c", question, "check", DESIGNS[1], "--json"]
    done = subprocess.run(words, capture_output=True, text=True)
    assert done.returncode == 0
    assert not {"numpy", "rich", "typing_extensions"} & {*done.stdout.split()}
