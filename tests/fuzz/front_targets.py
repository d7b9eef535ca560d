"""What the front does with bytes of anyone: an answer, or a clear error of its own.

Each target takes bytes and returns; anything else that leaves it is a finding.
"""

from __future__ import annotations

import json
import math
import tempfile
import time
from collections.abc import Callable, Iterator
from functools import cache
from pathlib import Path
from typing import Any, get_args

import backspring as bs
from backspring.design.load import load_content
from backspring.errors import Error
from backspring.fit.log_file import read_log, write_log
from backspring.outline.reading import read_outline
from backspring.unit_table import KINDS
from backspring.units import Kind, System, parse

REPO = Path(__file__).resolve().parents[2]
CORPUS = Path(__file__).resolve().parent / "corpus"
MOST_S = 1.0
MOST_CHARACTERS = 12_000
_NUMBERS = {"spring.steel": '"O1"', "spring.hardness": '"45 HRC"', "spring.width": '"2.3 mm"'}


def answered(run: Callable[[], None], most_s: float = MOST_S) -> None:
    """Let only the library's own errors pass, of a length that one reads, in bounded time.

    The clock on the wall costs nothing to read but counts what other programs take. Where it says
    too much, all is done again under the processor's own clock.
    """
    if _took(run, time.perf_counter) < most_s:
        return
    assert (took := _took(run, time.process_time)) < most_s, f"took {took:.1f} s"


def _took(run: Callable[[], None], clock: Callable[[], float]) -> float:
    begun = clock()
    try:
        run()
    except Error as error:
        assert 0 < len(str(error)) < MOST_CHARACTERS, len(str(error))
    return clock() - begun


def design(data: bytes) -> None:
    """Load a design file; one that can be read is checked and written as JSON."""
    answered(lambda: _design(data))


def _design(data: bytes) -> None:
    loaded = load_content(data, "fuzzed.toml")
    assert load_again(loaded) == loaded
    # Many stations cost the whole back their number each; a design has dozens.
    if len(data) < 4000:
        json.dumps(bs.check(loaded).to_dict(), allow_nan=False)


def load_again(loaded: bs.Design) -> bs.Design:
    """Make a design of its own plain content."""
    return bs.Design(**loaded.to_dict()).replace(units=loaded.units)


def unit(data: bytes) -> None:
    """Read a value with its unit; the first byte says as which kind, and in which system."""
    kinds = _kinds()
    which = data[0] if data else 0
    system: System = "in" if which & 128 else "mm"
    text = data[1:].decode("utf-8", "replace")
    answered(lambda: _unit(text, kinds[which % len(kinds)], system))


def _unit(text: str, kind: Kind, system: System) -> None:
    assert math.isfinite(parse(text, kind, system))


@cache
def _kinds() -> tuple[Kind, ...]:
    return tuple(sorted(set(KINDS.values()) & set(get_args(Kind)) or set(KINDS.values())))


def dxf(data: bytes) -> None:
    """Read a drawing of the one kind."""
    _outline(data, ".dxf")


def svg(data: bytes) -> None:
    """Read a drawing of the other kind."""
    _outline(data, ".svg")


def _outline(data: bytes, kind: str) -> None:
    path = _scratch() / f"fuzzed{kind}"
    path.write_bytes(data)
    answered(lambda: _read_drawing(path), 10.0)


def _read_drawing(path: Path) -> None:
    read = read_outline(path, units="mm", values=_NUMBERS)
    load_content(read.text.encode(), "read.toml")


def log(data: bytes) -> None:
    """Read a log; one that can be read is written again and reads the same."""
    path = _scratch() / "fuzzed.csv"
    path.write_bytes(data)
    answered(lambda: _log(path))


def _log(path: Path) -> None:
    again = path.with_name("again.csv")
    entries = read_log(path, heron())
    write_log(again, heron(), entries)
    assert read_log(again, heron()) == entries


@cache
def heron() -> bs.Design:
    """Return the design whose log is read."""
    return bs.load(REPO / "data" / "designs" / "heron.toml")


@cache
def _holder() -> tempfile.TemporaryDirectory[str]:
    return tempfile.TemporaryDirectory(dir="/dev/shm" if Path("/dev/shm").is_dir() else None)


@cache
def _scratch() -> Path:
    return Path(_holder().name)


TARGETS: dict[str, Callable[[bytes], None]] = {
    "front_design": design,
    "front_unit": unit,
    "front_dxf": dxf,
    "front_svg": svg,
    "front_log": log,
}


def replay(name: str) -> Iterator[tuple[str, Callable[[], Any]]]:
    """Every kept input of a target, with what runs it."""
    for path in sorted((CORPUS / name).iterdir()):
        yield path.name, lambda path=path: TARGETS[name](path.read_bytes())  # type: ignore[misc]
