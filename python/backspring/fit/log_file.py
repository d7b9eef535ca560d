"""The file of a knife's log: one line an entry, written whole or not at all.

The first line names the design and carries the fingerprint of its shape, the last line counts the
entries, so that a file cut short is noticed. Format 1 carried the design's name alone; formats 1
and 2 knew readings and depths only. Format 4, of several blades, has the blade's name in one more
column; what an older format holds is the first blade's.
"""

from __future__ import annotations

import csv
import io
import math
from collections.abc import Mapping, Sequence
from dataclasses import replace
from pathlib import Path

from backspring.design.design import Design
from backspring.errors import InvalidInput
from backspring.faults import Fault, invalid
from backspring.fit.log_entry import (
    FIGURES,
    PLACED,
    SPRING_FACES,
    Entry,
    FigureEntry,
    FigureKind,
    GroundEntry,
    MeasuredEntry,
    broken_limit,
    places_of,
)
from backspring.text_cells import as_cell, from_cell, without_empty
from backspring.whole_file import replace_file

_TITLE, _BY_NAME, _ONE_BLADE, _FORMAT = "backspring fitting log", "1", "3", "4"
_READ = (_BY_NAME, "2", _ONE_BLADE, _FORMAT)
_OLD_HEADS = ["what", "state", "half_stop_mm", "closed_mm", "repeatability_mm", "face", "depth_mm"]
_ONE_HEADS = [*_OLD_HEADS, "from_mm", "to_mm", "value", "station_mm", "weight_n"]
_HEADS = [*_ONE_HEADS, "blade"]
# Under the design and the columns' names.
FIRST_LINE = 3
_LARGEST_BYTES = 1_000_000
_OUT = "mend the value, or take the line out and lower the count in the last line"


def read_log(path: Path, design: Design) -> list[Entry]:
    """Read the entries of a design's log; a file that is not there has none.

    Raises InvalidInput, telling the line, for a damaged file and for another design's.
    """
    try:
        rows = _rows(path)
    except FileNotFoundError:
        return []
    _require_same_design(path, rows, design)
    return _entries(path, rows, design)


def design_of_log(path: Path) -> tuple[str, str]:
    """Name the design that a log is of, with the fingerprint of its shape; format 1 has none.

    Raises InvalidInput for what is no log.
    """
    head = _head(path, _rows(path))
    return head[2], "" if head[1] == _BY_NAME else head[3]


def write_log(path: Path, design: Design, entries: Sequence[Entry]) -> None:
    """Write all entries; a file that stood there is replaced only by a whole one on the disk."""
    text = io.StringIO()
    out = csv.writer(text, lineterminator="\n")
    several = len(design.blades) > 1
    heads = _HEADS if several else _ONE_HEADS
    out.writerow(
        [_TITLE, _FORMAT if several else _ONE_BLADE, as_cell(design.name), design.shape_sha256]
    )
    out.writerow(heads)
    out.writerows(_row(entry)[: len(heads)] for entry in entries)
    out.writerow(["end", len(entries)])
    replace_file(path, [text.getvalue().encode()], "log")


def _row(entry: Entry) -> list[str]:
    cells = dict.fromkeys(_HEADS, "")
    if isinstance(entry, GroundEntry):
        given: dict[str, object] = {"what": "ground", "face": entry.face}
        numbers = {name: getattr(entry, name) for name in ("depth_mm", "from_mm", "to_mm")}
    elif isinstance(entry, FigureEntry):
        given = {"what": entry.kind}
        numbers = {name: getattr(entry, name) for name in ("value", "station_mm", "weight_n")}
    else:
        given = {"what": "measured", "state": entry.state}
        names = ("half_stop_mm", "closed_mm", "repeatability_mm")
        numbers = {name: getattr(entry, name) for name in names}
    given["blade"] = as_cell(entry.blade)
    given |= {name: repr(value) for name, value in numbers.items() if value is not None}
    return [str(cell) for cell in (cells | given).values()]


def _rows(path: Path) -> list[list[str]]:
    try:
        with path.open("rb") as file:
            # A device has no end.
            content = file.read(_LARGEST_BYTES + 1)
    except FileNotFoundError:
        raise
    except OSError as error:
        raise _refused(path, None, f"cannot be read: {error.strerror}") from None
    if len(content) > _LARGEST_BYTES:
        raise _refused(path, None, "larger than 1 MB: this is no fitting log")
    try:
        text = io.StringIO(content.decode("utf-8-sig"), newline="")
        return without_empty(list(csv.reader(text, strict=True)), (_TITLE, "end"))
    except (UnicodeDecodeError, csv.Error):
        raise _refused(path, None, "not a fitting log: no text in UTF-8 with commas") from None


