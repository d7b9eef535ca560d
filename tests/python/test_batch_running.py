"""A long run: interrupted, told of, and beside other threads."""

from __future__ import annotations

import signal
import threading
from pathlib import Path

import numpy as np
import pytest

import backspring as bs

HERON = bs.load(Path(__file__).resolve().parents[2] / "data" / "designs" / "heron.toml")


@pytest.mark.usefixtures("interruptible")
def test_an_interrupt_returns_what_is_done() -> None:
    preloads = np.linspace(0.5, 1.0, 400_000)
    strikes = []

    def strike(done: int, total: int) -> None:
        if done and not strikes:
            strikes.append(done)
            signal.raise_signal(signal.SIGINT)

    many = bs.check_many(
        HERON, {"fit.preload": preloads}, columns=["force_open_n"], progress=strike
    )
    counts = many.counts()
    assert not many.complete
    assert strikes[0] <= counts["ok"] < preloads.size
    assert counts["ok"] + counts["not_run"] == preloads.size
    assert "stopped" in repr(many)
    done = np.flatnonzero(many.ok)
    again = bs.check_many(HERON, {"fit.preload": preloads[done[-5:]]}, columns=["force_open_n"])
    assert np.array_equal(again["force_open_n"], many["force_open_n"][done[-5:]])


def test_an_error_of_the_progress_function_goes_on() -> None:
    def fail(done: int, total: int) -> None:
        raise RuntimeError("the caller's own")

    with pytest.raises(RuntimeError, match="the caller's own"):
        bs.check_many(HERON, {"fit.preload": np.linspace(0.5, 1.0, 3000)}, progress=fail)


def test_progress_ends_with_all_rows() -> None:
    told: list[tuple[int, int]] = []
    bs.check_many(
        HERON, {"fit.preload": np.linspace(0.5, 1.0, 3000)}, progress=lambda *at: told.append(at)
    )
    assert told[-1] == (3000, 3000)
    assert told == sorted(told)


def test_other_threads_go_on_meanwhile() -> None:
    """The interpreter's lock is free while the core works."""
    ticks, finished = [], threading.Event()

    def tick() -> None:
        while not finished.wait(0.001):
            ticks.append(1)

    ticker = threading.Thread(target=tick)
    ticker.start()
    bs.check_many(HERON, {"fit.preload": np.linspace(0.5, 1.0, 5000)}, threads=1)
    finished.set()
    ticker.join()
    assert len(ticks) > 10
