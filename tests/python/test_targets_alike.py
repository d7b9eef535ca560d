"""Targets are judged alike in check and tolerance, and no impossible number is handed on."""

from __future__ import annotations

import json
from pathlib import Path

import numpy as np
import pytest

import backspring as bs

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"
ONE_BLADE = [path for path in sorted(DESIGNS.glob("*.toml")) if len(bs.load(path).blades) == 1]
HERON = bs.load(DESIGNS / "heron.toml")


@pytest.mark.parametrize("path", ONE_BLADE, ids=lambda path: path.stem)
def test_knives_all_as_drawn_meet_the_targets_that_the_drawing_meets(path: Path) -> None:
    """A spread of nothing makes every knife the one that was checked."""
    design = bs.load(path)
    study = bs.tolerance(design, {"fit.preload": "0 mm"}, n=8, shares=False)
    drawn = {target.name: target.met for target in bs.check(design).targets}
    assert {target.name: target.met for target in study.targets} == {
        name: 8 * met for name, met in drawn.items()
    }
    assert study.share == float(all(drawn.values()))


def test_a_life_no_knife_reaches_is_met_by_none() -> None:
    design = HERON.replace(**{"targets.openings": 1e9})
    check = bs.check(design)
    assert not {target.name: target.met for target in check.targets}["openings"]
    study = bs.tolerance(design, {"fit.preload": "0.01 mm"}, n=16, shares=False)
    assert {target.name: target.met for target in study.targets}["openings"] == 0
    assert "openings" in str(study)
    assert study.status == "fail"


def test_a_spring_without_width_is_refused_or_flagged() -> None:
    """The smallest number that a computer knows is greater than 0, and no width of a spring."""
    status = bs.check_many(HERON, {"spring.width": np.array([5e-324, 2.3])})["status"]
    assert status[0] in ("invalid", "out_of_bounds")
    assert status[1] == "ok"
    try:
        check = bs.check(HERON.replace(**{"spring.width": 5e-324}))
    except bs.InvalidInput:
        return
    assert check.status == "fail"
    assert check.to_dict()["impossible"]
    assert json.dumps(check.to_dict(), allow_nan=False)
    assert "nan" not in str(check)
