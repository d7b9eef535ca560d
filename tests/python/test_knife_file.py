"""The file of a fitting log keeps what it was given through every mishap."""

from __future__ import annotations

import os
import random
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

import backspring as bs
from backspring.fit.log_entry import FigureEntry, GroundEntry, MeasuredEntry
from backspring.fit.log_file import write_log
from knife_texts import BY_NAME, GOOD, LONG, OLD

DESIGNS = Path(__file__).resolve().parents[2] / "data" / "designs"
HERON_FILE = DESIGNS / "heron.toml"
HERON = bs.load(HERON_FILE)
WRITER = [sys.executable, str(Path(__file__).with_name("knife_writer.py")), str(HERON_FILE)]
KILLS = 20


def test_a_log_that_has_no_end_is_refused() -> None:
    with pytest.raises(bs.InvalidInput, match="larger than 1 MB: this is no fitting log"):
        bs.Knife(HERON, "/dev/zero")


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
        entries = bs.Knife(HERON, path).entries
        assert said[0] == stood
        assert len(entries) >= said[-1] + 1
        stood = len(entries)
    readings = [e.half_stop_mm for e in bs.Knife(HERON, path).entries]
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
    readings = [e.half_stop_mm for e in bs.Knife(HERON, path).entries]
    assert readings == [number / 1e4 for number in said]


def test_two_commands_at_once_both_stand(tmp_path: Path) -> None:
    path = tmp_path / "heron.csv"
    read = ["--half-stop", "0.3 mm", "--closed", "0.31 mm", "--state", "loaded"]
    command = [sys.executable, "-m", "backspring", "fit", str(HERON_FILE), "--log", str(path)]
    for round_number in range(1, 4):
        started = [subprocess.Popen([*command, *read], stdout=subprocess.DEVNULL) for _ in range(2)]
        assert [each.wait() for each in started] == [0, 0]
        assert len(bs.Knife(HERON, path).entries) == 2 * round_number


def test_what_stood_is_kept_and_read_again(tmp_path: Path) -> None:
    path = tmp_path / "log.csv"
    bs.Knife(HERON, path).measure(half_stop="9 thou", closed="17 thou", state="unloaded")
    bs.Knife(HERON, path).ground("half_stop", "0.05 mm")
    assert bs.Knife(HERON, path).entries == (
        MeasuredEntry("unloaded", pytest.approx(0.2286), pytest.approx(0.4318), 0.004),
        GroundEntry("half_stop", 0.05),
    )


def test_entries_given_together_stand_together_or_not_at_all(tmp_path: Path) -> None:
    log = bs.Knife(HERON, tmp_path / "log.csv")
    with pytest.raises(bs.InvalidInput), log.together():
        log.ground("closed", 0.1)
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
    log = bs.Knife(HERON, path)
    log.ground("closed", 0.1)
    content = path.read_bytes()

    def fail(*_: object) -> None:
        raise kind(28, "No space left on device")

    monkeypatch.setattr(os, name, fail)
    refusal = bs.InvalidInput if kind is OSError else Killed
    with pytest.raises(refusal, match="(?i)no space left on device"):
        log.ground("closed", 0.2)
    monkeypatch.undo()
    assert path.read_bytes() == content
    assert log.entries == bs.Knife(HERON, path).entries == (GroundEntry("closed", 0.1),)
    log.ground("closed", 0.2)
    assert bs.Knife(HERON, path).entries == log.entries
    assert [each.name for each in tmp_path.iterdir()] == ["log.csv"]


@pytest.mark.parametrize("text", [GOOD, OLD, BY_NAME], ids=["3", "2", "1"])
def test_logs_of_every_format_are_read_and_go_on(text: str, tmp_path: Path) -> None:
    path = tmp_path / "log.csv"
    path.write_text(text)
    log = bs.Knife(HERON, path)
    assert len(log.entries) == 2
    log.ground("closed", 0.1)
    assert path.read_text().splitlines()[0] == GOOD.splitlines()[0]
    assert bs.Knife(HERON, path).entries == log.entries


def test_every_kind_of_entry_is_read_as_it_was_written(tmp_path: Path) -> None:
    path = tmp_path / "log.csv"
    path.write_text(LONG)
    knife = bs.Knife(HERON, path)
    assert knife.entries[2:] == (
        GroundEntry("half_stop", None),
        GroundEntry("back", None, -30.0, 36.5),
        FigureEntry("moved_mm", 0.3, 32.0, 19.6),
        FigureEntry("thickness_mm", 3.2, 5.0),
        FigureEntry("pull_n", 15.0),
    )
    write_log(path, HERON, knife.entries)
    assert path.read_text() == LONG


def test_a_log_goes_with_the_shape_and_not_with_the_name(tmp_path: Path) -> None:
    path = tmp_path / "log.csv"
    path.write_text(GOOD)
    renamed = HERON.replace(name="Heron 2", **{"targets.yield_margin": 1.3})
    assert len(bs.Knife(renamed, path).entries) == 2
    changed = HERON.replace(**{"tang.pivot": 32.5})
    another = HERON.replace(name="Wren", **{"tang.pivot": 32.5})
    for design, told in (
        (changed, r'spring, tang or fit of "Heron" is not as it was when this log was begun'),
        (another, r'this log is of the design "Heron", not of "Wren"'),
    ):
        with pytest.raises(bs.InvalidInput, match=told):
            bs.Knife(design, path)
    assert path.read_text() == GOOD


@pytest.mark.parametrize(
    ("lost", "line"), [("end,2\n", "end,2"), ("ground,,,,,half_stop,0.1,,,,,\n", "end,1")]
)
def test_a_log_mended_as_told_is_read(lost: str, line: str, tmp_path: Path) -> None:
    path = tmp_path / "log.csv"
    path.write_text(GOOD.replace(lost, ""))
    with pytest.raises(bs.InvalidInput, match=f'"{line}"'):
        bs.Knife(HERON, path)
    kept = GOOD.replace(lost, "").removesuffix("end,2\n")
    path.write_text(kept + line + "\n")
    assert len(bs.Knife(HERON, path).entries) == int(line[-1])


def test_the_last_entry_can_be_taken_off(tmp_path: Path) -> None:
    path = tmp_path / "log.csv"
    path.write_text(GOOD)
    log = bs.Knife(HERON, path)
    assert log.undo() == GroundEntry("half_stop", 0.1)
    assert log.undo() == MeasuredEntry("loaded", 0.3, 0.31, 0.002)
    assert bs.Knife(HERON, path).entries == log.entries == ()
    with pytest.raises(bs.InvalidInput, match="log: holds no entry to take off"):
        log.undo()


def test_a_log_that_another_changed_meanwhile_is_not_written_over(tmp_path: Path) -> None:
    path = tmp_path / "log.csv"
    mine, theirs = bs.Knife(HERON, path), bs.Knife(HERON, path)
    theirs.ground("closed", 0.1)
    with pytest.raises(bs.InvalidInput, match="another has written .* meanwhile: read it anew"):
        mine.ground("half_stop", 0.1)
    assert mine.entries == ()
    assert bs.Knife(HERON, path).entries == theirs.entries == (GroundEntry("closed", 0.1),)
