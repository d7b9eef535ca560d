"""The evidence that a clone keeps in its data: of all sources, each as it was last run."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

from backspring.evidence.folder import left_for_later
from backspring.evidence.result import Evidence, Left, evidence_of

NAME = "evidence.json"
_DIGITS = 2


def with_kept(found: Evidence, data: Path, tests: Path) -> Evidence:
    """Add the kept figures of sources that were not run now and still have their file."""
    kept = _kept(data / NAME)
    ran = {each.file for each in found.figures}
    old = [each for each in kept.figures if each.file not in ran and (tests / each.file).is_file()]
    sources = {each.file: kept.sources[each.file] for each in old} | dict(found.sources)
    figures = sorted([*found.figures, *old], key=lambda each: _place(each.file))
    held = {each.file for each in figures}
    not_run = (
        Left(file, "takes minutes and is not kept: ask for it with --only")
        for file in (f"oracle/{path.name}" for path in left_for_later(tests, ()))
        if file not in held
    )
    return Evidence(tuple(figures), dict(sorted(sources.items(), key=_by_place)), tuple(not_run))


def kept_text(document: dict[str, Any]) -> str:
    """Write a document with a line for each row, so that a change of one shows as one."""
    rows = [_rounded(row) for row in document["data"]["rows"]]
    marked = document | {"data": document["data"] | {"rows": ["ROWS"]}}
    lines = ",\n".join(f"  {json.dumps(row, allow_nan=False)}" for row in rows)
    return json.dumps(marked, indent=1).replace('   "ROWS"', lines) + "\n"


def _kept(path: Path) -> Evidence:
    if not path.is_file():
        return Evidence((), {})
    data = json.loads(path.read_text(encoding="utf-8"))["data"]
    names = {each["file"]: each["source"] for each in data["sources"]}
    return evidence_of(row | {"source": names[row["file"]]} for row in data["rows"])


def _place(file: str) -> tuple[bool, str]:
    """Put published sources first."""
    return not file.startswith("published/"), file


def _by_place(item: tuple[str, str]) -> tuple[bool, str]:
    return _place(item[0])


def _rounded(row: dict[str, Any]) -> dict[str, Any]:
    """Leave out digits that say nothing of how far apart two figures are."""
    return row | {
        key: float(f"{row[key]:.{_DIGITS}g}")
        for key in ("difference", "used")
        if row[key] is not None
    }
