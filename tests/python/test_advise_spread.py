"""Advice about one knife says how sure it is, and which target it may miss for that."""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import Any

import pytest

import backspring as bs
from backspring import _core
from backspring.cli import main
from backspring.fit.advise_spread import advice_sds
from backspring.many.spreads import read_spreads
from backspring.question.advise import advise

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"


@pytest.fixture(scope="module")
def files(tmp_path_factory: pytest.TempPathFactory) -> tuple[str, str]:
    """A design that asks for more margin than it has, and a log of a knife made from it."""
    folder = tmp_path_factory.mktemp("advised")
    text = (DESIGNS / "wren.toml").read_text(encoding="utf-8")
    design, log = folder / "wren.toml", folder / "log.csv"
    design.write_text(text.replace("yield_margin = 1.1", "yield_margin = 1.2"), encoding="utf-8")
    knife = bs.Knife(bs.load(design), log)
    knife.measure(closed=0.03, state="loaded")
    knife.measure(pull="12 N")
    return str(design), str(log)


def advised(files: tuple[str, str], capsys: pytest.CaptureFixture[str]) -> dict[str, Any]:
    design, log = files
    assert main(["advise", design, "--log", log, "--json"]) == 1
    found: dict[str, Any] = json.loads(capsys.readouterr().out)["data"]
    return found


def test_each_way_that_is_shown_has_its_spread(
    files: tuple[str, str], capsys: pytest.CaptureFixture[str]
) -> None:
    data = advised(files, capsys)
    with_spread = [way for way in data["advice"] if "spread" in way]
    assert with_spread == data["advice"][:6]
    now = data["knife"]["now"]
    for way in with_spread:
        spread = way["spread"]
        # A change of some hundredths leaves a log as good as it is.
        assert spread["yield_margin_sd"] == pytest.approx(now["yield_margin_sd"], rel=0.3)
        assert 0.0 < spread["peak_pull_sd_n"] < 0.1 * way["figures"]["peak_pull_n"]
        fitted = "tang.closed" in way["changes"]
        assert ("reading_loaded_closed_sd_mm" in spread) == (not fitted)


def test_another_hardness_keeps_what_is_not_known_of_the_steel(files: tuple[str, str]) -> None:
    """To first order a margin is as unsure by yield and stress together as they are alone."""
    knife = bs.Knife(bs.load(files[0]), files[1])
    found = advise(knife.design)
    harder = next(way for way in found.advice if set(way.changes) == {"spring.hardness"})
    (sds,) = advice_sds(knife, found, [harder])
    margin, stress = harder.figures["yield_margin"], harder.figures["peak_stress_mpa"]
    yielding = _core.dimension_value(knife.design.core, "spring.yield")
    assert yielding is not None and sds["peak_stress_mpa"] is not None
    (yield_sd,) = (
        _core.standard_deviation(each)
        for each in read_spreads(knife.design, knife.spreads.texts)
        if each.key == "spring.yield"
    )
    expected = margin * ((yield_sd / yielding) ** 2 + (sds["peak_stress_mpa"] / stress) ** 2) ** 0.5
    assert sds["yield_margin"] == pytest.approx(expected, rel=0.05)


def test_a_target_that_is_met_by_less_than_is_known_is_named(
    files: tuple[str, str], capsys: pytest.CaptureFixture[str]
) -> None:
    design, log = files
    assert main(["advise", design, "--log", log]) == 1
    out = capsys.readouterr().out
    assert out.startswith("Wren: just about meets every target with ")
    told = out.partition("How sure for this knife\n")[2].partition("\n\n")[0]
    first = told.splitlines()[0]
    assert re.fullmatch(
        r"  1: pull \S+ N \+-\S+ N, stress \d+ MPa \+-\d+ MPa, yield margin \S+ \+-\S+,.*", first
    )
    assert "may miss: yield margin" in told
    assert main(["advise", design]) == 1
    drawn = capsys.readouterr().out
    assert "just about" not in drawn and "How sure" not in drawn
