"""Whatever runs the rows, they are the same to the last bit."""

from __future__ import annotations

import multiprocessing
from collections.abc import Iterator
from concurrent.futures import Executor, Future, ProcessPoolExecutor, ThreadPoolExecutor
from contextlib import contextmanager
from pathlib import Path

import numpy as np
import pytest

import backspring as bs

HERON = bs.load(Path(__file__).resolve().parents[2] / "data" / "designs" / "heron.toml")
CHANGES = {
    # The first rows are bad, so that statuses are compared too.
    "fit.preload": np.linspace(-0.05, 1.2, 700),
    "spring.thickness_offset": np.sin(np.arange(700.0)) * 0.05,
    "tang.half_stop": 4.62,
}


@contextmanager
def dask_cluster() -> Iterator[Executor]:
    from dask.distributed import Client, LocalCluster

    with (
        LocalCluster(
            n_workers=2, threads_per_worker=1, processes=True, dashboard_address=None
        ) as cluster,
        Client(cluster) as client,
        client.get_executor() as executor,
    ):
        yield executor


EXECUTORS = {
    "threads": lambda: ThreadPoolExecutor(3),
    "processes": lambda: ProcessPoolExecutor(2, mp_context=multiprocessing.get_context("spawn")),
    "dask": dask_cluster,
}


@pytest.fixture(scope="module")
def own() -> bs.ManyChecks:
    return bs.check_many(HERON, CHANGES, threads=1)


def assert_same(own: bs.ManyChecks, other: bs.ManyChecks) -> None:
    assert other.complete
    assert np.array_equal(own.status_codes, other.status_codes)
    for name in own.columns:
        assert own[name].tobytes() == other[name].tobytes(), name


@pytest.mark.parametrize(("threads", "chunk_rows"), [(2, None), (5, 1), (3, 64)])
def test_threads_of_the_core(own: bs.ManyChecks, threads: int, chunk_rows: int | None) -> None:
    assert_same(own, bs.check_many(HERON, CHANGES, threads=threads, chunk_rows=chunk_rows))


@pytest.mark.parametrize("name", EXECUTORS)
def test_an_executor(own: bs.ManyChecks, name: str) -> None:
    with EXECUTORS[name]() as executor:
        assert_same(own, bs.check_many(HERON, CHANGES, executor=executor, chunk_rows=97))


def test_a_tolerance_study_is_the_same_on_an_executor() -> None:
    spreads = {"fit.preload": "0.05 mm", "tang.half_stop": "uniform 0.02 mm"}
    own = bs.tolerance(HERON, spreads, n=300, threads=1)
    with ThreadPoolExecutor(2) as executor:
        other = bs.tolerance(HERON, spreads, n=300, executor=executor, chunk_rows=50)
    assert own.to_dict() == other.to_dict()


def test_threads_and_an_executor_exclude_each_other() -> None:
    with ThreadPoolExecutor(1) as executor, pytest.raises(bs.InvalidInput) as refused:
        bs.check_many(HERON, CHANGES, threads=2, executor=executor)
    assert str(refused.value) == "threads: goes without an executor, which has its own"


class Interrupted(Executor):
    """Runs at once, and is interrupted at the third chunk."""

    def __init__(self, error: type[BaseException]) -> None:
        self.error, self.sent = error, 0

    def submit(self, function, /, *arguments, **named):  # type: ignore[no-untyped-def]
        self.sent += 1
        if self.sent == 3:
            raise self.error
        future: Future[object] = Future()
        future.set_result(function(*arguments, **named))
        return future


def test_an_interrupt_keeps_the_chunks_that_are_done(monkeypatch: pytest.MonkeyPatch) -> None:
    # One chunk under way at a time, so that two are done when the third is interrupted.
    monkeypatch.setattr("backspring.many.chunks._UNDER_WAY", 1)
    executor = Interrupted(KeyboardInterrupt)
    many = bs.check_many(HERON, {"fit.preload": np.full(50, 0.9)}, executor=executor, chunk_rows=10)
    assert not many.complete
    assert many.counts() == {"ok": 20, "not_run": 30}
    assert np.isnan(many["peak_pull_n"][20:]).all()


def test_a_failing_executor_is_no_quiet_gap() -> None:
    with pytest.raises(bs.WorkerLost) as lost:
        bs.check_many(
            HERON, {"fit.preload": np.full(50, 0.9)}, executor=Interrupted(OSError), chunk_rows=10
        )
    assert isinstance(lost.value.__cause__, OSError)


def test_progress_counts_chunks() -> None:
    told: list[tuple[int, int]] = []
    with ThreadPoolExecutor(2) as executor:
        bs.check_many(
            HERON,
            {"fit.preload": np.full(50, 0.9)},
            executor=executor,
            chunk_rows=20,
            progress=lambda *at: told.append(at),
        )
    assert told[-1] == (50, 50)
