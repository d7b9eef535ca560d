"""Figures of ours beside theirs, source by source."""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any, Literal

from backspring.report.result import Reported


@dataclass(frozen=True, slots=True)
class Held:
    """One figure: a case of a source, what we say, what they say and how far apart both may be.

    `ours` is none where what we say is not a number. `by_share` is whether the allowance was stated
    as a share of theirs.
    """

    file: str
    case: str
    unit: str
    ours: float | None
    theirs: float
    allowed: float
    by_share: bool

    @property
    def difference(self) -> float | None:
        """How far apart both are."""
        return None if self.ours is None else abs(self.ours - self.theirs)

    @property
    def within(self) -> bool:
        """Whether that is allowed."""
        return self.difference is not None and self.difference <= self.allowed

    @property
    def used(self) -> float | None:
        """Share of the allowance that is used; none where any difference is too much."""
        if self.difference is None or (self.difference > 0.0 and self.allowed == 0.0):
            return None
        return self.difference / self.allowed if self.difference > 0.0 else 0.0


@dataclass(frozen=True, slots=True)
class Left:
    """A source that was not run, or a test of one that broke off, and why."""

    file: str
    why: str


@dataclass(frozen=True, slots=True)
class Evidence(Reported):
    """The table, with the sources' names by their files."""

    figures: tuple[Held, ...]
    sources: Mapping[str, str]
    not_run: tuple[Left, ...] = ()
    broken: tuple[Left, ...] = ()
    _report_by = "evidence:evidence_report"
    _data_by = "evidence:evidence_data"

    @property
    def outside(self) -> tuple[Held, ...]:
        """Figures that are farther from theirs than allowed."""
        return tuple(each for each in self.figures if not each.within)

    @property
    def status(self) -> Literal["pass", "fail"]:
        """Whether all figures are within their allowance and no test broke off."""
        return "fail" if self.outside or self.broken or not self.figures else "pass"

    def of(self, file: str) -> tuple[Held, ...]:
        """Figures of one source."""
        return tuple(each for each in self.figures if each.file == file)


def source_name(file: str) -> str:
    """Name a source as `--only` takes it: its file, without what says when it is run."""
    stem = file.rpartition("/")[2].removesuffix(".py")
    return stem.removeprefix("test_").removeprefix("rows_").removeprefix("long_")


def evidence_of(rows: Iterable[Mapping[str, Any]]) -> Evidence:
    """Make the table out of what the tests wrote."""
    figures, sources, not_run, broken = [], {}, [], []
    for row in rows:
        if "failed" in row:
            broken.append(Left(row["failed"], row["why"]))
            continue
        sources[row["file"]] = row["source"]
        if "not_run" in row:
            not_run.append(Left(row["file"], row["not_run"]))
            continue
        figures.append(_held(row))
    return Evidence(tuple(figures), sources, tuple(not_run), tuple(broken))


def _held(row: Mapping[str, Any]) -> Held:
    ours = row["ours"]
    return Held(
        row["file"],
        row["case"],
        row["unit"],
        ours if ours is not None and math.isfinite(ours) else None,
        row["theirs"],
        row["allowed"],
        row["by_share"],
    )
