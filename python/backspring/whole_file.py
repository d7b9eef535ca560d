"""Writes a file whole or not at all, and holds it against other writers.

This is the one place that writes files.
"""

from __future__ import annotations

import contextlib
import os
import secrets
import stat
import time
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from pathlib import Path

from backspring.errors import InvalidInput
from backspring.faults import Fault, invalid

try:
    import fcntl
except ImportError:  # A system without such locks: two writers at once are then not told apart.
    fcntl = None  # type: ignore[assignment]

_WAIT_S, _LOOK_S = 10.0, 0.005


def replace_file(path: Path, parts: Iterable[bytes], key: str = "output") -> None:
    """Write the parts; a file that stood there is replaced only by a whole one on the disk.

    The parts are written to a file of its own name beside it, which is then moved into its place.
    Links are followed, the mode of a file that stood there is kept. Raises InvalidInput, naming the
    key, when it cannot be written.
    """
    with _system_faults(path, key):
        target = _target(path)
        part = target.with_name(f".{target.name}.{os.getpid()}-{secrets.token_hex(4)}.part")
        try:
            _write_part(part, parts, _mode(target))
            os.replace(part, target)
        finally:
            part.unlink(missing_ok=True)
        _keep_name(target.parent)


def require_free(output: str | os.PathLike[str] | None, force: bool) -> None:
    """Refuse to write over a design file, in which a maker may have put numbers."""
    if output is not None and not force and Path(output).exists():
        message = f"{os.fspath(output)} is there already: choose another name, or --force"
        raise invalid([Fault("cannot-write", "output", message)])


@contextmanager
def locked(path: Path, key: str = "output") -> Iterator[None]:
    """Hold a file against other writers that ask; waits for one that has it.

    The lock stands on a file beside it and ends with the process, however that ends. Parts that a
    killed writer left are cleared away. Raises InvalidInput, naming the key, when it is not to be
    had.
    """
    if fcntl is None:
        yield
        return
    with _system_faults(path, key):
        target = _target(path)
        lock = target.with_name(f".{target.name}.lock")
        held = _take(lock, path, key)
    try:
        _clear_parts(target)
        yield
    finally:
        # Taken away before it is let go: who waits for it sees that, and makes a new one.
        lock.unlink(missing_ok=True)
        os.close(held)


@contextmanager
def _system_faults(path: Path, key: str) -> Iterator[None]:
    try:
        yield
    except OSError as error:
        message = f"cannot write {path}: {(error.strerror or str(error)).lower()}"
        raise invalid([Fault("cannot-write", key, message)]) from None


def _target(path: Path) -> Path:
    """Return where the file really is."""
    return Path(os.path.realpath(path))


def _mode(target: Path) -> int | None:
    """Return the mode of the file that stands there; None when there is none."""
    try:
        mode = target.stat().st_mode
    except FileNotFoundError:
        return None
    if not stat.S_ISREG(mode):
        raise OSError(None, "not an ordinary file")
    if not os.access(target, os.W_OK):
        raise PermissionError(None, "permission denied")
    return stat.S_IMODE(mode)


def _write_part(part: Path, parts: Iterable[bytes], mode: int | None) -> None:
    file = os.open(part, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o666)
    try:
        for each in parts:
            left = memoryview(each)
            while left:
                left = left[os.write(file, left) :]
        if mode is not None:
            os.fchmod(file, mode)
        os.fsync(file)
    finally:
        os.close(file)


def _keep_name(folder: Path) -> None:
    """Bring the new name itself to the disk, where the system lets a folder be opened.

    The file is in its place by now; a system that cannot do this much has not failed to write.
    """
    if not hasattr(os, "O_DIRECTORY"):
        return
    with contextlib.suppress(OSError):
        held = os.open(folder, os.O_RDONLY | os.O_DIRECTORY)
        try:
            os.fsync(held)
        finally:
            os.close(held)


def _take(lock: Path, path: Path, key: str) -> int:
    """Take the lock of the file that bears the name at that moment."""
    until = time.monotonic() + _WAIT_S
    while True:
        held = os.open(lock, os.O_RDWR | os.O_CREAT, 0o666)
        try:
            fcntl.flock(held, fcntl.LOCK_EX | fcntl.LOCK_NB)
            with contextlib.suppress(FileNotFoundError):
                if os.path.samestat(os.fstat(held), os.stat(lock)):
                    return held
        except BlockingIOError:
            if time.monotonic() > until:
                os.close(held)
                raise _busy(path, key) from None
            time.sleep(_LOOK_S)
        except OSError:
            os.close(held)
            raise
        os.close(held)


def _busy(path: Path, key: str) -> InvalidInput:
    message = f"another program has held {path} for {_WAIT_S:.0f} s: try again when it has ended"
    return invalid([Fault("in-use", key, message)])


def _clear_parts(target: Path) -> None:
    with contextlib.suppress(OSError):
        for each in target.parent.iterdir():
            if each.name.startswith(f".{target.name}.") and each.name.endswith(".part"):
                each.unlink(missing_ok=True)
