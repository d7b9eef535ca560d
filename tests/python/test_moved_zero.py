"""A dial's zero that moved: refused where the log shows it, told where no log could."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

import backspring as bs
from backspring.fit.learn import learn
from backspring.fit.log_entry import MeasuredEntry
from backspring.fit.moved_zero import zero_sd_mm
from python.test_makers_slips import HERON, Bench, codes


@pytest.fixture
def bench(tmp_path: Path) -> Bench:
    return Bench(tmp_path)


@pytest.mark.parametrize("off", [0.03, -0.03])
def test_a_zero_that_no_log_could_show_is_told(bench: Bench, off: float) -> None:
    """Every face ground by an unknown depth takes it in; a face left alone shows it."""
    bench.trip(half_stop=0.05)
    assert "zero-unseen" not in codes(bench.knife.plan())
    bench.grind(half_stop=0.02, closed=0.04)
    half, closed = bench.read()
    bench.tell(half + off, closed + off, "half_stop", "closed")
    (told,) = [each for each in bench.knife.plan().notices if each.code == "zero-unseen"]
    assert "moved by 0.030 mm: before you grind, see" in told.message


def test_a_first_reading_a_depth_and_a_repeat_hide_no_zero(bench: Bench) -> None:
    for _ in range(3):
        bench.knife.undo()
    assert len(bench.knife.entries) == 1
    assert "zero-unseen" not in codes(bench.knife.plan())
    bench.tell(*bench.read())
    assert "zero-unseen" not in codes(bench.knife.plan())
    bench.grind(half_stop=0.05, closed=0.05)
    half, closed = bench.read()
    with bench.knife.together():
        bench.knife.ground("half_stop", "0.05 mm")
        bench.knife.ground("closed", "0.05 mm")
        bench.knife.measure(half_stop=half, closed=closed, state="loaded")
    assert "zero-unseen" not in codes(bench.knife.plan())


def test_how_well_a_log_tells_a_moved_zero_is_how_far_it_would_be_found(bench: Bench) -> None:
    """Against an estimate with the moved zero as one more unknown, found by moving the readings.

    Chi-squared is a parabola of it: least at the zero that fits best, higher by 1 one standard
    deviation off.
    """
    bench.trip(half_stop=0.05)
    *before, last = bench.knife.entries
    assert isinstance(last, MeasuredEntry)
    assert last.half_stop_mm is not None and last.closed_mm is not None
    found = bench.knife.estimate()
    sd_mm = zero_sd_mm(found)

    def chi_squared(off: float) -> float:
        moved = replace(last, half_stop_mm=last.half_stop_mm + off, closed_mm=last.closed_mm + off)
        return learn(HERON, [*before, moved], 0.0, letter=True).misfit.chi_squared

    low, at, high = (chi_squared(off) for off in (-sd_mm, 0.0, sd_mm))
    assert 0.5 * (low + high) - at == pytest.approx(1.0, rel=0.02)


@pytest.mark.parametrize("off", [0.03, -0.03])
def test_a_zero_that_moved_after_every_face_was_ground_is_no_worn_dial(
    bench: Bench, off: float
) -> None:
    """The unknown depth of the trip before takes half of it, which would look like scatter."""
    for _ in range(2):
        bench.trip(half_stop=0.02, closed=0.02)
    stood = bench.log.read_bytes()
    bench.grind(half_stop=0.02)
    half, closed = bench.read()
    with pytest.raises(bs.InvalidInput, match="Set the dial to nothing at open"):
        bench.tell(half + off, closed + off, "half_stop")
    assert bench.log.read_bytes() == stood
