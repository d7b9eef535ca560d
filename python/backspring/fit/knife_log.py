"""The entries of one knife's log, and how they are kept."""

from __future__ import annotations

import math
import os
from abc import ABC, abstractmethod
from collections.abc import Iterator
from contextlib import AbstractContextManager, contextmanager, nullcontext
from dataclasses import replace
from pathlib import Path

from backspring.design.arguments import refusal
from backspring.design.design import Design
from backspring.fit.beside import entries_of
from backspring.fit.log_entry import Entry, MeasuredEntry
from backspring.fit.log_file import FIRST_LINE, read_log, write_log
from backspring.fit.misfit import PUT_RIGHT, repeats
from backspring.whole_file import locked


class KnifeLog(ABC):
    """Entries in turn; nothing is written before all of it is found to go together."""

    def __init__(self, design: Design, path: str | os.PathLike[str] | None) -> None:
        self.drawn = design
        self.path = None if path is None else Path(path)
        self._stood = self._entries = self._read()
        self._holding = False

    @property
    def logged(self) -> tuple[Entry, ...]:
        """All entries of the log in turn, whichever blade they are of."""
        return self._entries

    @property
    def entries(self) -> tuple[Entry, ...]:
        """All entries in turn; of several blades this one's, and trips that took off the spring."""
        return entries_of(self.drawn, self._entries)

    @property
    def scatter_mm(self) -> float | None:
        """Standard deviation between repeated readings, pooled; None when nothing is repeated."""
        squares, freedom = 0.0, 0
        for readings in repeats(self.entries).values():
            mean = sum(readings) / len(readings)
            squares += sum((each - mean) ** 2 for each in readings)
            freedom += len(readings) - 1
        return math.sqrt(squares / freedom) if freedom else None

    @property
    def spread_mm(self) -> float:
        """Standard deviation of one reading: as stated, or the scatter where that is more."""
        return max([self.scatter_mm or 0.0, *self._stated()])

    def undo(self) -> Entry:
        """Take the last entry off, and return it. Raises InvalidInput when there is none."""
        if not self._entries:
            raise refusal("log", "holds no entry to take off")
        last = self._entries[-1]
        with self._alone():
            self._write(self._entries[:-1])
        self._entries = self._stood
        return last

    @contextmanager
    def together(self, *, anew: bool = False) -> Iterator[None]:
        """Write what is added inside in one go, or nothing of it when anything inside is refused.

        The log answers for all of it first; readings added together are repeats of one another.
        `anew`: what another wrote meanwhile is read before, instead of refused.
        """
        with self._alone():
            if anew:
                self._stood = self._entries = self._read()
            stood, self._holding = self._entries, True
            try:
                yield
                if self._entries != stood:
                    self.require_agreement()
                    self._write(self._entries)
            except BaseException:
                self._entries = stood
                raise
            finally:
                self._holding = False

    @abstractmethod
    def require_agreement(self) -> None:
        """Refuse entries that contradict each other."""

    def _mend(self, entry: int) -> str:
        """Say how one of its own entries, counted from 1, is put right: new, or in the file."""
        own = self.entries[entry - 1]
        place = next(at for at, each in enumerate(self._entries) if each is own)
        if place >= len(self._stood):
            return "give it anew as it was, or leave it out"
        if self.path is None:
            return PUT_RIGHT
        last = place == len(self._stood) - 1
        mended = "take it off with --undo" if last else "mend the value there"
        return f"entry {entry} is line {FIRST_LINE + place} of {self.path}: {mended}"

    def _stated(self) -> list[float]:
        return [e.repeatability_mm for e in self.entries if isinstance(e, MeasuredEntry)]

    def _add(self, *added: Entry) -> None:
        if len(self.drawn.blades) > 1:
            added = tuple(replace(each, blade=self.drawn.blade) for each in added)
        if self._holding:
            self._entries = (*self._entries, *added)
            return
        with self.together():
            self._entries = (*self._entries, *added)

    def _read(self) -> tuple[Entry, ...]:
        return () if self.path is None else tuple(read_log(self.path, self.drawn))

    def _alone(self) -> AbstractContextManager[None]:
        return nullcontext() if self.path is None else locked(self.path, "log")

    def _write(self, entries: tuple[Entry, ...]) -> None:
        if self.path is not None:
            if self._read() != self._stood:
                raise refusal("log", f"another has written {self.path} meanwhile: read it anew")
            write_log(self.path, self.drawn, entries)
        self._stood = entries
