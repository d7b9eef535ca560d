"""A log that cannot all be one knife is refused, and what is wrong in it is named."""

from __future__ import annotations

from pathlib import Path

import pytest

import backspring as bs

HERON = bs.load(Path(__file__).resolve().parents[2] / "data" / "designs" / "heron.toml")


def begun() -> bs.Knife:
    log = bs.Knife(HERON)
    log.measure(half_stop=0.3, closed=0.25, state="loaded")
    return log


def test_a_pull_that_no_reading_bears_out_is_named() -> None:
    """It bends the whole estimate, and the reading beside it would seem to be far off."""
    log = begun()
    with pytest.raises(bs.InvalidInput, match="cannot all be one knife") as refused, log.together():
        log.ground("closed")
        log.measure(closed=0.13, state="loaded", pull="42 N")
    assert len(log.entries) == 1
    told = str(refused.value)
    assert "what fits worst is pull to open 42.0 N (entry 4)" in told
    foretold = float(told.split("all else foretells ")[1].split(" N")[0])
    log.ground("closed")
    log.measure(closed=0.13, state="loaded")
    assert foretold == pytest.approx(log.figures["peak_pull_n"].value, abs=0.06)


def test_a_reading_that_all_others_contradict_is_named() -> None:
    log = begun()
    log.measure(pull=log.figures["peak_pull_n"].value)
    log.ground("closed", 0.1)
    with pytest.raises(bs.InvalidInput, match=r"worst is closed loaded 1\.900 mm \(entry 4\)"):
        log.measure(closed=1.9, state="loaded")
    assert len(log.entries) == 3
