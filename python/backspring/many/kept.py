"""Chunks of rows that are done, kept in a folder, so that a run that was broken off goes on there.

A chunk goes by a hash of all that its numbers come from: the design, the rows and the core itself.
"""

from __future__ import annotations

import hashlib
import io
import os
import zipfile
from collections.abc import Mapping
from dataclasses import dataclass
from enum import Enum
from functools import cache
from pathlib import Path
from typing import Any

import numpy as np

from backspring import _core
from backspring.faults import Fault, invalid
from backspring.many.checked import Checked
from backspring.many.columns import Column
from backspring.whole_file import replace_file

_STATUS = "status"


@dataclass(frozen=True)
class Kept:
    """A folder of chunks, of one design and some of its results."""

    folder: Path
    study: bytes
    names: tuple[str, ...]

    def find(self, rows: Mapping[str, Column]) -> Checked | None:
        """Return the results of rows that are there and whole."""
        try:
            with np.load(io.BytesIO(self._path(rows).read_bytes()), allow_pickle=False) as held:
                columns = {name: held[name] for name in self.names}
                return Checked(columns, held[_STATUS], complete=True)
        except (OSError, ValueError, KeyError, EOFError, zipfile.BadZipFile):
            return None

    def keep(self, rows: Mapping[str, Column], checked: Checked) -> None:
        """Write the results of rows; whole or not at all."""
        content = io.BytesIO()
        np.savez(content, allow_pickle=False, **{_STATUS: checked.codes}, **checked.columns)
        replace_file(self._path(rows), [content.getvalue()], "keep")

    def _path(self, rows: Mapping[str, Column]) -> Path:
        digest = hashlib.sha256(self.study)
        for key, column in rows.items():
            digest.update(f"{key}:{column.size}:".encode())
            digest.update(np.ascontiguousarray(column).data)
        return self.folder / f"{digest.hexdigest()[:40]}.npz"


def kept_in(
    folder: str | os.PathLike[str] | None, core: _core.Design, names: list[str]
) -> Kept | None:
    """Make ready to keep chunks in a folder, which is made where there is none."""
    if folder is None:
        return None
    path = Path(folder)
    try:
        path.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        message = f"cannot make the folder {path}: {(error.strerror or str(error)).lower()}"
        raise invalid([Fault("cannot-write", "keep", message)]) from None
    study = hashlib.sha256(_build() + repr((names, _plain(core))).encode())
    return Kept(path, study.digest(), tuple(names))


@cache
def _build() -> bytes:
    """Tell one build of the core from another: its numbers may differ."""
    return hashlib.sha256(Path(_core.__file__).read_bytes()).digest()


def _plain(value: Any) -> Any:
    """Write a record of the core as plain values, all digits."""
    if isinstance(value, Enum):
        return value.name
    if isinstance(value, list | tuple):
        return [_plain(each) for each in value]
    if hasattr(value, "_fields"):
        return {name: _plain(getattr(value, name)) for name in value._fields}
    return value
