"""The JSON document of `backspring check` keeps its shape: others read it."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import jsonschema
import pytest

import backspring as bs
from backspring.cli import main

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"

NUMBER = {"type": "number"}
MAYBE = {"type": ["number", "null"]}


def table(numbers: str, maybe: str = "", **others: Any) -> dict[str, Any]:
    fields = dict.fromkeys(numbers.split(), NUMBER) | dict.fromkeys(maybe.split(), MAYBE) | others
    return {"type": "object", "properties": fields, "required": list(fields)}


POSITION = table(
    "blade_angle_deg force_n peak_stress_mpa peak_stress_station_mm reading_loaded_mm",
    "yield_margin reading_unloaded_mm",
    contacts_mm={"type": "array", "items": NUMBER},
)
STROKE = table(
    "peak_pull_angle_deg peak_torque_nmm crest_angle_deg energy_released_mj",
    "start_pull_n peak_pull_n closing_peak_pull_n",
    **{"from": {"enum": ["closed", "half_stop"]}, "to": {"enum": ["half_stop", "open"]}},
)
DATA = table(
    "stiffness_n_per_mm",
    design=table("", name={"type": "string"}, sha256={"pattern": "^[0-9a-f]{64}$"}),
    positions={"type": "object", "required": ["open", "closed"], "additionalProperties": POSITION},
    strokes={"type": "array", "items": STROKE},
    travel=table(
        "peak_force_n peak_force_angle_deg peak_stress_mpa peak_stress_angle_deg "
        "peak_stress_station_mm",
        "yield_margin yield_margin_low",
    ),
    steel=table(
        "youngs_modulus_mpa yield_mpa yield_low_mpa",
        "hardness_hrc tensile_mpa",
        name={"type": "string"},
        sources={"type": "array", "minItems": 1},
    ),
)
DIAGNOSTIC = table(
    "",
    code={"type": "string"},
    message={"type": "string"},
    path={"type": ["string", "null"]},
    line={"type": ["integer", "null"]},
)
DOCUMENT = table(
    "",
    format={"const": 1},
    command={"const": "check"},
    version={"const": bs.__version__},
    status={"enum": ["pass", "fail"]},
    data=DATA,
    diagnostics={"type": "array", "items": DIAGNOSTIC},
)


ONE_BLADE = [path for path in sorted(DESIGNS.glob("*.toml")) if len(bs.load(path).blades) == 1]


@pytest.mark.parametrize("path", ONE_BLADE, ids=lambda path: path.stem)
def test_the_document_has_its_stated_shape(path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    code = main(["check", str(path), "--json"])
    document = json.loads(capsys.readouterr().out)
    jsonschema.validate(document, DOCUMENT)
    check = bs.check(bs.load(path))
    assert document["data"] == check.to_dict()
    assert (document["status"], code) == (check.status, {"pass": 0, "fail": 1}[check.status])


def test_a_tang_without_half_stop_has_no_such_position(capsys: pytest.CaptureFixture[str]) -> None:
    main(["check", str(DESIGNS / "wren.toml"), "--json"])
    data = json.loads(capsys.readouterr().out)["data"]
    assert set(data["positions"]) == {"open", "closed"}
    assert [(each["from"], each["to"]) for each in data["strokes"]] == [("closed", "open")]


def test_a_life_that_cannot_be_told_is_missed_and_said(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """A yield stress alone tells no life: the target must not vanish."""
    heron = (DESIGNS / "heron.toml").read_text(encoding="utf-8")
    bare = tmp_path / "bare.toml"
    bare.write_text(heron.replace('hardness = "45 HRC"', 'yield = "1300 MPa"'), encoding="utf-8")
    assert main(["check", str(bare), "--json"]) == 1
    document = json.loads(capsys.readouterr().out)
    targets = {each["name"]: each for each in document["data"]["targets"]}
    assert (targets["openings"]["value"], targets["openings"]["met"]) == (None, False)
    told = [each for each in document["diagnostics"] if each["code"] == "target-unknown"]
    assert len(told) == 1
    assert "tensile strength" in told[0]["message"]
