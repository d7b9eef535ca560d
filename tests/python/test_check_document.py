"""The JSON document of `backspring check`: others read it. Its shape is held in conftest."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

import backspring as bs
from backspring.cli import main

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"

ONE_BLADE = [path for path in sorted(DESIGNS.glob("*.toml")) if len(bs.load(path).blades) == 1]


@pytest.mark.parametrize("path", ONE_BLADE, ids=lambda path: path.stem)
def test_the_document_holds_what_python_does(
    path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    code = main(["check", str(path), "--json"])
    document = json.loads(capsys.readouterr().out)
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


@pytest.mark.parametrize("name", ["kestrel", "sanderling"])
def test_a_result_does_not_change_and_equals_that_of_an_equal_design(name: str) -> None:
    design = bs.load(DESIGNS / f"{name}.toml")
    check = bs.check(design)
    assert check == bs.check(bs.load(DESIGNS / f"{name}.toml"))
    assert check != bs.check(design.replace(**{"spring.width": "4.9 mm"}))
    with pytest.raises(AttributeError, match="does not change"):
        check.design = design
