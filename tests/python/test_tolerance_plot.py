"""The picture of a tolerance study."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

import backspring as bs
from backspring import picture

HERON_FILE = Path(__file__).resolve().parents[2] / "data" / "designs" / "heron.toml"
HERON = bs.load(HERON_FILE)
# Pound-force: NIST SP 811, appendix B; from memory.
LBF_N = 4.4482216


def test_each_result_has_its_distribution_and_its_shares() -> None:
    study = bs.tolerance(HERON, {"fit.preload": "0.05 mm", "spring.width": "0.02 mm"}, n=500)
    figure = picture.tolerance(study, units="mm")
    axes = figure.axes
    assert len(axes) == 2 * len(study.results)
    assert [ax.get_xlabel() for ax in axes[::2]] == [
        "peak pull [N]",
        "worst stress [MPa]",
        "yield margin",
        "half-stop, loaded [mm]",
        "closed, loaded [mm]",
    ]
    for ax, each in zip(axes[::2], study.results.values(), strict=True):
        counted = sum(bar.get_height() for bar in ax.patches if hasattr(bar, "get_height"))
        # All but the thousandth at either end stands in the bars.
        assert counted >= 0.99 * 500
        assert ax.lines[0].get_xdata()[0] == pytest.approx(each.local.nominal)
    for ax, each in zip(axes[1::2], study.results.values(), strict=True):
        assert [bar.get_width() for bar in ax.patches] == [
            pytest.approx(max(share.total, 0.0)) for share in each.shares
        ]


def test_a_spread_of_nothing_is_drawn(tmp_path: Path) -> None:
    study = bs.tolerance(HERON, {"fit.preload": 0}, n=20, shares=False)
    picture.save(picture.tolerance(study), tmp_path / "study.png")
    assert (tmp_path / "study.png").stat().st_size > 1000


def test_a_study_without_numbers_is_drawn() -> None:
    study = bs.tolerance(HERON, {"spring.width": "uniform 2 mm"}, n=1, shares=False)
    broken = bs.check_many(HERON, {"spring.width": [-1.0]})
    assert not broken.ok.any()
    assert picture.tolerance(study).axes


@pytest.mark.parametrize("units", ["mm", "in"])
def test_how_far_each_target_is_is_told_and_drawn(units: Any) -> None:
    """Heron misses pull, margin and readings; its worst stress has no target."""
    check = bs.check(HERON)
    figure = picture.tolerance(bs.tolerance(HERON, {"fit.preload": "0.05 mm"}, n=200), units=units)
    pull, stress, margin, *readings = figure.axes[::2]
    off_n = 4.0 * LBF_N - max(stroke.peak_pull_n for stroke in check.strokes)
    off = f"{off_n:.1f} N" if units == "mm" else f"{off_n / LBF_N:.2f} lbf"
    assert pull.get_title("left").endswith(f": {off} off as drawn")
    short = 1.15 - check.travel.yield_margin
    assert margin.get_title("left") == f"target at least 1.15: {short:.2f} off as drawn"
    assert stress.get_title("left") == ""
    inch = {"mm": 25.4, "in": 1.0}[units]
    for ax, limit in ((pull, 4.0 * {"mm": LBF_N, "in": 1.0}[units]), (margin, 1.15)):
        (line,) = [line for line in ax.lines if line.get_label() == "target"]
        assert line.get_xdata()[0] == pytest.approx(limit)
        assert ax.get_xlim()[0] < limit < ax.get_xlim()[1]
    for ax in readings:
        assert ax.get_xlim()[0] < 0.001 * inch * {"mm": 1.0, "in": 1000.0}[units]


def test_a_target_with_room_to_spare_says_how_much() -> None:
    osprey = bs.load(HERON_FILE.with_name("osprey.toml"))
    study = bs.tolerance(osprey, {"fit.preload": "0.05 mm"}, n=200)
    spare = max(stroke.peak_pull_n for stroke in bs.check(osprey).strokes) - 10.0
    told = picture.tolerance(study).axes[0].get_title("left")
    assert told == f"target 10.0 to 30.0 N: {spare:.1f} N to spare"
