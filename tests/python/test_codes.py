"""Every code that a diagnostic can carry is listed, once, with what it weighs."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest

from backspring import _core
from backspring.cli import main
from backspring.report.codes import CODES, codes_reference, severity_of
from backspring.report.sentences import SENTENCES

REPO = Path(__file__).resolve().parents[2]
MODULES = sorted((REPO / "python" / "backspring").rglob("*.py"))
FAULT = re.compile(r'(?:Fault|\.fail)\(\s*"([a-z-]+)"')
HERON = str(REPO / "data" / "designs" / "heron.toml")


def faults() -> set[str]:
    """Codes of faults as they stand in the sources."""
    return {code for path in MODULES for code in FAULT.findall(path.read_text("utf-8"))}


def test_the_list_holds_every_notice_and_every_fault_and_nothing_else() -> None:
    assert {*CODES} == {*SENTENCES} | faults() | {"bad-value"}


def test_every_code_of_the_core_is_listed() -> None:
    codes = {_core.name_of(each) for each in _core.NoticeCode.__members__.values()}
    assert codes <= {*CODES}


def test_a_fault_is_an_error_and_a_yielding_spring_a_warning() -> None:
    assert {severity_of(code) for code in faults()} == {"error"}
    assert (severity_of("yields"), severity_of("no-friction")) == ("warning", "note")


def test_the_reference_is_the_one_that_is_written() -> None:
    assert (REPO / "data" / "codes.md").read_text("utf-8") == codes_reference()


def test_a_diagnostic_carries_its_severity(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    text = Path(HERON).read_text("utf-8")
    still = tmp_path / "still.toml"
    still.write_text(text.split("[friction]")[0] + "[targets]" + text.split("[targets]")[1])
    main(["check", str(still), "--json"])
    told = {each["code"]: each for each in json.loads(capsys.readouterr().out)["diagnostics"]}
    assert told["no-friction"]["severity"] == "note"
    still.write_text("width = 2.3 mm")
    assert main(["check", str(still), "--json"]) == 2
    (fault,) = json.loads(capsys.readouterr().out)["diagnostics"]
    assert (fault["code"], fault["severity"], fault["line"]) == ("bad-toml", "error", 1)


def test_one_code_is_told_and_an_unknown_one_refused(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["codes", "yields"]) == 0
    assert capsys.readouterr().out.startswith("yields, warning: the outer fibre yields")
    assert main(["codes", "yield"]) == 2
    assert 'did you mean "yields"?' in capsys.readouterr().err
