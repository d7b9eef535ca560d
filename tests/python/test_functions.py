"""Every public name is described where a user finds it."""

from __future__ import annotations

import inspect
from pathlib import Path

import pytest

import backspring as bs
from backspring.cli import main
from backspring.report.functions import functions_reference, names

REFERENCE = Path(__file__).resolve().parents[2] / "data" / "functions.md"


def test_the_reference_under_data_is_the_one_that_is_generated() -> None:
    assert REFERENCE.read_text("utf-8") == functions_reference()


@pytest.mark.parametrize("name", names())
def test_every_name_says_what_it_is(name: str) -> None:
    text = inspect.getdoc(getattr(bs, name)) or ""
    assert len(text.split()) >= 3
    assert text.split("\n")[0].rstrip().endswith((".", ":"))


def test_one_name_is_printed_whole(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["functions", "grind_table"]) == 0
    shown = capsys.readouterr().out
    assert shown.startswith("grind_table(")
    assert "step" in shown


def test_a_misspelt_name_is_answered_by_the_nearest(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["functions", "chek"]) == 2
    assert 'did you mean "check"?' in capsys.readouterr().err
