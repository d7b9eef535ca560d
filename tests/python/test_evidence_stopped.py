"""What is stopped while it collects evidence leaves nothing running."""

from __future__ import annotations

import os
import shutil
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from backspring.evidence.child import run_child

TESTS = Path(__file__).resolve().parents[1]
SLOW = '''"""A book."""
import subprocess
from pathlib import Path


def test_slow(agree) -> None:
    with subprocess.Popen(["sleep", "60"]) as solver:
        waiting = Path("{named}.new")
        waiting.write_text(str(solver.pid))
        waiting.rename("{named}")
'''


def test_a_signal_leaves_no_solver_running(tmp_path: Path) -> None:
    """A source whose program would run for a minute; the one who asks is told to stop."""
    tests, named = tmp_path / "tests", tmp_path / "solver"
    (tests / "published").mkdir(parents=True)
    for name in ("agreement.py", "conftest.py"):
        shutil.copy(TESTS / name, tests / name)
    shutil.copy(TESTS.parent / "pyproject.toml", tmp_path)
    (tests / "published" / "test_slow.py").write_text(SLOW.format(named=str(named)))
    words = [sys.executable, "-m", "backspring", "evidence", "--tests", str(tests)]
    with subprocess.Popen(words, stderr=subprocess.PIPE, stdout=subprocess.PIPE) as asking:
        while not named.exists() and asking.poll() is None:
            time.sleep(0.05)
        asking.terminate()
        said = asking.communicate(timeout=60.0)
    assert asking.returncode == 128 + signal.SIGTERM, said
    require_gone(int(named.read_text()))


def test_ctrl_c_ends_what_a_program_started(tmp_path: Path) -> None:
    named = tmp_path / "solver"

    def look() -> None:
        if named.exists() and named.read_text().strip():
            raise KeyboardInterrupt

    words = ["sh", "-c", f"sleep 60 & echo $! > {named}; wait"]
    with (tmp_path / "log").open("w") as log, pytest.raises(KeyboardInterrupt):
        run_child(words, tmp_path, log, look)
    require_gone(int(named.read_text()))


def require_gone(process: int) -> None:
    """Hold that a process has ended, or does so at once."""
    for _ in range(100):
        if _is_waited_for(process):
            return
        time.sleep(0.05)
    os.kill(process, signal.SIGKILL)
    pytest.fail("the solver went on alone")


def _is_waited_for(process: int) -> bool:
    """Whether it has ended, and only its number is left."""
    try:
        return Path(f"/proc/{process}/stat").read_text().rpartition(")")[2].split()[0] == "Z"
    except OSError:
        return True
