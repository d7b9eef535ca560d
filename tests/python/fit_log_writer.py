"""Adds readings to a fitting log's file without end, to be killed in the midst of it.

Says each entry on stdout once it stands.
"""

from __future__ import annotations

import itertools
import sys
from pathlib import Path

from backspring.fit.log_file import MeasuredEntry, read_log, write_log

path = Path(sys.argv[1])
entries = read_log(path, "Heron", half_stop=True)
for number in itertools.count(len(entries)):
    entries.append(MeasuredEntry("loaded", number / 1e4, 0.3, 0.002))
    write_log(path, "Heron", entries)
    print(number, flush=True)
