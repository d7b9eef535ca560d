"""The file of a fitting log: one line an entry, written whole or not at all.

The first line names the design, the last line counts the entries, so that a file cut short is
noticed.
"""

from __future__ import annotations

import csv
import io
import math
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from backspring.errors import InvalidInput
from backspring.faults import Fault, invalid
from backspring.fit.result import FACES
from backspring.whole_file import replace_file

_TITLE, _FORMAT = "backspring fitting log", "1"
_HEADS = ["what", "state", "half_stop_mm", "closed_mm", "repeatability_mm", "face", "depth_mm"]
_LARGEST_BYTES = 1_000_000


@dataclass(frozen=True, slots=True)
class MeasuredEntry:
    """What the dial showed [mm]."""

    state: str
    half_stop_mm: float | None
    closed_mm: float
    repeatability_mm: float


@dataclass(frozen=True, slots=True)
class GroundEntry:
    """What came off a face [mm]."""

    face: str
    depth_mm: float


Entry = MeasuredEntry | GroundEntry


def read_log(path: Path, name: str, half_stop: bool) -> list[Entry]:
    """Read the entries of a design's log; a file that is not there has none.

    Raises InvalidInput, telling the line, for a damaged file and for another design's.
    """
    try:
        content = path.read_bytes()
    except FileNotFoundError:
        return []
    except OSError as error:
        raise _refused(path, None, f"cannot be read: {error.strerror}") from None
    if len(content) > _LARGEST_BYTES:
        raise _refused(path, None, "larger than 1 MB: this is no fitting log")
    try:
        rows = list(csv.reader(io.StringIO(content.decode()), strict=True))
    except (UnicodeDecodeError, csv.Error):
        raise _refused(path, None, "not a fitting log: no text in UTF-8 with commas") from None
    return _entries(path, rows, name, half_stop)


def write_log(path: Path, name: str, entries: Sequence[Entry]) -> None:
    """Write all entries; a file that stood there is replaced only by a whole one on the disk."""
    text = io.StringIO()
    out = csv.writer(text, lineterminator="\n")
    out.writerow([_TITLE, _FORMAT, name])
    out.writerow(_HEADS)
    out.writerows(_row(entry) for entry in entries)
    out.writerow(["end", len(entries)])
    replace_file(path, [text.getvalue().encode()], "log")


def _row(entry: Entry) -> list[str]:
    if isinstance(entry, GroundEntry):
        return ["ground", "", "", "", "", entry.face, repr(entry.depth_mm)]
    half = "" if entry.half_stop_mm is None else repr(entry.half_stop_mm)
    spread = repr(entry.repeatability_mm)
    return ["measured", entry.state, half, repr(entry.closed_mm), spread, "", ""]


def _entries(path: Path, rows: list[list[str]], name: str, half_stop: bool) -> list[Entry]:
    if not rows or len(rows[0]) != 3 or rows[0][0] != _TITLE:
        raise _refused(path, 1, f'not a fitting log: must begin with "{_TITLE}"')
    if rows[0][1] != _FORMAT:
        raise _refused(path, 1, f"this version reads format {_FORMAT}, got {rows[0][1]}")
    if rows[0][2] != name:
        raise _refused(path, 1, f'this log is of the design "{rows[0][2]}", not "{name}"')
    if len(rows) < 2 or rows[1] != _HEADS:
        raise _refused(path, 2, "damaged: the columns' names are not as written")
    entries: list[Entry] = []
    for line, row in enumerate(rows[2:], start=3):
        if row[:1] == ["end"]:
            if row != ["end", str(len(entries))] or line != len(rows):
                raise _refused(path, line, f"damaged: {len(entries)} entries stand before this end")
            return entries
        entries.append(_entry(path, line, row, half_stop))
    raise _refused(path, len(rows), "damaged: the file ends here, its last line is missing")


def _entry(path: Path, line: int, row: list[str], half_stop: bool) -> Entry:
    if len(row) != len(_HEADS):
        raise _refused(path, line, f"damaged: {len(_HEADS)} columns expected, got {len(row)}")
    what, state, half, closed, spread, face, depth = row
    if what == "ground" and face in FACES:
        return GroundEntry(face, _number(path, line, "depth_mm", depth))
    if what == "measured" and state in ("loaded", "unloaded"):
        if bool(half) != half_stop:
            wanted = "a half-stop reading expected" if half_stop else "no half-stop expected"
            raise _refused(path, line, f"damaged: {wanted}")
        return MeasuredEntry(
            state,
            _number(path, line, "half_stop_mm", half) if half else None,
            _number(path, line, "closed_mm", closed),
            _number(path, line, "repeatability_mm", spread),
        )
    raise _refused(path, line, f'damaged: no entry of a fitting log: "{",".join(row)[:60]}"')


def _number(path: Path, line: int, column: str, text: str) -> float:
    try:
        value = float(text)
    except ValueError:
        value = math.nan
    if not math.isfinite(value):
        raise _refused(path, line, f'damaged: {column} must be a number, got "{text[:20]}"')
    return value


def _refused(path: Path, line: int | None, message: str) -> InvalidInput:
    return invalid([Fault("bad-log", "", message, str(path), line)])
