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
from backspring.fit.log_entry import GroundEntry, MeasuredEntry

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"
HERON_FILE = DESIGNS / "heron.toml"
HERON = bs.load(HERON_FILE)
WRITER = [sys.executable, str(Path(__file__).with_name("fit_log_writer.py")), str(HERON_FILE)]
KILLS = 20


def test_nothing_is_lost_when_the_writer_is_killed(tmp_path: Path) -> None:
    """SIGKILL at a random moment of writing; every entry the writer said stood must stand."""
    path = tmp_path / "heron.csv"
    rng, stood = random.Random(3), 0
    for _ in range(KILLS):
        with subprocess.Popen([*WRITER, str(path)], stdout=subprocess.PIPE, text=True) as writer:
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
    # The next writer clears away what the killed ones left.
    subprocess.run([*WRITER, str(path), "1"], check=True, stdout=subprocess.DEVNULL)
    assert [each.name for each in tmp_path.iterdir()] == ["heron.csv"]


def test_two_writers_at_once_lose_nothing_that_they_said_stood(tmp_path: Path) -> None:
    path, count = tmp_path / "heron.csv", 150
    writers = [
        subprocess.Popen([*WRITER, str(path), str(count)], stdout=subprocess.PIPE, text=True)
        for _ in range(2)
    ]
    said = sorted(int(line) for each in writers for line in each.communicate()[0].splitlines())
    assert [each.returncode for each in writers] == [0, 0]
    assert said == list(range(2 * count))
    readings = [e.half_stop_mm for e in bs.FitLog(HERON, path).entries]
    assert readings == [number / 1e4 for number in said]


def test_two_commands_at_once_both_stand(tmp_path: Path) -> None:
    path = tmp_path / "heron.csv"
    read = ["--half-stop", "0.3 mm", "--closed", "0.31 mm", "--state", "loaded"]
    command = [sys.executable, "-m", "backspring", "fit", str(HERON_FILE), "--log", str(path)]
    for round_number in range(1, 4):
        started = [subprocess.Popen([*command, *read], stdout=subprocess.DEVNULL) for _ in range(2)]
        assert [each.wait() for each in started] == [0, 0]
        assert len(bs.FitLog(HERON, path).entries) == 2 * round_number


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


class Killed(BaseException):
    """Stands for a writer that is no more: nothing after it runs but what unwinds."""