def _head(path: Path, rows: list[list[str]]) -> list[str]:
    head = rows[0] if rows else []
    if head and head[0].startswith(f"{_TITLE};"):
        raise _refused(path, 1, "cells are parted by semicolons: save it with commas between cells")
    if not head or head[0] != _TITLE or len(head) < 3:
        raise _refused(path, 1, f'not a fitting log: must begin with "{_TITLE}"')
    if head[1] not in _READ:
        raise _refused(path, 1, f"this version reads formats 1 to {_FORMAT}, got {head[1]}")
    if len(head) != (3 if head[1] == _BY_NAME else 4):
        raise _refused(path, 1, "damaged: format, name and fingerprint of the design expected")
    return [*head[:2], from_cell(head[2]), *head[3:]]


def _require_same_design(path: Path, rows: list[list[str]], design: Design) -> None:
    head = _head(path, rows)
    by_name, name = head[1] == _BY_NAME, head[2]
    if name != design.name if by_name else head[3] != design.shape_sha256:
        another = (
            f'spring, tang or fit of "{name}" is not as it was when this log was begun: put it '
            "back, for what a knife differs by is what its log tells, or begin a new log"
        )
        if name != design.name:
            another = f'this log is of the design "{name}", not of "{design.name}"'
        raise _refused(path, 1, another)


def _entries(path: Path, rows: list[list[str]], design: Design) -> list[Entry]:
    names = {_FORMAT: _HEADS, _ONE_BLADE: _ONE_HEADS}.get(rows[0][1], _OLD_HEADS)
    seen = {name: design.seen_from(name) for name in design.blades}
    if len(rows) < 2 or rows[1] != names:
        heads = ",".join(names)
        raise _refused(path, 2, f"damaged: the columns' names must be {heads}: write them so again")
    entries: list[Entry] = []
    for line, row in enumerate(rows[2:], start=FIRST_LINE):
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
        entries.append(_Line(path, line, names, row).entry(seen))
    raise _refused(
        path,
        len(rows),
        "damaged: the file ends here, its last line is missing: if no entry was lost, add the line "
        f'"end,{len(entries)}"',
    )


class _Line:
    """One line of the file, under its columns' names."""

    def __init__(self, path: Path, line: int, names: list[str], row: list[str]) -> None:
        self.path, self.line = path, line
        if len(row) != len(names):
            raise self.refused(f"{len(names)} columns expected, got {len(row)}")
        self.written = ",".join(row)
        self.cells = dict.fromkeys(_HEADS, "") | dict(zip(names, row, strict=True))

    def entry(self, seen: Mapping[str, Design]) -> Entry:
        """Read the entry of one of the blades."""
        blade = from_cell(self.cells["blade"]) or next(iter(seen))
        if blade not in seen:
            raise self.refused(f'no blade is called "{blade[:20]}": known are {", ".join(seen)}')
        return replace(self._entry(seen[blade]), blade=blade if len(seen) > 1 else "")

    def _entry(self, design: Design) -> Entry:
        what, face, state = (self.cells[name] for name in ("what", "face", "state"))
        if what == "ground" and face in places_of(design.core.tang):
            return self._ground(face)
        if what == "measured" and state in ("loaded", "unloaded"):
            return self._measured(state, design)
        if what in FIGURES:
            return self._figure(FIGURES[FIGURES.index(what)])
        raise self.refused(f'no entry of a log of this tang: "{self.written[:60]}"')

    def refused(self, message: str) -> InvalidInput:
        """Make the refusal of this line."""
        return _refused(self.path, self.line, f"damaged: {message}: {_OUT}")

    def _ground(self, face: str) -> GroundEntry:
        ends = [self._optional(name) for name in ("from_mm", "to_mm")]
        if (ends[0] is None) != (ends[1] is None) or (ends[0] and face not in SPRING_FACES):
            raise self.refused("a stretch of the back or belly has two ends")
        return GroundEntry(face, self._optional("depth_mm"), ends[0], ends[1])

    def _measured(self, state: str, design: Design) -> MeasuredEntry:
        half, closed = self._optional("half_stop_mm"), self._optional("closed_mm")
        if half is not None and design.core.tang.half_stop_mm is None:
            raise self.refused("no half-stop expected")
        if half is None and closed is None:
            raise self.refused("a reading expected")
        return MeasuredEntry(state, half, closed, self._number("repeatability_mm"))

    def _figure(self, kind: FigureKind) -> FigureEntry:
        station, weight = self._optional("station_mm"), self._optional("weight_n")
        if (station is not None) != (kind in PLACED):
            raise self.refused(f"station_mm goes with {', '.join(PLACED)}")
        if (weight is not None) != (kind == "moved_mm"):
            raise self.refused("weight_n goes with moved_mm")
        return FigureEntry(kind, self._number("value", kind), station, weight)

    def _optional(self, column: str) -> float | None:
        return self._number(column) if self.cells[column] else None

    def _number(self, column: str, limits: str | None = None) -> float:
        written = self.cells[column]
        try:
            value = float(written)
        except ValueError:
            value = math.nan
        if not math.isfinite(value):
            raise self.refused(f'{column} must be a number, got "{written[:20]}"')
        rule = broken_limit(limits or column, value)
        if rule:
            raise self.refused(f"{column} {rule}")
        return value


def _refused(path: Path, line: int | None, message: str) -> InvalidInput:
    return invalid([Fault("bad-log", "", message, str(path), line)])
