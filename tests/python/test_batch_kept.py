"""A run that loses a worker keeps what is done, and goes on there when it is asked again."""

from __future__ import annotations

import multiprocessing
import os
import pickle
from collections.abc import Callable
from concurrent.futures import Executor, Future, ProcessPoolExecutor
from pathlib import Path
from typing import Any

import numpy as np
import pytest

import backspring as bs

HERON = bs.load(Path(__file__).resolve().parents[2] / "data" / "designs" / "heron.toml")
CHANGES = {"fit.preload": np.linspace(-0.05, 1.2, 50), "tang.half_stop": "4.62 mm"}
OWN = bs.check_many(HERON, CHANGES, threads=1)


class Deadly(ProcessPoolExecutor):
    """Two chunks are done before the third one's process ends without a word."""

    def __init__(self) -> None:
        super().__init__(1, mp_context=multiprocessing.get_context("spawn"))
        self.sent: list[Future[Any]] = []

    def submit(self, function: Callable[..., Any], /, *given: Any, **named: Any) -> Future[Any]:
        if len(self.sent) == 2:
            for each in self.sent:
                each.result()
            return super().submit(os._exit, 9)
        self.sent.append(super().submit(function, *given, **named))
        return self.sent[-1]


class AtOnce(Executor):
    """Runs what it is sent, and counts it; the chunk of `fails` ends in an error."""

    def __init__(self, fails: int | None = None) -> None:
        self.sent, self.fails = 0, fails

    def submit(self, function: Callable[..., Any], /, *given: Any, **named: Any) -> Future[Any]:
        future: Future[Any] = Future()
        if self.sent == self.fails:
            future.set_exception(MemoryError())
        else:
            future.set_result(function(*given, **named))
        self.sent += 1
        return future


def ask(**how: Any) -> bs.ManyChecks:
    return bs.check_many(HERON, CHANGES, chunk_rows=10, **how)


def assert_own(many: bs.ManyChecks) -> None:
    assert many.complete
    for name in OWN:
        assert many[name].tobytes() == OWN[name].tobytes(), name


def test_a_killed_worker_is_named_and_its_run_goes_on(tmp_path: Path) -> None:
    with Deadly() as executor, pytest.raises(bs.WorkerLost) as lost:
        ask(executor=executor, keep=tmp_path)
    error = lost.value
    assert (error.first_row, error.last_row) == (20, 29)
    assert str(error).startswith("a worker ended with rows 20 to 29")
    assert f"20 of 50 rows are done, kept in {tmp_path}: ask again to go on" in str(error)
    assert error.checks.counts()["not_run"] == 30
    assert error.checks["peak_pull_n"][:20].tobytes() == OWN["peak_pull_n"][:20].tobytes()
    again = AtOnce()
    assert_own(ask(executor=again, keep=tmp_path))
    assert again.sent == 3


def test_what_other_workers_have_in_hand_is_not_thrown_away() -> None:
    with pytest.raises(bs.WorkerLost) as lost:
        ask(executor=AtOnce(fails=1))
    assert isinstance(lost.value.__cause__, MemoryError)
    assert lost.value.checks.counts()["not_run"] == 10
    assert pickle.loads(pickle.dumps(lost.value)).first_row == 10


def test_without_an_executor_chunks_are_kept_too(tmp_path: Path) -> None:
    told: list[int] = []
    assert_own(ask(keep=tmp_path, threads=2, progress=lambda done, _: told.append(done)))
    assert told == [10, 20, 30, 40, 50]
    assert len([*tmp_path.iterdir()]) == 5
    none = AtOnce(fails=0)
    assert_own(ask(executor=none, keep=tmp_path))
    assert none.sent == 0


def test_another_question_takes_nothing_of_it(tmp_path: Path) -> None:
    ask(keep=tmp_path)
    other = AtOnce()
    changed = HERON.replace(**{"spring.width": 2.31})
    bs.check_many(changed, CHANGES, chunk_rows=10, executor=other, keep=tmp_path)
    bs.check_many(
        HERON, CHANGES, chunk_rows=10, executor=other, keep=tmp_path, columns=["peak_pull_n"]
    )
    assert other.sent == 10


def test_a_damaged_chunk_is_worked_out_again(tmp_path: Path) -> None:
    ask(keep=tmp_path)
    first, second, *_ = sorted(tmp_path.iterdir())
    first.write_bytes(first.read_bytes()[:200])
    second.write_bytes(b"")
    again = AtOnce()
    assert_own(ask(executor=again, keep=tmp_path))
    assert again.sent == 2


def test_a_tolerance_study_goes_on_too(tmp_path: Path) -> None:
    spreads = {"fit.preload": "0.05 mm"}
    first = bs.tolerance(HERON, spreads, n=100, shares=False, keep=tmp_path, chunk_rows=50)
    none = AtOnce()
    again = bs.tolerance(
        HERON, spreads, n=100, shares=False, keep=tmp_path, executor=none, chunk_rows=50
    )
    assert none.sent == 0
    assert first.to_dict() == again.to_dict()


def test_a_folder_that_cannot_be_is_refused(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("here")
    with pytest.raises(bs.InvalidInput, match="^keep: cannot make the folder"):
        ask(keep=tmp_path / "file" / "in")
