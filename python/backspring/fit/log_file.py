"""The file of a fitting log: one line an entry, written whole or not at all.

The first line names the design and carries the fingerprint of its shape, the last line counts the
entries, so that a file cut short is noticed. Format 1 carried the design's name alone.
"""

from __future__ import annotations

import csv
import io
import math
from collections.abc import Sequence
from pathlib import Path

from backspring.design.design import Design
from backspring.errors import InvalidInput
from backspring.faults import Fault, invalid
from backspring.fit.log_entry import Entry, GroundEntry, MeasuredEntry, broken_limit, faces_of
from backspring.whole_file import replace_file

_TITLE, _FORMAT, _BY_NAME = "backspring fitting log", "2", "1"
_HEADS = ["what", "state", "half_stop_mm", "closed_mm", "repeatability_mm", "face", "depth_mm"]
_LARGEST_BYTES = 1_000_000
_SHOWN = 12
_OUT = "mend the value, or take the line out and lower the count in the last line"


def read_log(path: Path, design: Design) -> list[Entry]:
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
        rows = list(csv.reader(io.StringIO(content.decode("utf-8"), newline=""), strict=True))
    except (UnicodeDecodeError, csv.Error):
        raise _refused(path, None, "not a fitting log: no text in UTF-8 with commas") from None
    _require_same_design(path, rows, design)
    return _entries(path, rows, design)


def write_log(path: Path, design: Design, entries: Sequence[Entry]) -> None:
    """Write all entries; a file that stood there is replaced only by a whole one on the disk."""
    text = io.StringIO()
    out = csv.writer(text, lineterminator="\n")
    out.writerow([_TITLE, _FORMAT, design.name, design.shape_sha256])
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


def _require_same_design(path: Path, rows: list[list[str]], design: Design) -> None:
    head = rows[0] if rows else []
    if not head or head[0] != _TITLE or len(head) < 3:
        raise _refused(path, 1, f'not a fitting log: must begin with "{_TITLE}"')
    if head[1] not in (_FORMAT, _BY_NAME):
        raise _refused(path, 1, f"this version reads formats 1 and {_FORMAT}, got {head[1]}")
    if len(head) != (3 if head[1] == _BY_NAME else 4):
        raise _refused(path, 1, "damaged: format, name and fingerprint of the design expected")
    if head[1] == _BY_NAME:
        if head[2] != design.name:
            message = f'this log is of the design "{head[2]}", not "{design.name}"'
            raise _refused(path, 1, message)
    elif head[3] != design.shape_sha256:
        raise _refused(
            path,
            1,
            f'this log is of the design "{head[2]}" with the shape {head[3][:_SHOWN]}, not of '
            f'"{design.name}" with the shape {design.shape_sha256[:_SHOWN]}: give the design as it '
            "was when the log was begun (spring, tang and fit alike), or begin a new log",
        )


def _entries(path: Path, rows: list[list[str]], design: Design) -> list[Entry]:
    if len(rows) < 2 or rows[1] != _HEADS:
        heads = ",".join(_HEADS)
        raise _refused(path, 2, f"damaged: the columns' names must be {heads}: write them so again")
    entries: list[Entry] = []
    for line, row in enumerate(rows[2:], start=3):
        if row[:1] == ["end"]:
            if row != ["end", str(len(entries))] or line != len(rows):
                raise _refused(
                    path,
                    line,
                    f"damaged: {len(entries)} entries stand before this end, which must be the "
                    f'last line and read "end,{len(entries)}": put back what was lost, or write it '
                    "so",
                )
            return entries
        entries.append(_entry(path, line, row, design))
    raise _refused(
        path,
        len(rows),
        "damaged: the file ends here, its last line is missing: if no entry was lost, add the line "
        f'"end,{len(entries)}"',
    )


def _entry(path: Path, line: int, row: list[str], design: Design) -> Entry:
    if len(row) != len(_HEADS):
        message = f"damaged: {len(_HEADS)} columns expected, got {len(row)}: {_OUT}"
        raise _refused(path, line, message)
    what, state, half, closed, spread, face, depth = row
    tang = design.core.tang
    if what == "ground" and face in faces_of(tang):
        return GroundEntry(face, _number(path, line, "depth_mm", depth))
    if what == "measured" and state in ("loaded", "unloaded"):
        if bool(half) != (tang.half_stop_mm is not None):
            wanted = "no half-stop expected" if half else "a half-stop reading expected"
            raise _refused(path, line, f"damaged: {wanted}: {_OUT}")
        return MeasuredEntry(
            state,
            _number(path, line, "half_stop_mm", half) if half else None,
            _number(path, line, "closed_mm", closed),
            _number(path, line, "repeatability_mm", spread),
        )
    message = f'damaged: no entry of a log of this tang: "{",".join(row)[:60]}": {_OUT}'
    raise _refused(path, line, message)


def _number(path: Path, line: int, column: str, written: str) -> float:
    try:
        value = float(written)
    except ValueError:
        value = math.nan
    if not math.isfinite(value):
        message = f'damaged: {column} must be a number, got "{written[:20]}": {_OUT}'
        raise _refused(path, line, message)
    rule = broken_limit(column, value)
    if rule:
        raise _refused(path, line, f"damaged: {column} {rule}: {_OUT}")
    return value


def _refused(path: Path, line: int | None, message: str) -> InvalidInput:
    return invalid([Fault("bad-log", "", message, str(path), line)])
