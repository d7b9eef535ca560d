"""Time and memory that hostile drawings take before they are refused, a process each.

    python tests/oracle/hostile_drawings.py

Prints a line a file: its size, processor seconds, and how much more memory its refusal took at most
than that of a file that is not there. Exits with 1 where one takes over 10 s, over 600 MB or is not
refused.
"""

from __future__ import annotations

import subprocess
import sys
import tempfile
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1] / "python"))

from test_outline_hostile import HOSTILE

MOST_S, MOST_MB = 10.0, 600.0
# Prints exit code, processor seconds and the most memory of a refusal. What getrusage tells of
# memory begins with that of the process which started this one.
_ASK = """
import re, sys, time
from pathlib import Path
from backspring.cli import main
code = main(["outline", sys.argv[1]])
most_kb = re.search(r"VmHWM:\\s+(\\d+)", Path("/proc/self/status").read_text())[1]
print("\\n", code, time.process_time(), int(most_kb) / 1024)
"""


def refused(path: Path) -> tuple[int, float, float]:
    """Return the exit code, processor seconds and the most memory [MB] of reading a file."""
    done = subprocess.run([sys.executable, "-c", _ASK, str(path)], capture_output=True, text=True)
    code, seconds, memory = done.stdout.split()[-3:]
    return int(code), float(seconds), float(memory)


def main() -> int:
    """Ask of every file, and print its line."""
    bad = 0
    with tempfile.TemporaryDirectory() as folder:
        bare: dict[str, float] = {}
        print(f"{'file':16}{'bytes':>12}{'CPU s':>8}{'MB more':>9}")
        for name, content, _ in HOSTILE:
            path = Path(folder) / name
            none = path.with_name("none" + path.suffix)
            if path.suffix not in bare:
                bare[path.suffix] = refused(none)[2]
            path.write_bytes(content())
            code, seconds, memory = refused(path)
            more = memory - bare[path.suffix]
            wrong = code != 2 or seconds > MOST_S or more > MOST_MB
            bad += wrong
            size = path.stat().st_size
            print(f"{name:16}{size:12}{seconds:8.2f}{more:9.1f}{'  !' * wrong}", flush=True)
    return int(bad > 0)


if __name__ == "__main__":
    raise SystemExit(main())
