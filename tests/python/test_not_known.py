"""What is not known of steel and friction counts in a tolerance study unless spreads are stated."""

from __future__ import annotations

from pathlib import Path
from statistics import stdev

import pytest

import backspring as bs
from backspring import steel as steels
from backspring.cli import main
from backspring.many.spreads import ordinary_spreads

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"
HERON = bs.load(DESIGNS / "heron.toml")
CUT = (
    "fit.preload",
    "spring.thickness_offset",
    "spring.width",
    "tang.pivot",
    "tang.half_stop",
    "tang.closed",
    "tang.corner_radius",
)


def relative_sd(study: bs.Tolerance) -> float:
    pull = study.results["peak_pull_n"]
    return float(pull.local.root_sum_square_sd / pull.local.nominal)


def test_friction_and_steel_widen_the_herons_pull_most_of_it_friction() -> None:
    whole = bs.tolerance(HERON, n=2048)
    spreads = ordinary_spreads(HERON)
    bench = bs.tolerance(HERON, {key: spreads[key] for key in CUT}, n=256, shares=False)
    assert relative_sd(bench) < 0.6 * relative_sd(whole)
    by_key = dict(zip((each.key for each in whole.spreads), _parts(whole), strict=True))
    assert max(by_key, key=by_key.__getitem__) == "friction.offset"
    assert {"spring.youngs_modulus", "spring.yield"} <= {*by_key}
    # Pull does not know the yield stress, the margin does.
    assert by_key["spring.yield"] == 0.0
    margin = whole.results["yield_margin"].local
    assert margin.slopes[[*by_key].index("spring.yield")] > 0.0


def _parts(study: bs.Tolerance) -> list[float]:
    slopes = study.results["peak_pull_n"].local.slopes
    sizes = [bs._core.standard_deviation(each) for each in study.spreads]
    return [abs(slope * size) for slope, size in zip(slopes, sizes, strict=True)]


def test_friction_moves_the_pull_as_two_checks_say() -> None:
    study = bs.tolerance(HERON, n=64, shares=False)
    place = [each.key for each in study.spreads].index("friction.offset")
    slope = study.results["peak_pull_n"].local.slopes[place]
    told = bs.check(HERON).feel
    assert slope * 0.08 == pytest.approx(told.pull_dry_n - told.pull_oiled_n, rel=0.01)


def test_a_design_without_friction_is_studied_with_the_usual_one_and_says_so() -> None:
    bare = HERON.replace(friction=None)
    study = bs.tolerance(bare, n=64, shares=False)
    assert study.design.core.friction.spring == study.design.core.friction.pivot == 0.12
    assert "usual-friction" in {each.code for each in study.notices}
    assert "usual-friction" not in {each.code for each in bs.tolerance(HERON, n=64).notices}
    stated = bs.tolerance(bare, {"spring.width": "0.02 mm"}, n=64)
    assert stated.design.core.friction.spring == 0.0


def test_readings_of_the_hardness_count_with_their_mean() -> None:
    several = HERON.replace(**{"spring.hardness": ["44 HRC", 45, "46 HRC", 47]})
    assert several.steel["hardness_hrc"] == 45.5
    assert several.steel["hardness_sd_hrc"] == pytest.approx(stdev([44, 45, 46, 47]) / 2.0)
    assert several.to_dict()["spring"]["hardness"] == [44.0, 45.0, 46.0, 47.0]
    plain = HERON.replace(**{"spring.hardness": 45.5})
    assert several.core.strength == plain.core.strength
    assert plain.steel["hardness_sd_hrc"] == 1.0
    # A tester's own error stays, however often it is read.
    alike = HERON.replace(**{"spring.hardness": [45.0] * 9})
    assert alike.steel["hardness_sd_hrc"] == 0.5
    assert HERON.replace(**{"spring.hardness": [45.0]}) == HERON.replace(
        **{"spring.hardness": 45.0}
    )


def test_the_hardness_spreads_the_yield_stress_it_gives() -> None:
    softer, harder = (
        HERON.replace(**{"spring.hardness": hrc}).steel["yield_mpa"] for hrc in (44, 46)
    )
    assert HERON.steel["yield_sd_mpa"] == pytest.approx((harder - softer) / 2.0, rel=1e-9)
    stated = HERON.replace(**{"spring.yield": "1300 MPa"})
    assert stated.steel["yield_sd_mpa"] is None
    assert "spring.yield" not in ordinary_spreads(stated)
    # At the end of the tables the side that is known tells the slope.
    assert HERON.replace(**{"spring.hardness": 57.5}).steel["yield_sd_mpa"] > 0.0


def test_youngs_modulus_lies_in_the_steels_band_four_standard_deviations_wide() -> None:
    band = steels.steel("O1").youngs_modulus_mpa
    assert HERON.steel["youngs_modulus_sd_mpa"] == pytest.approx((band.high - band.low) / 4.0)


def test_a_pull_that_the_log_does_not_tell_has_no_digits_until_it_is_weighed(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """The back ground flush by a depth nobody measured: how much is left of the pull is open."""
    heron = Path(__file__).resolve().parents[2] / "data" / "designs" / "heron.toml"
    log = str(tmp_path / "knife.csv")
    fit = ["fit", str(heron), "--log", log, "--state", "unloaded"]
    assert main([*fit, "--half-stop", "12 thou", "--closed", "26 thou"]) == 0
    ground = ["--ground", "half_stop", "--ground", "closed", "--ground", "back"]
    assert main([*fit, *ground, "--half-stop", "6.5 thou", "--closed", "6.5 thou"]) == 0
    capsys.readouterr()
    main(["check", str(heron), "--log", log])
    said = " ".join(capsys.readouterr().out.split())
    assert said.startswith("Heron: not known yet of this knife: peak pull to open")
    assert "peak pull to open: not known yet" in said
    assert main(["fit", str(heron), "--log", log, "--pull", "2.6 lbf"]) == 0
    capsys.readouterr()
    main(["check", str(heron), "--log", log])
    assert capsys.readouterr().out.startswith("Heron: opens with ")
