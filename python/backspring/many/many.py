"""Checks many designs that differ in some numbers."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from concurrent.futures import Executor
from typing import Any

from backspring import _core
from backspring.design.design import Design
from backspring.faults import Fault, invalid, near_match
from backspring.many.changes import Column, read_changes, with_followers
from backspring.many.chunks import Checked, check_rows, run_chunks
from backspring.many.many_checks import ManyChecks
from backspring.many.progress import Progress, reporting

_CHUNK_IN_THREADS = 256
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
) -> ManyChecks:
    """Check many designs: `check_many(design, {"fit.preload": array, ...})`.

    Keys are those of a design file that hold one number; also "spring.thickness_scale" and
    "spring.thickness_offset" for a profile that keeps its shape. Values are arrays of one length
    in mm, MPa or ratios, lists of texts with units, or one value for all rows.

    `columns` are the results wanted, all when left out. `executor` is any
    `concurrent.futures.Executor`, which is sent chunks of rows; without one the core runs
    `threads` of its own. Results are the same to the last bit whichever runs them. `progress` is
    True for a bar, or is called with the rows done and all rows.

    A bad row has a status and raises nothing. Ctrl-C ends the run and returns what is done: see
    `complete`. Raises InvalidInput for what cannot be changed.
    """
    read = read_changes(design, changes)
    names = _names(columns)
    refuse_running(threads, executor, chunk_rows)
    return run(design, read, names, threads, executor, progress, chunk_rows)


def run(
    design: Design,
    inputs: Mapping[str, Column],
    names: list[str],
    threads: int | None,
    executor: Executor | None,
    progress: Progress,
    chunk_rows: int | None,
) -> ManyChecks:
    """Check rows that were read and found good."""
    sent = with_followers(design, inputs)
    rows = next(iter(inputs.values())).size
    with reporting(progress, rows, design.name) as tell:
        checked: Checked
        if executor is None:
            chunk = chunk_rows or _CHUNK_IN_THREADS
            checked = check_rows(design.core, sent, names, threads or 0, chunk, tell)
        else:
            chunk = chunk_rows or _CHUNK_SENT
            checked = run_chunks(executor, design.core, sent, names, chunk, tell)
    return ManyChecks(design, dict(inputs), checked.columns, checked.codes, checked.complete)


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
        if value is not None and not (isinstance(value, int) and 1 <= value <= most):
            message = f"must be a whole number from 1 to {most}, got {value!r}"
            faults.append(Fault("bad-value", key, message))
    if threads is not None and executor is not None:
        faults.append(Fault("bad-value", "threads", "goes without an executor, which has its own"))
    if faults:
        raise invalid(faults)
