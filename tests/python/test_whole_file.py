"""A file is written whole or not at all, where it really is, and by one writer at a time."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

import backspring as bs
from backspring import whole_file
from backspring.whole_file import locked, replace_file

HERON = bs.load(Path(__file__).resolve().parents[2] / "data" / "designs" / "heron.toml")


def test_a_write_in_pieces_is_whole(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A system may take fewer bytes than it is given."""
    write = os.write
    monkeypatch.setattr(os, "write", lambda file, data: write(file, bytes(data)[:3]))
    replace_file(tmp_path / "a", [b"a whole", b"", b" line\n"])
    assert (tmp_path / "a").read_bytes() == b"a whole line\n"


def test_a_folder_that_cannot_be_brought_to_the_disk_has_the_whole_file(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    fsync, calls = os.fsync, []

    def fail_second(file: int) -> None:
        calls.append(file)
        if len(calls) == 2:
            raise OSError(22, "Invalid argument")
        fsync(file)

    monkeypatch.setattr(os, "fsync", fail_second)
    log = bs.Knife(HERON, tmp_path / "log.csv")
    log.ground("closed", 0.1)
    assert len(calls) == 2
    assert bs.Knife(HERON, tmp_path / "log.csv").entries == log.entries


def test_a_link_is_followed_and_the_mode_is_kept(tmp_path: Path) -> None:
    (tmp_path / "there").mkdir()
    real, link = tmp_path / "there" / "real.csv", tmp_path / "link.csv"
    bs.Knife(HERON, real).ground("closed", 0.1)
    real.chmod(0o640)
    link.symlink_to(Path("there") / "real.csv")
    bs.Knife(HERON, link).ground("closed", 0.2)
    assert link.is_symlink()
    assert real.stat().st_mode & 0o777 == 0o640
    assert len(bs.Knife(HERON, real).entries) == 2


def test_a_new_file_has_the_mode_that_others_get(tmp_path: Path) -> None:
    (tmp_path / "other").touch()
    replace_file(tmp_path / "new", [b"x"])
    assert (tmp_path / "new").stat().st_mode == (tmp_path / "other").stat().st_mode


def test_what_is_no_file_is_not_replaced(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "pipe")
    for path in (tmp_path / "pipe", tmp_path):
        with pytest.raises(bs.InvalidInput, match="not an ordinary file"):
            replace_file(path, [b"x"])
    with pytest.raises(bs.InvalidInput, match="log: cannot write .*: no such file or directory"):
        bs.Knife(HERON, tmp_path / "nowhere" / "log.csv").ground("closed", 0.1)


def test_a_lock_that_another_holds_for_long_is_told(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(whole_file, "_WAIT_S", 0.05)
    path = tmp_path / "log.csv"
    with locked(path), pytest.raises(bs.InvalidInput, match="another program has held"):
        bs.Knife(HERON, path).ground("closed", 0.1)
    bs.Knife(HERON, path).ground("closed", 0.1)
