"""What a design states of its knives before they are measured, `[priors]`."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

import backspring as bs
from backspring import _core
from backspring.design.fields import ROWS
from backspring.fit.priors import priors_of
from backspring.many.spreads import ordinary_spreads

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"
HERON, OSPREY, WREN = (bs.load(DESIGNS / f"{name}.toml") for name in ("heron", "osprey", "wren"))
# Twice the usual deviation of each, all about what is usual.
USUAL = {
    "half_stop_face": 1.0,
    "closed_face": 1.0,
    "kick": 0.5,
    "pad_tilt": math.degrees(0.002),
    "extra_root": 0.1,
    "thickness": 0.02,
    "width": 0.01,
    "preload": 0.05,
    "corner_radius": 0.1,
    "hardness": 1.0,
    "loaded_offset": 0.02,
}


def stating(design: bs.Design, **stated: list[float]) -> bs.Design:
    return design.replace(**{f"priors.{name}": pair for name, pair in stated.items()})


def test_every_unknown_has_its_key() -> None:
    keys = {key.removeprefix("priors.") for key in ROWS if key.startswith("priors.")}
    assert keys == {*USUAL, "pivot_play", "friction", "youngs_modulus"}
    assert len(priors_of(OSPREY, 1.0)) == len(keys)


def test_what_is_usual_may_be_stated_and_changes_no_estimate() -> None:
    stated = stating(OSPREY, **{name: [0.0, sd] for name, sd in USUAL.items()})
    stated = stating(stated, pivot_play=[0.0, 0.02], friction=[OSPREY.core.friction.spring, 0.04])
    knives = [bs.Knife(each) for each in (OSPREY, stated)]
    for knife in knives:
        knife.measure(half_stop=0.2, closed=0.25, state="loaded")
        knife.measure(pull=20.0)
    plain, other = (knife.figures for knife in knives)
    for name, figure in plain.items():
        assert other[name].value == pytest.approx(figure.value, rel=2e-3), name
        assert other[name].sd == pytest.approx(figure.sd, rel=2e-3), name


@pytest.mark.parametrize("name", sorted(USUAL))
def test_half_the_deviation_makes_half_the_doubt(name: str) -> None:
    """Nothing is measured: the posterior is the prior."""
    half = stating(OSPREY, **{name: [0.0, 0.5 * USUAL[name]]})
    usual, surer = (bs.Knife(each).estimate() for each in (OSPREY, half))
    (unknown,) = [
        key for key in usual.unknowns if key.rpartition("_")[0].startswith(name) or key == name
    ]
    assert surer.unknowns[unknown].sd == pytest.approx(0.5 * usual.unknowns[unknown].sd)
    assert surer.unknowns[unknown].value == pytest.approx(usual.unknowns[unknown].value)


def test_what_is_expected_moves_the_knife() -> None:
    thick = bs.Knife(stating(HERON, thickness=[0.05, 0.01], friction=[0.2, 0.01]))
    assert thick.design.core.friction.spring == pytest.approx(0.2)
    assert thick.estimate().now.spring.thickness[0].thickness_mm == pytest.approx(
        HERON.core.spring.thickness[0].thickness_mm + 0.05
    )
    assert thick.figures["peak_pull_n"].value > bs.Knife(HERON).figures["peak_pull_n"].value


def test_a_tolerance_takes_the_deviations_that_are_stated() -> None:
    stated = stating(
        WREN,
        preload=[0.0, 0.01],
        friction=[0.15, 0.03],
        youngs_modulus=[0.0, 1500.0],
        hardness=[0.0, 2.0],
    )
    spreads, usual = ordinary_spreads(stated), ordinary_spreads(WREN)
    assert spreads["fit.preload"] == "sd 0.01 mm"
    assert spreads["friction.offset"] == "sd 0.03"
    assert spreads["spring.youngs_modulus"] == "sd 1500.0 MPa"
    assert spreads["spring.width"] == usual["spring.width"]
    twice = float(spreads["spring.yield"].split()[1])
    assert twice == pytest.approx(
        2.0 / WREN.steel["hardness_sd_hrc"] * float(usual["spring.yield"].split()[1])
    )
    dry = stated.replace(friction=None)
    study = bs.tolerance(dry, n=64, shares=False, progress=False, threads=1)
    assert study.design.core.friction.spring == 0.15
    assert "0.15 is counted" in " ".join(each.message for each in study.notices)


def test_a_log_stands_when_what_is_expected_changes(tmp_path: Path) -> None:
    """Readings depend on the shape alone; what is expected is another's word."""
    bs.Knife(HERON, tmp_path / "a.csv").measure(half_stop=0.1, closed=0.1, state="loaded")
    assert len(bs.Knife(stating(HERON, thickness=[0.0, 0.01]), tmp_path / "a.csv").entries) == 1


def test_friction_is_stated_in_one_place() -> None:
    (friction,) = [each for each in priors_of(HERON, 1.0) if each.name == "friction"]
    assert friction.sd == _core.FRICTION_SPREAD
    assert ordinary_spreads(HERON)["friction.offset"] == f"sd {_core.FRICTION_SPREAD}"
    bare = _core.Friction()
    assert _core.feel(HERON.core) is not None
    assert bare.spring == 0.0
