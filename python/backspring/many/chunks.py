"""Chunks of rows on an executor: threads, processes, or a cluster's workers."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from concurrent.futures import FIRST_COMPLETED, Executor, Future, wait
from dataclasses import dataclass, field

import numpy as np

from backspring import _core
from backspring.errors import Error
from backspring.many.checked import Checked, Lost
from backspring.many.columns import Column
from backspring.many.kept import Kept

CHUNK_IN_THREADS = 256
# Enough to keep many workers busy, few enough to bound what is held at a time.
_UNDER_WAY = 64
_LOOK_EVERY_S = 0.1
Tell = Callable[[int], None]


def check_rows(
    core: _core.Design,
    columns: Mapping[str, Column],
    names: list[str],
    threads: int,
    chunk_rows: int,
    tell: Tell | None = None,
) -> Checked:
    """Check rows in this process, in the core's threads."""
    changes = [_core.Change(key, column) for key, column in columns.items()]
    batch = _core.check_many(core, changes, threads, chunk_rows, names, tell)
    results = {column.name: column.values for column in batch.columns}
    return Checked(results, batch.status, batch.complete)


@dataclass
class _Run:
    """Chunks of a run: those that are done, under way and lost."""

    columns: Mapping[str, Column]
    names: list[str]
    chunk_rows: int
    tell: Tell | None
    kept: Kept | None
    done: int = 0
    waiting: dict[Future[Checked], int] = field(default_factory=dict)
    lost: dict[int, BaseException] = field(default_factory=dict)

    def __post_init__(self) -> None:
        rows = self.rows
        self.codes = np.full(rows, _core.RowStatus.not_run.value, dtype=np.uint8)
        self.results = {name: np.full(rows, np.nan) for name in self.names}

    @property
    def rows(self) -> int:
        return next(iter(self.columns.values())).size

    def starts(self) -> Iterator[int]:
        """First rows of the chunks that are still to be checked."""
        for start in range(0, self.rows, self.chunk_rows):
            found = self.kept.find(self.part(start)) if self.kept else None
            if found is None:
                yield start
            else:
                self._put(start, found)

    def part(self, start: int) -> dict[str, Column]:
        end = start + self.chunk_rows
        return {key: column[start:end] for key, column in self.columns.items()}

    def take(self, start: int, checked: Checked) -> None:
        if self.kept is not None and checked.complete:
            self.kept.keep(self.part(start), checked)
        self._put(start, checked)

    def _put(self, start: int, checked: Checked) -> None:
        self.codes[start : start + checked.codes.size] = checked.codes
        for name in self.names:
            self.results[name][start : start + checked.codes.size] = checked.columns[name]
        self.done += checked.codes.size
        if self.tell is not None:
            self.tell(self.done)

    def collect(self, ready: set[Future[Checked]]) -> None:
        for future in ready:
            start = self.waiting.pop(future)
            try:
                checked = future.result()
            except Error:
                raise
            except Exception as error:
                self.lost[start] = error
            else:
                self.take(start, checked)

    def answer(self, complete: bool) -> Checked:
        lost = None
        if self.lost:
            first = min(self.lost)
            last = min(first + self.chunk_rows, self.rows) - 1
            lost = Lost(first, last, len(self.lost) - 1, self.lost[first])
        return Checked(self.results, self.codes, complete and lost is None, lost)


def run_chunks(
    executor: Executor,
    core: _core.Design,
    columns: Mapping[str, Column],
    names: list[str],
    chunk_rows: int,
    tell: Tell | None,
    kept: Kept | None = None,
) -> Checked:
    """Check rows on an executor; an interrupt or a lost worker ends it and keeps what is done."""
    run = _Run(columns, names, chunk_rows, tell, kept)
    starts = run.starts()
    try:
        while not run.lost:
            while len(run.waiting) < _UNDER_WAY and (start := next(starts, None)) is not None:
                try:
                    sent = executor.submit(check_rows, core, run.part(start), names, 1, chunk_rows)
                except Exception as error:
                    run.lost[start] = error
                    break
                run.waiting[sent] = start
            if not run.waiting:
                break
            run.collect(wait(run.waiting, _LOOK_EVERY_S, FIRST_COMPLETED).done)
        # What other workers have in hand is not thrown away with the lost one's.
        run.collect(wait({each for each in run.waiting if not each.cancel()}).done)
    except KeyboardInterrupt:
        return run.answer(complete=False)
    finally:
        for future in run.waiting:
            future.cancel()
    return run.answer(complete=True)


def run_here(
    core: _core.Design,
    columns: Mapping[str, Column],
    names: list[str],
    threads: int,
    chunk_rows: int,
    tell: Tell | None,
    kept: Kept,
) -> Checked:
    """Check rows in this process, chunk by chunk, so that each is kept when it is done."""
    run = _Run(columns, names, chunk_rows, tell, kept)
    for start in run.starts():
        checked = check_rows(core, run.part(start), names, threads, CHUNK_IN_THREADS)
        run.take(start, checked)
        if not checked.complete:
            return run.answer(complete=False)
    return run.answer(complete=True)
