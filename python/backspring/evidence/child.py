"""A program that goes with all that it started when we go."""

from __future__ import annotations

import os
import signal
import subprocess
import threading
import time
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import IO, Any, NoReturn

_LOOK_S = 0.2
# What does not go when it is asked to is ended after so long.
_PATIENCE_S = 3.0
# Ways to be told to stop that would end us at once, with the program left running.
_STOPS = [getattr(signal, each) for each in ("SIGTERM", "SIGHUP") if hasattr(signal, each)]


def run_child(words: Sequence[str], folder: Path, log: IO[str], look: Callable[[], None]) -> int:
    """Run a program to its end, looking now and then; returns what it ended with.

    Stopped on the way, by Ctrl-C or by a signal, it goes first: with its whole process group, for
    a solver that it started would go on alone.
    """
    with (
        _told_to_stop(),
        subprocess.Popen(
            words, cwd=folder, stdout=log, stderr=subprocess.STDOUT, start_new_session=True
        ) as running,
    ):
        try:
            while running.poll() is None:
                time.sleep(_LOOK_S)
                look()
        except BaseException:
            _end(running)
            raise
        return int(running.returncode)


@contextmanager
def _told_to_stop() -> Iterator[None]:
    """Make of a signal an exception, so that what must be ended is; only the main thread may."""
    if threading.current_thread() is not threading.main_thread():
        yield
        return
    before = {each: signal.signal(each, _stop) for each in _STOPS}
    try:
        yield
    finally:
        for each, handler in before.items():
            signal.signal(each, handler)


def _stop(number: int, _: Any) -> NoReturn:
    raise SystemExit(128 + number)


def _end(running: subprocess.Popen[bytes]) -> None:
    """Ask the group to go; what is still there of it then, end."""
    if not hasattr(os, "killpg"):
        running.terminate()
        return
    with suppress(ProcessLookupError):
        os.killpg(running.pid, signal.SIGTERM)
        with suppress(subprocess.TimeoutExpired):
            running.wait(_PATIENCE_S)
        os.killpg(running.pid, signal.SIGKILL)
