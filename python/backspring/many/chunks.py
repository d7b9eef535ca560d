"""Chunks of rows on an executor: threads, processes, or a cluster's workers."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from concurrent.futures import FIRST_COMPLETED, Executor, Future, wait
from dataclasses import dataclass
from typing import Any

import numpy as np
import numpy.typing as npt

from backspring import _core
from backspring.many.changes import Column

# Enough to keep many workers busy, few enough to bound what is held at a time.
_UNDER_WAY = 64
_LOOK_EVERY_S = 0.1


@dataclass(frozen=True, slots=True)
class Checked:
    """Results of some rows: columns by name, a status code a row."""

    columns: dict[str, Column]
    codes: npt.NDArray[np.uint8]
    complete: bool


def check_rows(
    core: _core.Design,
    columns: Mapping[str, Column],
    names: list[str],
    threads: int,
    chunk_rows: int,
    tell: Callable[[int], None] | None = None,
) -> Checked:
    """Check rows in this process, in the core's threads."""
    changes = [_core.Change(key, column) for key, column in columns.items()]
    batch = _core.check_many(core, changes, threads, chunk_rows, names, tell)
    results = {column.name: column.values for column in batch.columns}
    return Checked(results, batch.status, batch.complete)


def run_chunks(
    executor: Executor,
    core: _core.Design,
    columns: Mapping[str, Column],
    names: list[str],
    chunk_rows: int,
    tell: Callable[[int], None] | None,
) -> Checked:
    """Check rows on an executor; an interrupt ends the run and keeps what is done."""
    rows = next(iter(columns.values())).size
    codes = np.full(rows, _core.RowStatus.not_run.value, dtype=np.uint8)
    results = {name: np.full(rows, np.nan) for name in names}
    starts = iter(range(0, rows, chunk_rows))
    waiting: dict[Future[Checked], int] = {}
    done = 0

    def submit(start: int) -> None:
        part = {key: column[start : start + chunk_rows] for key, column in columns.items()}
        waiting[executor.submit(check_rows, core, part, names, 1, chunk_rows)] = start

    try:
        while True:
            while len(waiting) < _UNDER_WAY and (start := next(starts, None)) is not None:
                submit(start)
            if not waiting:
                break
            ready: set[Future[Any]] = wait(waiting, _LOOK_EVERY_S, FIRST_COMPLETED).done
            for future in ready:
                checked, start = future.result(), waiting.pop(future)
                codes[start : start + checked.codes.size] = checked.codes
                for name, column in checked.columns.items():
                    results[name][start : start + column.size] = column
                done += checked.codes.size
            if tell is not None and ready:
                tell(done)
    except KeyboardInterrupt:
        return Checked(results, codes, complete=False)
    finally:
        for future in waiting:
            future.cancel()
    return Checked(results, codes, complete=True)
