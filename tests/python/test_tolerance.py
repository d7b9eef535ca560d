"""Tolerance studies: against exact results, and as users see them."""

from __future__ import annotations

import pickle
import signal
from pathlib import Path
from statistics import NormalDist

import numpy as np
import pytest

import backspring as bs
from backspring import _core

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"
HERON = bs.load(DESIGNS / "heron.toml")
SPREADS = {
    "fit.preload": "0.05 mm",
    "spring.thickness_offset": "0.02 mm",
    "tang.half_stop": "uniform 0.02 mm",
}


@pytest.fixture(scope="module")
def study() -> bs.Tolerance:
    return bs.tolerance(HERON, SPREADS, n=4096, seed=3)


def test_a_linear_case_is_the_exact_normal_result() -> None:
    """Margin is yield over stress, so a normal yield makes a normal margin, known in full."""
    sd_mpa = 35.0
    design = HERON.replace(**{f"targets.{each}": None for each in ("pull", "reading", "openings")})
    design = design.replace(**{"targets.yield_margin": 1.05})
    study = bs.tolerance(
        design, {"spring.yield": f"sd {sd_mpa} MPa"}, n=2**14, batch=4, shares=False
    )
    margin = study.results["yield_margin"]
    stress_mpa = study.results["travel_peak_stress_mpa"].local.nominal
    exact = NormalDist(margin.local.nominal, sd_mpa / stress_mpa)
    # One dimension of n quasi-random points errs by about 1/n of the range it covers.
    assert margin.sample.mean == pytest.approx(exact.mean, abs=1e-4 * exact.stdev)
    assert margin.sample.sd == pytest.approx(exact.stdev, rel=1e-3)
    assert margin.local.root_sum_square_sd == pytest.approx(exact.stdev, rel=1e-8)
    for probability, value in zip(_core.quantiles(), margin.sample.quantiles, strict=True):
        assert value == pytest.approx(exact.inv_cdf(probability), abs=5e-3 * exact.stdev)
    share = 1.0 - exact.cdf(1.05)
    assert study.share == pytest.approx(share, abs=2e-4)
    chance = study.result.batch
    assert chance is not None
    assert chance.chance == pytest.approx(share**4, abs=8e-4)
    assert chance.share_low < share < chance.share_high


def test_quantiles_are_those_of_numpy(study: bs.Tolerance) -> None:
    for name, each in study.results.items():
        column = study.sample[name]
        assert each.sample.quantiles == pytest.approx(np.quantile(column, _core.quantiles()))
        assert each.sample.mean == pytest.approx(column.mean(), rel=1e-12)
        assert each.sample.sd == pytest.approx(column.std(), rel=1e-9)


def test_shares_of_variance_add_up_where_dimensions_do_not_meet(study: bs.Tolerance) -> None:
    for each in study.results.values():
        parts = [
            slope * _core.standard_deviation(spread) / each.local.root_sum_square_sd
            for slope, spread in zip(each.local.slopes, study.spreads, strict=True)
        ]
        # 1024 rows of the scheme, and 1 % of curvature.
        assert [s.first for s in each.shares] == pytest.approx([p * p for p in parts], abs=0.04)


def test_a_seed_gives_the_same_study_again() -> None:
    """On one thread and on all; 1024 rows are four chunks for them to share."""
    study = bs.tolerance(HERON, SPREADS, n=1024, seed=3)
    again = bs.tolerance(HERON, SPREADS, n=1024, seed=3, threads=1)
    assert again.to_dict() == study.to_dict()
    other = bs.tolerance(HERON, SPREADS, n=1024, seed=4)
    assert other.to_dict()["results"] != study.to_dict()["results"]


def test_the_share_is_counted_from_the_sample(study: bs.Tolerance) -> None:
    sample, wanted = study.sample, HERON.core.targets
    pull, margin = sample["peak_pull_n"], sample["yield_margin"]
    readings = np.abs([sample[f"reading_loaded_{name}_mm"] for name in ("half_stop", "closed")])
    assert wanted.pull_low_n is not None
    assert wanted.pull_high_n is not None
    assert wanted.yield_margin is not None
    assert wanted.reading_mm is not None
    good = sample.ok & (pull >= wanted.pull_low_n) & (pull <= wanted.pull_high_n)
    good &= (margin >= wanted.yield_margin) & (readings.max(axis=0) <= wanted.reading_mm)
    assert study.result.good == np.count_nonzero(good)
    assert study.status == ("pass" if study.share >= 0.95 else "fail")


def test_a_share_that_is_enough_passes() -> None:
    design = HERON.replace(targets=None)
    assert bs.tolerance(design, SPREADS, n=64).status == "pass"
    narrow = design.replace(**{"targets.yield_margin": 50})
    assert bs.tolerance(narrow, SPREADS, n=64).status == "fail"
    assert bs.tolerance(narrow, SPREADS, n=64, wanted_share=0.0).status == "pass"


def test_knives_that_do_not_work_are_told() -> None:
    study = bs.tolerance(HERON, {"fit.preload": "uniform 1.2 mm"}, n=256)
    assert 0 < study.result.working < 256
    told = {notice.code: notice.message for notice in study.notices}
    broken = 256 - study.result.working
    assert told["not-working"].startswith(f"{broken} of 256 knives do not work")
    assert study.results["peak_pull_n"].sample.count == study.result.working


@pytest.mark.usefixtures("interruptible")
def test_a_stopped_study_says_so() -> None:
    def strike(done: int, total: int) -> None:
        if done and not struck:
            struck.append(done)
            signal.raise_signal(signal.SIGINT)

    struck: list[int] = []
    study = bs.tolerance(HERON, SPREADS, n=300_000, progress=strike)
    assert not study.complete
    assert study.status == "fail"
    assert 0 < study.result.rows < 300_000
    assert (
        study.notices[0].message == f"stopped: {study.result.rows} of 300000 knives were worked out"
    )


def test_a_study_is_shown_and_pickled(study: bs.Tolerance) -> None:
    text = study.report()
    assert text.splitlines()[0].startswith("Heron: ")
    assert "What causes the spread" in text
    assert "thou" in study.report("in")
    assert study._repr_html_().startswith("<p><strong>Heron")
    assert pickle.loads(pickle.dumps(study)).to_dict() == study.to_dict()
    assert "What causes the spread" not in bs.tolerance(HERON, SPREADS, n=16, shares=False).report()


@pytest.mark.parametrize(
    ("options", "message"),
    [
        ({"n": 0}, "n: must be a whole number from 1 to 10000000, got 0"),
        ({"n": 1e5}, "n: must be a whole number from 1 to 10000000, got 100000.0"),
        ({"seed": -1}, "seed: must be a whole number from 0 to 4294967295, got -1"),
        ({"batch": True}, "batch: must be a whole number from 1 to 1000000000, got True"),
        ({"wanted_share": 1.5}, "wanted_share: must be from 0 to 1, got 1.5"),
        ({"threads": -2}, "threads: must be a whole number from 1 to 1024, got -2"),
    ],
)
def test_bad_options_are_told(options: dict[str, object], message: str) -> None:
    with pytest.raises(bs.InvalidInput) as refused:
        bs.tolerance(HERON, SPREADS, **options)
    assert str(refused.value) == message
