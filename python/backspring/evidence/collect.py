"""Runs the tests of a clone and collects the figures that they hold."""

from __future__ import annotations

import importlib.util
import json
import sys
import tempfile
from collections.abc import Callable, Sequence
from pathlib import Path

from backspring.evidence.child import run_child
from backspring.evidence.result import Evidence, evidence_of
from backspring.faults import Fault, invalid

# What pytest ends with when tests ran, whether or not they passed, and when none was left to run.
_RAN = (0, 1, 5)


def collect(
    tests: Path,
    files: Sequence[Path],
    joints: int | None = None,
    tell: Callable[[int], None] | None = None,
) -> Evidence:
    """Run the files and make the table; `tell` is told now and then how many figures there are.

    Raises InvalidInput where pytest is missing or does not start.
    """
    if importlib.util.find_spec("pytest") is None:
        text = 'needs pytest: pip install "backspring[test]"'
        raise invalid([Fault("missing-package", "--tests", text)])
    with tempfile.TemporaryDirectory(prefix="backspring-evidence-") as folder:
        rows = Path(folder) / "rows.jsonl"
        rows.touch()

        def look() -> None:
            if tell is not None:
                tell(rows.read_bytes().count(b"\n"))

        words = [sys.executable, "-m", "pytest", "-q"]
        words += ["--continue-on-collection-errors", "--evidence", str(rows)]
        words += ["--joints", str(joints)] * (joints is not None)
        with (Path(folder) / "log").open("w+", encoding="utf-8") as log:
            code = run_child([*words, *map(str, files)], tests.parent, log, look)
            log.seek(0)
            said = log.read()
        found = evidence_of(map(json.loads, rows.read_text(encoding="utf-8").splitlines()))
    told = found.figures or found.broken or found.not_run
    if not told or (code not in _RAN and not found.broken):
        last = [line for line in said.splitlines() if line.strip()][-3:]
        raise invalid([Fault("bad-value", "--tests", f"pytest stopped: {' / '.join(last)}")])
    return found
