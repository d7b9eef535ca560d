"""Tells how far a long run has come."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from typing import Literal

Tell = Callable[[int], None]
Progress = bool | Literal["plain"] | Callable[[int, int], None] | None


@contextmanager
def reporting(progress: Progress, total: int, name: str) -> Iterator[Tell | None]:
    """Give what is reporting the number of rows done.

    True shows a bar on the error stream, "plain" one without colours; a function is called with the
    rows done and all of them; None or False tells nobody.
    """
    if callable(progress):
        called = progress
        yield lambda done: called(done, total)
    elif progress:
        with _bar(total, name, progress != "plain") as tell:
            yield tell
    else:
        yield None


@contextmanager
def _bar(total: int, name: str, color: bool) -> Iterator[Tell]:
    from rich.console import Console
    from rich.progress import BarColumn, MofNCompleteColumn, TextColumn, TimeRemainingColumn
    from rich.progress import Progress as Bar

    console = Console(stderr=True, color_system="auto" if color else None)
    columns = (TextColumn("{task.description}"), BarColumn(), MofNCompleteColumn())
    with Bar(*columns, TimeRemainingColumn(), console=console) as bar:
        task = bar.add_task(name, total=total)
        yield lambda done: bar.update(task, completed=done)
