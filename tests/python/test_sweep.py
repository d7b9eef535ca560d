"""A closer look at a design from Python: the set and the pressures that the verdict speaks of."""

from __future__ import annotations

import math
import pickle
from pathlib import Path

import pytest

import backspring as bs

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"
HERON = bs.load(DESIGNS / "heron.toml")
BITTERN = bs.load(DESIGNS / "bittern.toml")


def margin(design: bs.Design, name: str) -> float:
    (found,) = (each for each in bs.check(design).verdict if each.name == name)
    return found.value


def test_the_set_is_that_of_the_verdict() -> None:
    found = bs.permanent_set(BITTERN)
    assert found.yielded
    assert found.drop_pivot_mm == pytest.approx(margin(BITTERN, "set"), rel=1e-6)
    assert found.preload_after_shakedown_mm <= found.preload_opened_mm < found.preload_before_mm
    assert found.preload_before_mm - found.preload_after_shakedown_mm == pytest.approx(
        found.drop_pivot_mm
    )
    assert pickle.loads(pickle.dumps(found)) == found


def test_a_spring_that_stays_elastic_keeps_its_preload() -> None:
    found = bs.permanent_set(HERON)
    assert (found.yielded, found.drop_pivot_mm) == (False, 0.0)
    assert found.preload_after_shakedown_mm == found.preload_before_mm == pytest.approx(0.9)
    softer = bs.permanent_set(HERON, yield_mpa=900.0)
    assert softer.drop_pivot_mm > 0.0
    with pytest.raises(bs.InvalidInput, match="yield_mpa: must be greater than 0"):
        bs.permanent_set(HERON, yield_mpa=0.0)


def test_the_pressures_are_those_of_the_verdict() -> None:
    """Hertz: with radius and force told, the pressure follows by p0 = sqrt(F E*/(pi L R))."""
    found = bs.bearing_pressures(HERON)
    peaks = [each.line.peak_mpa for each in found if each.line is not None]
    assert max(peaks) == pytest.approx(margin(HERON, "contact-pressure"), rel=1e-9)
    steel = HERON.core.spring.elastic
    shared = steel.youngs_modulus_mpa / (2.0 * (1.0 - steel.poisson**2))
    width = HERON.core.spring.width_mm
    for each in found:
        if each.line is not None:
            by_hand = math.sqrt(each.force_n * shared / (math.pi * width * each.radius_mm))
            assert each.line.peak_mpa == pytest.approx(by_hand, rel=1e-9)
