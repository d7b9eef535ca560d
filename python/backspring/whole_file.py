"""Writes a file whole or not at all."""

from __future__ import annotations

import os
from collections.abc import Iterable
from pathlib import Path

from backspring.faults import Fault, invalid


def replace_file(path: Path, parts: Iterable[bytes], key: str = "output") -> None:
    """Write the parts; a file that stood there is replaced only by a whole one on the disk.

    The parts are written to a file beside it, which is then moved into its place. Raises
    InvalidInput, naming the key, when it cannot be written.
    """
    part = path.with_name(f".{path.name}.part")
    try:
        try:
            with part.open("wb") as file:
                file.writelines(parts)
                file.flush()
                os.fsync(file.fileno())
            os.replace(part, path)
        finally:
            part.unlink(missing_ok=True)
        _settle(path.parent)
    except OSError as error:
        message = f"cannot write {path}: {(error.strerror or str(error)).lower()}"
        raise invalid([Fault("cannot-write", key, message)]) from None


def _settle(folder: Path) -> None:
    """Bring the new name itself to the disk, where the system lets a folder be opened."""
    if not hasattr(os, "O_DIRECTORY"):
        return
    held = os.open(folder, os.O_RDONLY | os.O_DIRECTORY)
    try:
        os.fsync(held)
    finally:
        os.close(held)
