"""The kept evidence is of every source, and of what the tests hold now."""

from __future__ import annotations

import ast
import json
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

import agreement

TESTS = Path(__file__).resolve().parents[1]
KEPT = json.loads((TESTS.parent / "data" / "evidence.json").read_text(encoding="utf-8"))
ROWS, SOURCES = KEPT["data"]["rows"], KEPT["data"]["sources"]
NOT_RUN = {each["file"] for each in KEPT["data"]["not_run"]}
PUBLISHED = sorted(TESTS.glob("published/test_*.py"))
FILES = sorted([*TESTS.glob("published/*.py"), *TESTS.glob("oracle/*.py")])
WITH_ROWS = [path for path in FILES if re.search(r"\bagree\(", path.read_text())]


def cases_in(path: Path) -> Iterator[re.Pattern[str]]:
    """What a file's calls of `agree` name their cases, places in braces standing for anything."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if (
            isinstance(node, ast.Call)
            and isinstance(node.func, ast.Name)
            and node.func.id == "agree"
        ):
            yield re.compile(_pattern(node.args[0]))


def _pattern(case: ast.expr) -> str:
    if isinstance(case, ast.Constant):
        return re.escape(str(case.value))
    if isinstance(case, ast.JoinedStr):
        return "".join(_pattern(part) for part in case.values)
    return ".*"


def full_case(row: dict[str, Any]) -> str:
    return f"{row['case']} [{row['unit']}]" if row["unit"] else row["case"]


@pytest.mark.parametrize("path", PUBLISHED, ids=lambda path: path.stem)
def test_every_published_source_has_rows_with_its_name(path: Path) -> None:
    file = f"published/{path.name}"
    (source,) = (each for each in SOURCES if each["file"] == file)
    assert source["figures"] == sum(row["file"] == file for row in ROWS) > 0
    first = " ".join(ast.get_docstring(ast.parse(path.read_text())).split("\n\n")[0].split())  # type: ignore[union-attr]
    assert source["source"] == first.removesuffix(".")


@pytest.mark.parametrize("path", WITH_ROWS, ids=lambda path: path.stem)
def test_what_is_kept_is_what_is_held(path: Path) -> None:
    """No row of a case that is gone, no case without a row."""
    file = f"{path.parent.name}/{path.name}"
    rows, cases = [full_case(row) for row in ROWS if row["file"] == file], [*cases_in(path)]
    assert len(rows) == len(set(rows))
    assert [row for row in rows if not any(case.fullmatch(row) for case in cases)] == []
    if file in NOT_RUN:
        assert path.name.startswith("long_") and not rows
    else:
        assert [case.pattern for case in cases if not any(map(case.fullmatch, rows))] == []


def test_all_that_is_kept_is_within_what_is_allowed() -> None:
    assert KEPT["data"]["outside"] == 0 and KEPT["data"]["figures"] == len(ROWS) > 800
    assert all(row["within"] and row["difference"] <= row["allowed"] for row in ROWS)
    assert not KEPT["data"]["broken"]


@pytest.mark.parametrize(
    ("ours", "theirs", "said"),
    [(0.00536, 0.005357, "is not"), (0.0053575, 0.0053575, "the row in evidence.json is another")],
)
def test_a_figure_is_held_to_theirs_and_to_what_is_kept(
    ours: float, theirs: float, said: str
) -> None:
    agree = agreement.Agree("published/test_bansal.py", None)
    case = "example 13.1, slope at the tip [rad]"
    agree(case, 0.005357142857, 0.005357, abs=5e-7)
    with pytest.raises(AssertionError, match=said):
        agree(case, ours, theirs, abs=5e-7)
