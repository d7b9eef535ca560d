"""The picture of a tolerance study."""

from __future__ import annotations

from pathlib import Path

import pytest

import backspring as bs
from backspring import picture

HERON = bs.load(Path(__file__).resolve().parents[2] / "data" / "designs" / "heron.toml")


def test_each_result_has_its_distribution_and_its_shares() -> None:
    study = bs.tolerance(HERON, {"fit.preload": "0.05 mm", "spring.width": "0.02 mm"}, n=500)
    figure = picture.tolerance(study, units="mm")
    axes = figure.axes
    assert len(axes) == 2 * len(study.results)
    assert [ax.get_xlabel() for ax in axes[::2]] == [
        "peak pull [N]",
        "worst stress [MPa]",
        "yield margin [-]",
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
