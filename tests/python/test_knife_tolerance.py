"""What a log tells of one knife is what its tolerance study spreads."""

from __future__ import annotations

import json
from pathlib import Path

import numpy as np
import pytest

import backspring as bs
from backspring import _core
from backspring.cli import main

HERON_FILE = Path(__file__).resolve().parents[2] / "data" / "designs" / "heron.toml"
HERON = bs.load(HERON_FILE)
OSPREY = bs.load(HERON_FILE.with_name("osprey.toml"))
ROWS = 2000


def logged(design: bs.Design, path: Path | None = None) -> bs.Knife:
    """Read unloaded and loaded, a trip between, and pulled both ways.

    A kick's height and the face behind it are told apart by the tip alone.
    """
    knife = bs.Knife(design, path)
    if design.core.tang.kick is not None:
        knife.measure(tip_height=_core.closed_figures(design.core, 0.0).tip_mm)
    knife.measure(half_stop=0.25, closed=0.28, state="unloaded")
    with knife.together():
        knife.ground("half_stop")
        knife.measure(half_stop=0.12, closed=0.28, state="unloaded")
    knife.measure(half_stop=0.10, closed=0.25, state="loaded")
    knife.measure(pull=0.97 * knife.figures["peak_pull_n"].value)
    knife.measure(closing_pull=1.02 * knife.figures["closing_peak_pull_n"].value)
    return knife


def study(knife: bs.Knife) -> bs.Tolerance:
    return bs.tolerance(knife.design, knife.spreads, n=ROWS, threads=1, progress=False)


@pytest.mark.parametrize("design", [HERON, OSPREY], ids=["Heron", "Osprey"])
def test_readings_and_pull_are_as_sure_as_the_log_tells(design: bs.Design) -> None:
    knife = logged(design)
    found, figures = study(knife), knife.figures
    for name, figure in (
        ("reading_loaded_half_stop_mm", "half_stop_loaded_mm"),
        ("reading_loaded_closed_mm", "closed_loaded_mm"),
    ):
        result = found.results[name]
        assert result.local.nominal == pytest.approx(figures[figure].value, abs=2e-4)
        # The pivot's place is no unknown of a log: its spread is that of the bench, on top.
        assert 0.99 <= result.local.root_sum_square_sd / figures[figure].sd <= 1.03
        assert result.sample.sd == pytest.approx(figures[figure].sd, rel=0.05)
    pull = found.results["peak_pull_n"]
    assert pull.local.nominal == pytest.approx(figures["peak_pull_n"].value, rel=0.005)
    assert 0.99 <= pull.local.root_sum_square_sd / figures["peak_pull_n"].sd <= 1.15
    assert [each.code for each in found.notices] == ["knife-tolerances"]
    assert pull.shares == []


def test_a_pull_on_a_scale_makes_a_surer_study() -> None:
    plain, pulled = bs.Knife(HERON), bs.Knife(HERON)
    for knife in (plain, pulled):
        knife.measure(half_stop=0.1, closed=0.1, state="loaded")
    pulled.measure(pull=pulled.figures["peak_pull_n"].value)
    sds = [study(knife).results["peak_pull_n"].sample.sd for knife in (plain, pulled)]
    assert sds[1] < 0.5 * sds[0]


def test_what_goes_together_is_drawn_together() -> None:
    knife = logged(HERON)
    spreads, rows = knife.spreads, study(knife).sample.inputs
    drawn = np.cov(np.array([rows[key] for key in spreads.keys]))
    scale = np.sqrt(np.outer(np.diag(spreads.covariance), np.diag(spreads.covariance)))
    assert np.max(np.abs(drawn - spreads.covariance) / scale) < 0.03
    # After a pull what makes it harder and what makes it lighter know of one another.
    among = spreads.covariance / scale
    assert np.max(np.abs(among - np.eye(len(among)))) > 0.2


def test_the_command_asks_the_knife(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "a.csv"
    knife = logged(HERON, path)
    words = ["tolerance", str(HERON_FILE), "--log", str(path), "--n", str(ROWS), "--no-progress"]
    assert main([*words, "--threads", "1", "--json"]) in (0, 1)
    data = json.loads(capsys.readouterr().out)["data"]
    expected = study(knife).results["peak_pull_n"].local.root_sum_square_sd
    assert data["results"]["peak_pull_n"]["root_sum_square"] == pytest.approx(expected)
    # Spreads that are stated are taken as they stand.
    assert main([*words, "--spread", "fit.preload=sd 0.1 mm", "--json"]) in (0, 1)
    data = json.loads(capsys.readouterr().out)["data"]
    assert [each["key"] for each in data["spreads"]] == ["fit.preload"]
