"""The file of a fitting log keeps what it was given through every mishap."""

from __future__ import annotations

import os
import random
import signal
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path

import pytest

import backspring as bs
from backspring.fit.log_file import GroundEntry, MeasuredEntry

HERON = bs.load(Path(__file__).resolve().parents[2] / "data" / "designs" / "heron.toml")
WRITER = Path(__file__).with_name("fit_log_writer.py")
KILLS = 200


def test_nothing_is_lost_when_the_writer_is_killed_two_hundred_times(tmp_path: Path) -> None:
    """SIGKILL at a random moment of writing; every entry the writer said stood must stand."""
    path = tmp_path / "heron.csv"
    rng, stood = random.Random(3), 0
    for _ in range(KILLS):
        with subprocess.Popen(
            [sys.executable, str(WRITER), str(path)], stdout=subprocess.PIPE, text=True
        ) as writer:
            assert writer.stdout is not None
            said = [int(writer.stdout.readline())]
            time.sleep(rng.uniform(0.0, 0.01))
            writer.send_signal(signal.SIGKILL)
            said += [int(line) for line in writer.stdout.read().splitlines() if line]
        entries = bs.FitLog(HERON, path).entries
        assert said[0] == stood
        assert len(entries) >= said[-1] + 1
        stood = len(entries)
    readings = [e.half_stop_mm for e in bs.FitLog(HERON, path).entries]
    assert readings == [number / 1e4 for number in range(stood)]
    assert {each.name for each in tmp_path.iterdir()} <= {"heron.csv", ".heron.csv.part"}


def test_what_stood_is_kept_and_read_again(tmp_path: Path) -> None:
    path = tmp_path / "log.csv"
    bs.FitLog(HERON, path).measure(half_stop="9 thou", closed="17 thou", state="unloaded")
    bs.FitLog(HERON, path).grind("half_stop", "0.05 mm")
    assert bs.FitLog(HERON, path).entries == (
        MeasuredEntry("unloaded", pytest.approx(0.2286), pytest.approx(0.4318), 0.002),
        GroundEntry("half_stop", 0.05),
    )


def test_entries_given_together_stand_together_or_not_at_all(tmp_path: Path) -> None:
    log = bs.FitLog(HERON, tmp_path / "log.csv")
    with pytest.raises(bs.InvalidInput), log.together():
        log.grind("closed", 0.1)
        log.measure(half_stop=0.1, closed="soon", state="loaded")
    assert log.entries == ()
    assert not (tmp_path / "log.csv").exists()


def test_a_failed_write_leaves_file_and_log_as_they_were(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    log = bs.FitLog(HERON, tmp_path / "log.csv")
    log.grind("closed", 0.1)

    def full(descriptor: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(bs.InvalidInput, match="no space left on device"):
        log.grind("closed", 0.2)
    monkeypatch.undo()
    assert len(log.entries) == len(bs.FitLog(HERON, tmp_path / "log.csv").entries) == 1


GOOD = """backspring fitting log,1,Heron
what,state,half_stop_mm,closed_mm,repeatability_mm,face,depth_mm
measured,loaded,0.3,0.31,0.002,,
ground,,,,,half_stop,0.1
end,2
"""


def cut(line: str, new: str) -> Callable[[str], str]:
    return lambda text: text.replace(line, new, 1)


DAMAGED: list[tuple[str, Callable[[str], str], str]] = [
    ("empty", lambda text: "", ':1: not a fitting log: must begin with "backspring fitting log"'),
    ("another file", cut("backspring", "x"), ':1: not a fitting log: must begin with "backspring'),
    ("later format", cut("log,1", "log,2"), ":1: this version reads format 1, got 2"),
    ("another knife", cut("Heron", "Wren"), ':1: this log is of the design "Wren", not "Heron"'),
    ("heads changed", cut("what,", "which,"), ":2: damaged: the columns' names are not as written"),
    ("end cut", cut("end,2\n", ""), ":4: damaged: the file ends here, its last line is missing"),
    ("line lost", cut("ground,,,,,half_stop,0.1\n", ""), ":4: damaged: 1 entries stand before"),
    ("more after the end", lambda text: text + "end,2\n", ":5: damaged: 2 entries stand before"),
    ("cut in a line", cut(",0.31,0.002,,\n", "\n"), ":3: damaged: 7 columns expected, got 3"),
    ("no number", cut("0.31", "0.3l"), ':3: damaged: closed_mm must be a number, got "0.3l"'),
    ("not finite", cut("0.31", "inf"), ':3: damaged: closed_mm must be a number, got "inf"'),
    ("no half-stop", cut("0.3,", ","), ":3: damaged: a half-stop reading expected"),
    ("unknown entry", cut("half_stop,0", "nose,0"), ":4: damaged: no entry of a fitting log"),
    ("binary", lambda text: text + "\x00\ud800", ": not a fitting log: no text in UTF-8"),
]


@pytest.mark.parametrize(
    ("spoil", "message"), [row[1:] for row in DAMAGED], ids=[row[0] for row in DAMAGED]
)
def test_a_damaged_log_is_refused_with_its_line_and_left_alone(
    spoil: Callable[[str], str], message: str, tmp_path: Path
) -> None:
    path = tmp_path / "log.csv"
    content = spoil(GOOD).encode(errors="surrogatepass")
    path.write_bytes(content)
    with pytest.raises(bs.InvalidInput) as refused:
        bs.FitLog(HERON, path)
    assert str(refused.value).startswith(str(path) + message)
    assert path.read_bytes() == content


def test_the_text_that_is_spoiled_is_good(tmp_path: Path) -> None:
    path = tmp_path / "log.csv"
    path.write_text(GOOD)
    assert len(bs.FitLog(HERON, path).entries) == 2


def test_a_log_that_another_changed_meanwhile_is_not_written_over(tmp_path: Path) -> None:
    path = tmp_path / "log.csv"
    mine, theirs = bs.FitLog(HERON, path), bs.FitLog(HERON, path)
    theirs.grind("closed", 0.1)
    with pytest.raises(bs.InvalidInput, match="another has written .* meanwhile: read it anew"):
        mine.grind("half_stop", 0.1)
    assert mine.entries == ()
    assert bs.FitLog(HERON, path).entries == theirs.entries == (GroundEntry("closed", 0.1),)
