"""Adds readings to a fitting log's file without end, to be killed in the midst of it.

Says each entry on stdout once it stands. With a count it ends by itself after so many.
"""

from __future__ import annotations

import itertools
import sys
from pathlib import Path

import backspring as bs
from backspring.fit.log_entry import MeasuredEntry
from backspring.fit.log_file import read_log, write_log
from backspring.whole_file import locked

design, path = bs.load(sys.argv[1]), Path(sys.argv[2])
counts = range(int(sys.argv[3])) if len(sys.argv) > 3 else itertools.count()
for _ in counts:
    with locked(path, "log"):
        entries = read_log(path, design)
        number = len(entries)
        entries.append(MeasuredEntry("loaded", number / 1e4, 0.3, 0.002))
        write_log(path, design, entries)
    print(number, flush=True)
