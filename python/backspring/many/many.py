"""Checks many designs that differ in some numbers."""

from __future__ import annotations

import os
from collections.abc import Iterable, Mapping
from concurrent.futures import Executor
from typing import Any

from backspring import _core
from backspring.design.design import Design
from backspring.errors import WorkerLost
from backspring.faults import Fault, invalid, near_match
from backspring.many.changes import read_changes, with_followers
from backspring.many.checked import Checked, Lost
from backspring.many.chunks import CHUNK_IN_THREADS, check_rows, run_chunks, run_here
from backspring.many.columns import Column
from backspring.many.kept import kept_in
from backspring.many.many_checks import ManyChecks
from backspring.many.progress import Progress, reporting

_CHUNK_SENT = 5_000


def check_many(
    design: Design,
    changes: Mapping[str, Any],
    *,
    columns: Iterable[str] | None = None,
    threads: int | None = None,
    executor: Executor | None = None,
    progress: Progress = None,
    chunk_rows: int | None = None,
    keep: str | os.PathLike[str] | None = None,
) -> ManyChecks:
    """Check many designs: `check_many(design, {"fit.preload": array, ...})`.

    Keys are those of a design file that hold one number; also "spring.thickness_scale" and
    "spring.thickness_offset" for a profile that keeps its shape. Values are arrays of one length
    in mm, MPa or ratios, lists of texts with units, or one value for all rows.

    `columns` are the results wanted, all when left out. `executor` is any
    `concurrent.futures.Executor`, which is sent chunks of rows; without one the core runs
    `threads` of its own. Results are the same to the last bit whichever runs them. `progress` is
    True for a bar, or is called with the rows done and all rows.

    `keep` is a folder for the chunks that are done: the same question asked again, of the same
    design and rows in chunks of the same size, goes on from there whatever ended it.

    A bad row has a status and raises nothing. Ctrl-C ends the run and returns what is done: see
    `complete`. Raises InvalidInput for what cannot be changed, WorkerLost where a worker of the
    executor ended: what is done by then is its `checks`.
    """
    read = read_changes(design, changes)
    names = _names(columns)
    refuse_running(threads, executor, chunk_rows)
    return run(design, read, names, threads, executor, progress, chunk_rows, keep)


def run(
    design: Design,
    inputs: Mapping[str, Column],
    names: list[str],
    threads: int | None,
    executor: Executor | None,
    progress: Progress,
    chunk_rows: int | None,
    keep: str | os.PathLike[str] | None = None,
) -> ManyChecks:
    """Check rows that were read and found good."""
    core, kept = design.core, kept_in(keep, design.core, names)
    sent = with_followers(design, inputs)
    rows = next(iter(inputs.values())).size
    with reporting(progress, rows, design.name) as tell:
        checked: Checked
        chunk = chunk_rows or _CHUNK_SENT
        if executor is not None:
            checked = run_chunks(executor, core, sent, names, chunk, tell, kept)
        elif kept is not None:
            checked = run_here(core, sent, names, threads or 0, chunk, tell, kept)
        else:
            chunk = chunk_rows or CHUNK_IN_THREADS
            checked = check_rows(core, sent, names, threads or 0, chunk, tell)
    many = ManyChecks(design, dict(inputs), checked.columns, checked.codes, checked.complete)
    if checked.lost is not None:
        raise _worker_lost(checked.lost, many, keep) from checked.lost.cause
    return many


def _worker_lost(lost: Lost, many: ManyChecks, keep: object) -> WorkerLost:
    others = f" and {lost.others} other chunk{'s' * (lost.others > 1)}" if lost.others else ""
    missing = many.counts().get("not_run", 0)
    kept = f", kept in {keep}: ask again to go on" if keep is not None else ""
    return WorkerLost(
        f"a worker ended with rows {lost.first_row} to {lost.last_row}{others} in hand "
        f"({type(lost.cause).__name__}); {many.rows - missing} of {many.rows} rows are done{kept}",
        lost.first_row,
        lost.last_row,
        many,
    )


def _names(columns: Iterable[str] | None) -> list[str]:
    known = _core.batch_columns()
    if columns is None:
        return known
    names = [columns] if isinstance(columns, str) else list(columns)
    faults = []
    for name in names:
        if name not in known:
            near = near_match(str(name), known)
            hint = f'did you mean "{near}"?' if near else f"known are {', '.join(known)}"
            faults.append(Fault("unknown-key", "columns", f'unknown result "{name}": {hint}'))
    if not names:
        faults.append(Fault("bad-value", "columns", "must name at least one result"))
    if faults:
        raise invalid(faults)
    return list(dict.fromkeys(names))


def refuse_running(threads: int | None, executor: Executor | None, chunk_rows: int | None) -> None:
    """Refuse a way of running that cannot be."""
    faults = []
    for key, value, most in (("threads", threads, 1024), ("chunk_rows", chunk_rows, 10**9)):
        if value is not None and not (
            isinstance(value, int) and not isinstance(value, bool) and 1 <= value <= most
        ):
            message = f"must be a whole number from 1 to {most}, got {value!r}"
            faults.append(Fault("bad-value", key, message))
    if threads is not None and executor is not None:
        faults.append(Fault("bad-value", "threads", "goes without an executor, which has its own"))
    if faults:
        raise invalid(faults)