@pytest.mark.parametrize("kind", [OSError, Killed])
@pytest.mark.parametrize("name", ["write", "fsync", "replace"])
def test_a_write_that_fails_anywhere_leaves_file_and_log_as_they_were(
    name: str, kind: type[BaseException], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "log.csv"
    log = bs.FitLog(HERON, path)
    log.grind("closed", 0.1)
    content = path.read_bytes()

    def fail(*_: object) -> None:
        raise kind(28, "No space left on device")

    monkeypatch.setattr(os, name, fail)
    refusal = bs.InvalidInput if kind is OSError else Killed
    with pytest.raises(refusal, match="(?i)no space left on device"):
        log.grind("closed", 0.2)
    monkeypatch.undo()
    assert path.read_bytes() == content
    assert log.entries == bs.FitLog(HERON, path).entries == (GroundEntry("closed", 0.1),)
    log.grind("closed", 0.2)
    assert bs.FitLog(HERON, path).entries == log.entries
    assert [each.name for each in tmp_path.iterdir()] == ["log.csv"]


GOOD = f"""backspring fitting log,2,Heron,{HERON.shape_sha256}
what,state,half_stop_mm,closed_mm,repeatability_mm,face,depth_mm
measured,loaded,0.3,0.31,0.002,,
ground,,,,,half_stop,0.1
end,2
"""
BY_NAME = GOOD.replace(f"log,2,Heron,{HERON.shape_sha256}", "log,1,Heron")


def cut(line: str, new: str) -> Callable[[str], str]:
    return lambda text: text.replace(line, new, 1)


DAMAGED: list[tuple[str, Callable[[str], str], str]] = [
    ("empty", lambda text: "", ':1: not a fitting log: must begin with "backspring fitting log"'),
    ("another file", cut("backspring", "x"), ':1: not a fitting log: must begin with "backspring'),
    ("later format", cut("log,2", "log,3"), ":1: this version reads formats 1 and 2, got 3"),
    (
        "no fingerprint",
        lambda _: cut("log,1", "log,2")(BY_NAME),
        ":1: damaged: format, name and fingerprint of",
    ),
    ("another knife", lambda _: cut("Heron", "Wren")(BY_NAME), ':1: this log is of the design "Wr'),
    ("another shape", cut(HERON.shape_sha256, "0" * 64), ":1: this log is of the design"),
    ("heads changed", cut("what,", "which,"), ":2: damaged: the columns' names must be what,state"),
    ("end cut", cut("end,2\n", ""), ":4: damaged: the file ends here, its last line is missing"),
    ("line lost", cut("ground,,,,,half_stop,0.1\n", ""), ":4: damaged: 1 entries stand before"),
    ("more after the end", lambda text: text + "end,2\n", ":5: damaged: 2 entries stand before"),
    ("cut in a line", cut(",0.31,0.002,,\n", "\n"), ":3: damaged: 7 columns expected, got 3"),
    ("no number", cut("0.31", "0.3l"), ':3: damaged: closed_mm must be a number, got "0.3l"'),
    ("not finite", cut("0.31", "inf"), ':3: damaged: closed_mm must be a number, got "inf"'),
    ("far reading", cut("0.31", "31"), ":3: damaged: closed_mm must be from -3 mm to 3 mm, got 31"),
    ("far depth", cut("p,0.1", "p,-0.1"), ":4: damaged: depth_mm must be from 0 mm to 3 mm, got -"),
    (
        "far spread",
        cut("0.002", "0.2001"),
        ":3: damaged: repeatability_mm must be from 0 mm to 0.2",
    ),
    ("no half-stop", cut("0.3,", ","), ":3: damaged: a half-stop reading expected"),
    ("unknown entry", cut("half_stop,0", "nose,0"), ":4: damaged: no entry of a log of this tang"),
    ("no such face", cut("half_stop,0", "kick,0"), ":4: damaged: no entry of a log of this tang"),
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


@pytest.mark.parametrize("text", [GOOD, BY_NAME], ids=["by shape", "by name"])
def test_logs_of_both_formats_are_read_and_go_on(text: str, tmp_path: Path) -> None:
    path = tmp_path / "log.csv"
    path.write_text(text)
    log = bs.FitLog(HERON, path)
    assert len(log.entries) == 2
    log.grind("closed", 0.1)
    assert path.read_text().splitlines()[0] == GOOD.splitlines()[0]
    assert bs.FitLog(HERON, path).entries == log.entries


def test_a_log_goes_with_the_shape_and_not_with_the_name(tmp_path: Path) -> None:
    path = tmp_path / "log.csv"
    path.write_text(GOOD)
    renamed = HERON.replace(name="Heron 2", **{"targets.yield_margin": 1.3})
    assert len(bs.FitLog(renamed, path).entries) == 2
    changed = HERON.replace(**{"tang.pivot": 32.5})
    with pytest.raises(bs.InvalidInput) as refused:
        bs.FitLog(changed, path)
    for each in (HERON, changed):
        assert f'"Heron" with the shape {each.shape_sha256[:12]}' in str(refused.value)
    assert path.read_text() == GOOD


@pytest.mark.parametrize(
    ("lost", "line"), [("end,2\n", "end,2"), ("ground,,,,,half_stop,0.1\n", "end,1")]
)
def test_a_log_mended_as_told_is_read(lost: str, line: str, tmp_path: Path) -> None:
    path = tmp_path / "log.csv"
    path.write_text(GOOD.replace(lost, ""))
    with pytest.raises(bs.InvalidInput, match=f'"{line}"'):
        bs.FitLog(HERON, path)
    kept = GOOD.replace(lost, "").removesuffix("end,2\n")
    path.write_text(kept + line + "\n")
    assert len(bs.FitLog(HERON, path).entries) == int(line[-1])


def test_the_last_entry_can_be_taken_off(tmp_path: Path) -> None:
    path = tmp_path / "log.csv"
    path.write_text(GOOD)
    log = bs.FitLog(HERON, path)
    assert log.undo() == GroundEntry("half_stop", 0.1)
    assert log.undo() == MeasuredEntry("loaded", 0.3, 0.31, 0.002)
    assert bs.FitLog(HERON, path).entries == log.entries == ()
    with pytest.raises(bs.InvalidInput, match="log: holds no entry to take off"):
        log.undo()


def test_a_log_that_another_changed_meanwhile_is_not_written_over(tmp_path: Path) -> None:
    path = tmp_path / "log.csv"
    mine, theirs = bs.FitLog(HERON, path), bs.FitLog(HERON, path)
    theirs.grind("closed", 0.1)
    with pytest.raises(bs.InvalidInput, match="another has written .* meanwhile: read it anew"):
        mine.grind("half_stop", 0.1)
    assert mine.entries == ()
    assert bs.FitLog(HERON, path).entries == theirs.entries == (GroundEntry("closed", 0.1),)
