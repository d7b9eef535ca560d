"""Pictures of a plan and of an allowance: to scale, and the same every time."""

from __future__ import annotations

from pathlib import Path

import pytest
from matplotlib.figure import Figure

import backspring as bs
from backspring import picture
from backspring.cli import main
from backspring.picture.allowance import allowance_curves
from backspring.picture.fitting import fitting

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"
HERON, OSPREY, WREN = (str(DESIGNS / f"{name}.toml") for name in ("heron", "osprey", "wren"))
READ = ["--half-stop", "9 thou", "--closed", "17 thou", "--state", "unloaded"]


@pytest.mark.parametrize("suffix", [".png", ".svg"])
@pytest.mark.parametrize("read", [READ, []], ids=["plan", "allowance"])
def test_the_picture_is_the_same_every_time(
    read: list[str], suffix: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    contents = []
    for name in ("first", "second"):
        output = tmp_path / (name + suffix)
        assert main(["fit", HERON, *read, "--output", str(output)]) == 0
        contents.append(output.read_bytes())
    assert contents[0] == contents[1]
    capsys.readouterr()


def test_what_is_shaded_is_what_comes_off() -> None:
    """To scale: the outlines of before and after lie apart by the depths of the plan."""
    osprey = bs.load(OSPREY)
    plan = bs.fit_plan(osprey, half_stop=0.3, closed=0.2, state="loaded", closed_by="level")
    shading = fitting(plan).axes[1]
    outlines = [patch.get_xy() for patch in shading.patches if len(patch.get_xy()) > 90]
    shapes = [points for points in outlines if points[:, 0].min() < -osprey.core.tang.open_mm / 2]
    before, after = shapes[0], shapes[1]
    removed = plan.result.removed
    assert after[:, 0].min() - before[:, 0].min() == pytest.approx(removed.half_stop_mm)
    assert after[:, 1].min() - before[:, 1].min() == pytest.approx(removed.closed_mm)


def test_readings_never_cross_the_target_in_the_picture() -> None:
    plan = bs.fit_plan(bs.load(HERON), half_stop=0.3, closed=0.2, state="loaded")
    lines = fitting(plan).axes[0].get_lines()
    for line in lines[:2]:
        assert min(line.get_ydata()) >= plan.target_mm
        assert len(line.get_ydata()) == plan.passes + 1


@pytest.mark.parametrize("path", [HERON, OSPREY, WREN])
def test_the_allowance_is_drawn_for_every_kind_of_tang(path: str, tmp_path: Path) -> None:
    figure = allowance_curves(bs.load(path))
    assert isinstance(figure, Figure)
    picture.save(figure, tmp_path / "allowance.png")
    rising = figure.axes[0].get_lines()[0].get_ydata()
    assert list(rising) == sorted(rising)
