"""The turning test of a bushing from Python and from the command line."""

from __future__ import annotations

import json
import math
from typing import Any

import pytest

import backspring as bs
from backspring.cli import main

TRUE_MM = {"half_stop": 0.11, "closed": 0.17}


def readings(eccentric_mm: float, oval_mm: float, at_deg: float) -> dict[str, list[float]]:
    """Readings of a bushing that turns with the blade, by its radius towards the spring."""

    def radius(deg: float) -> float:
        turned = math.radians(deg - at_deg)
        return eccentric_mm * math.cos(turned) + oval_mm * math.cos(2.0 * turned)

    return {
        name: [
            TRUE_MM[name] + radius(setting + blade) - radius(setting + 180.0)
            for setting in (0.0, 90.0, 180.0, 270.0)
        ]
        for name, blade in (("half_stop", 90.0), ("closed", 0.0))
    }


@pytest.mark.parametrize(("eccentric", "oval", "at"), [(0.02, 0.01, 0.0), (0.0, 0.03, 30.0)])
def test_the_mean_of_four_quarters_is_what_a_round_bushing_reads(
    eccentric: float, oval: float, at: float
) -> None:
    read = readings(eccentric, oval, at)
    found = bs.turning_test(**read)
    for name, true_mm in TRUE_MM.items():
        assert getattr(found.result, f"{name}_mm") == pytest.approx(true_mm, abs=1e-12)
        assert sum(read[name]) / 4.0 == pytest.approx(true_mm, abs=1e-12)
    assert found.result.eccentricity_mm == pytest.approx(eccentric, abs=1e-12)
    seen = oval * abs(math.cos(math.radians(2.0 * at)))
    assert found.result.oval_mm == pytest.approx(seen, abs=1e-12)
    assert found.unknown == ()


def test_fewer_quarters_say_what_stays_unknown() -> None:
    read = readings(0.02, 0.01, 20.0)
    found = bs.turning_test(
        half_stop=[read["half_stop"][0], None, read["half_stop"][2]],
        closed=[read["closed"][0], None, read["closed"][2]],
    )
    assert found.result.closed_mm == pytest.approx(TRUE_MM["closed"], abs=1e-12)
    assert found.unknown == ("half_stop", "oval")
    text = found.report()
    assert "Not known" in text and "an oval one errs there by up to twice" in text
    assert "half-stop" not in text.splitlines()[0]


def test_the_command_reads_units_and_quarters_left_out(capsys: pytest.CaptureFixture[str]) -> None:
    words = ["--half-stop", "5", "7", "5", "7", "--closed", "0.004 in", "4 thou", "-", "4 thou"]
    scaled = [word if " " in word or "-" in word else f"{word} thou" for word in words]
    assert main(["bushing", *scaled, "--json"]) == 0
    data: dict[str, Any] = json.loads(capsys.readouterr().out)["data"]
    assert data["round"]["half_stop_mm"] == pytest.approx(6 * 0.0254, abs=1e-12)
    assert data["oval_mm"] == pytest.approx(0.5 * 0.0254, abs=1e-12)
    assert data["readings"][2]["closed_mm"] is None
    assert main(["bushing", *scaled, "--units", "in"]) == 0
    first = capsys.readouterr().out.splitlines()[0]
    assert first == "Bushing: a round one will read half-stop 6.0 thou proud, closed 4.0 thou proud"


@pytest.mark.parametrize(
    ("words", "message"),
    [
        ([], "readings: must hold at least one reading"),
        (["--closed", "1", "2", "3", "4", "5"], "closed: must be up to four readings, got 5"),
        (["--closed", "1 N"], '--closed: must be a length, got "1 N", which is a force'),
        (["--half-stop", "20", "--closed", "nan"], "--closed: "),
        (["--half-stop", "20"], "half_stop: must be at most 10 mm, got 20 mm"),
    ],
)
def test_wrong_use_is_told(
    words: list[str], message: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["bushing", *words]) == 2
    assert capsys.readouterr().err.startswith(message)


def test_one_text_is_no_list_of_readings() -> None:
    with pytest.raises(bs.InvalidInput, match="must be up to four readings, got '0.1'"):
        bs.turning_test(closed="0.1")
