"""A figure of ours held to one of theirs: what a test asserts here is a row of the evidence.

The fixture `agree` fails a test as an assertion would, and holds the figure to the row that is kept
in data/evidence.json. `backspring evidence` collects the rows with the option --evidence: then only
tests that have any are run, and a figure outside its allowance is told and not raised, so that the
others are still seen. The first paragraph of a file's docstring is the source of its rows.
"""

from __future__ import annotations

import json
import math
import shutil
from functools import cache
from pathlib import Path
from types import ModuleType
from typing import Any

import pytest

KEPT = Path(__file__).parents[1] / "data" / "evidence.json"
# By how much of its allowance a figure may move before the kept file is stale; rounding besides.
MOVED, ROUNDING = 0.05, 1e-9
Row = dict[str, Any]


class Agree:
    """Holds the figures of one test to theirs; its rows are `told` where they are collected."""

    def __init__(self, file: str, told: list[Row] | None) -> None:
        self._file, self._told = file, told

    def __call__(
        self, case: str, ours: float, theirs: float, *, rel: float = 0.0, abs: float = 0.0
    ) -> None:
        """Hold one figure; its unit stands in square brackets at the end of the case."""
        row = _row(case, float(ours), float(theirs), rel * math.fabs(theirs), abs)
        if self._told is not None:
            self._told.append(row)
            return
        # Not true either for what is not a number.
        assert row["difference"] <= row["allowed"], f"{case}: {ours!r} is not {theirs!r}: {row}"
        assert not _stale(self._file, row), (
            f"{case}: the row in {KEPT.name} is another: "
            f"backspring evidence --keep --only {Path(self._file).stem.removeprefix('test_')}"
        )


def _row(case: str, ours: float, theirs: float, of_share: float, amount: float) -> Row:
    name, unit = case, ""
    if case.endswith("]"):
        name, unit = case[:-1].rsplit(" [", 1)
    return {
        "case": name,
        "unit": unit,
        "ours": ours,
        "theirs": theirs,
        "difference": math.fabs(ours - theirs),
        "allowed": max(of_share, amount),
        "by_share": of_share > amount,
    }


@cache
def _kept() -> dict[tuple[str, str], Row]:
    rows = json.loads(KEPT.read_text(encoding="utf-8"))["data"]["rows"]
    return {(row["file"], row["case"]): row for row in rows}


def _stale(file: str, row: Row) -> bool:
    kept = _kept().get((file, row["case"]))
    about = max(MOVED * row["allowed"], ROUNDING * math.fabs(row["theirs"]))
    return kept is None or any(
        math.fabs(row[key] - kept[key]) > about for key in ("ours", "theirs", "allowed")
    )


def source_of(module: ModuleType) -> dict[str, str]:
    """Name the file, and the first paragraph of its docstring."""
    assert module.__doc__ and module.__file__
    path = Path(module.__file__)
    title = " ".join(module.__doc__.split("\n\n")[0].split())
    return {"file": f"{path.parent.name}/{path.name}", "source": title.removesuffix(".")}


@pytest.fixture
def agree(request: pytest.FixtureRequest) -> Agree:
    """Hold figures of ours to theirs."""
    source, told = source_of(request.module), None
    if request.config.getoption("--evidence"):
        told = []
        request.node.user_properties.append(("evidence", (source, told)))
    return Agree(source["file"], told)


class Collector:
    """Runs the tests that have rows and writes them, a line each, as they come."""

    def __init__(self, path: Path) -> None:
        self._path = path

    def _write(self, *rows: Row) -> None:
        with self._path.open("a", encoding="utf-8") as file:
            file.writelines(json.dumps(row) + "\n" for row in rows)

    def pytest_collection_modifyitems(self, config: Any, items: list[Any]) -> None:
        chosen, missing = [], {}
        for item in items:
            if "agree" not in getattr(item, "fixturenames", ()):
                continue
            if getattr(item.module, "NEEDS_CALCULIX", False) and not shutil.which("ccx"):
                source = source_of(item.module)
                missing[source["file"]] = source | {"not_run": "needs CalculiX (the command ccx)"}
            else:
                chosen.append(item)
        self._write(*missing.values())
        config.hook.pytest_deselected(items=[each for each in items if each not in chosen])
        items[:] = chosen

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        if report.failed:
            self._write({"failed": report.nodeid, "why": _why(report)})
        if report.when == "teardown":
            for name, (source, rows) in dict(report.user_properties).items():
                if name == "evidence":
                    self._write(*(source | row for row in rows))

    def pytest_collectreport(self, report: pytest.CollectReport) -> None:
        if report.failed:
            self._write({"failed": report.nodeid, "why": _why(report)})


def _why(report: pytest.CollectReport | pytest.TestReport) -> str:
    """Say what went wrong in a line: the first that pytest marks as the error."""
    lines = [line for line in report.longreprtext.splitlines() if line.strip()]
    marked = [line.removeprefix("E ").strip() for line in lines if line.startswith("E ")]
    return (marked or lines[-1:] or [""])[0]
