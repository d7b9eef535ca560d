"""An answer about one knife says how sure it is."""

from __future__ import annotations

import json
import re
from pathlib import Path

import numpy as np
import pytest

import backspring as bs
from backspring import _core
from backspring.cli import main
from backspring.fit.answer_spread import answer_sds
from backspring.units import System

HERON_FILE = Path(__file__).resolve().parents[2] / "data" / "designs" / "heron.toml"
HERON = bs.load(HERON_FILE)
PULL_N = 11.0


@pytest.fixture(scope="module")
def log(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Read loaded, and pulled on a scale."""
    path = tmp_path_factory.mktemp("log") / "knife.csv"
    knife = bs.Knife(HERON, path)
    knife.measure(half_stop=0.25, closed=0.25, state="loaded")
    knife.measure(pull="12 N")
    return path


@pytest.fixture(scope="module")
def knife(log: Path) -> bs.Knife:
    return bs.Knife(HERON, log)


def asked(words: list[str], log: Path, capsys: pytest.CaptureFixture[str]) -> dict[str, object]:
    assert main([*words[:1], str(HERON_FILE), *words[1:], "--log", str(log), "--json"]) in (0, 1)
    found: dict[str, object] = json.loads(capsys.readouterr().out)["data"]
    return found


def test_a_knife_drawn_from_the_log_wants_a_depth_as_sure_as_is_said(knife: bs.Knife) -> None:
    sure = answer_sds(knife, lambda design: {"depth": bs.grind_depth(design, PULL_N)})["depth"]
    assert sure is not None
    design, spreads = knife.design, knife.spreads
    middle = [_core.dimension_value(design.core, key) or 0.0 for key in spreads.keys]
    count, depths = 150, []
    # What the log does not tell, as the pivot's place, is small beside what it tells.
    for row in np.random.default_rng(1).multivariate_normal(middle, spreads.covariance, count):
        core = design.core
        for key, value in zip(spreads.keys, row.tolist(), strict=True):
            core = _core.with_dimension(core, key, value)
        depths.append(_core.depth_for_pull(core, _core.GrindFace.back, None, PULL_N))
    # The standard deviation of so many is good to a share of 1/sqrt(2 count): three of them.
    assert np.std(depths) == pytest.approx(sure, rel=3.0 / np.sqrt(2.0 * count) + 0.02)


def test_an_error_of_the_pull_is_an_error_of_the_depth_by_its_slope(knife: bs.Knife) -> None:
    sure = answer_sds(knife, lambda design: {"depth": bs.grind_depth(design, PULL_N)})["depth"]
    depth = bs.grind_depth(knife.design, PULL_N)
    pulls = [
        bs.grind_table(knife.design, "back", at, at).rows[-1].peak_pull_n
        for at in (depth - 0.01, depth + 0.01)
    ]
    ground = bs.grind(knife.design, back=depth)
    study = bs.tolerance(ground, knife.spreads, n=16, threads=1, progress=False)
    pull_sd = study.results["peak_pull_n"].local.root_sum_square_sd
    assert pulls[0] is not None and pulls[1] is not None
    slope = (pulls[0] - pulls[1]) / 0.02
    # Two places of first order, one of secants and one of slopes.
    assert sure == pytest.approx(pull_sd / slope, rel=0.03)


def test_figures_are_as_sure_as_the_log_says_of_them(knife: bs.Knife) -> None:
    def figures(design: bs.Design) -> dict[str, float | None]:
        row = bs.grind_table(design, "back", 0.001, 0.001).rows[0]
        return {
            "closed_loaded_mm": row.reading_loaded_closed_mm,
            "peak_pull_n": row.peak_pull_n,
            "yield_margin": row.yield_margin,
        }

    for name, sd in answer_sds(knife, figures).items():
        # The bench's spread of the pivot's place comes on top of what the log tells.
        assert sd == pytest.approx(knife.figures[name].sd, rel=0.15), name


def test_what_no_knife_as_likely_has_is_not_known(knife: bs.Knife) -> None:
    assert answer_sds(knife, lambda design: {"a": None, "b": 1.0}) == {"a": None, "b": 0.0}


def test_the_grind_command_says_how_sure_the_depth_is(
    log: Path, knife: bs.Knife, capsys: pytest.CaptureFixture[str]
) -> None:
    data = asked(["grind", "--to-pull", f"{PULL_N} N"], log, capsys)
    spread = data["spread"]
    assert isinstance(spread, dict)
    depth = answer_sds(knife, lambda design: {"depth": bs.grind_depth(design, PULL_N)})["depth"]
    assert spread["removed_sd_mm"] == pytest.approx(depth)
    told = asked(["grind", "--remove", "0.1 mm"], log, capsys)["spread"]
    assert isinstance(told, dict)
    assert "removed_sd_mm" not in told
    assert told["peak_pull_sd_n"] == pytest.approx(knife.figures["peak_pull_n"].sd, rel=0.15)
    flush = asked(["grind", "--flush"], log, capsys)["spread"]
    assert isinstance(flush, dict)
    assert 0.0 < flush["removed_sd_mm"] < 0.05


@pytest.mark.parametrize(("units", "number"), [("mm", r"\d\.\d{3} mm"), ("in", r"\d\.\d thou")])
def test_the_first_line_says_give_or_take(
    units: System, number: str, log: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    words = ["grind", str(HERON_FILE), "--log", str(log), "--units", units]
    main([*words, "--to-pull", f"{PULL_N} N"])
    text = capsys.readouterr().out
    assert re.match(rf"Heron: {number} \+-{number} off the back, pull", text)
    assert re.search(rf"when {number} is off\n  to take off: {number}, good to \+-{number}\n", text)


def test_the_size_command_says_how_sure_a_size_is(
    log: Path, knife: bs.Knife, capsys: pytest.CaptureFixture[str]
) -> None:
    words = ["size", "--pull", f"{PULL_N} N", "--vary", "fit.preload"]
    (solution,) = asked(words, log, capsys)["solutions"]  # type: ignore[misc]
    sure = solution["spread"]["sizes_sd_mm"]["fit.preload"]
    expected = answer_sds(
        knife, lambda design: bs.size(design, pull=PULL_N, vary="preload").solutions[0].sizes_mm
    )
    assert sure == pytest.approx(expected["fit.preload"])
    assert solution["spread"]["pull_sd_n"] < 1e-6 < solution["spread"]["yield_margin_sd"]
    # What comes in sizes stays the size that it is.
    stocked = asked([*words, "--stock", "spring.width", "2.2 mm", "2.3 mm"], log, capsys)
    for each in stocked["solutions"]:  # type: ignore[attr-defined]
        assert each["spread"]["sizes_sd_mm"]["spring.width"] == 0.0
        assert each["spread"]["sizes_sd_mm"]["fit.preload"] == pytest.approx(sure, rel=0.2)
    main([words[0], str(HERON_FILE), *words[1:], "--log", str(log)])
    assert re.search(r"preload \d\.\d\d mm \+-\d\.\d\d mm for a pull", capsys.readouterr().out)


def test_a_taper_says_how_sure_each_station_is(
    log: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    data = asked(["size", "--pull", f"{PULL_N} N", "--taper", "1.5 mm"], log, capsys)
    spread, rows = data["spread"], data["thickness_mm"]
    assert isinstance(spread, dict) and isinstance(rows, list)
    sds = spread["thickness_sd_mm"]
    # Where it is as thin as may be it stays so; elsewhere it is not sure.
    for (_, thick), sd in zip(rows, sds, strict=True):
        assert (sd > 1e-3) == (thick not in (1.5, 3.0)), thick
    assert spread["peak_stress_sd_mpa"] > 0.0
