"""A disk that is full, a folder that is read-only, a writer that is killed: the old file stands."""

from __future__ import annotations

import errno
import os
import random
import re
import signal
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from backspring import whole_file
from backspring.cli import main
from backspring.whole_file import replace_file

REPO = Path(__file__).resolve().parents[2]
KESTREL = str(REPO / "data" / "designs" / "kestrel.toml")
OLD = b"what stood there"
READING = ["--half-stop", "0.01 mm", "--closed", "0.02 mm", "--state", "loaded"]
WORDS: dict[str, tuple[str, list[str]]] = {
    "plot": ("a.svg", ["plot", KESTREL, "--output"]),
    "template": ("a.dxf", ["template", KESTREL, "--output"]),
    "new": ("a.toml", ["new", "--force", "--output"]),
    "card": ("a.html", ["card", KESTREL, "--output"]),
    "fit": ("a.csv", ["fit", KESTREL, *READING, "--log"]),
}


class _System:
    """The system as the writer of files sees it, with one call of it spoiled."""

    def __init__(self, **spoiled: Callable[..., int]) -> None:
        self.__dict__.update(spoiled)

    def __getattr__(self, name: str) -> Any:
        return getattr(os, name)


def full(_: Path) -> tuple[_System, str]:
    """Let a few bytes through, as a disk does that is nearly full."""

    def write(file: int, data: Any) -> int:
        if len(data) > 8:
            return os.write(file, bytes(data)[:8])
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    return _System(write=write), "no space left on device"


def read_only(folder: Path) -> tuple[_System, str]:
    """Root may write everywhere, so the folder itself is made to refuse."""

    def open_file(path: Any, flags: int, *mode: Any) -> int:
        if flags & os.O_CREAT and Path(path).parent == folder:
            raise OSError(errno.EROFS, os.strerror(errno.EROFS))
        return os.open(path, flags, *mode)

    return _System(open=open_file), "read-only file system"


@pytest.mark.parametrize("spoil", [full, read_only])
@pytest.mark.parametrize("name", WORDS)
def test_one_error_and_nothing_half_written(
    name: str,
    spoil: Callable[[Path], tuple[_System, str]],
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    file, words = WORDS[name]
    path = tmp_path / file
    if name == "fit":
        assert main([*words, str(path)]) in (0, 1)
    else:
        path.write_bytes(OLD)
    before = path.read_bytes()
    capsys.readouterr()
    system, reason = spoil(tmp_path)
    monkeypatch.setattr(whole_file, "os", system)
    assert main([*words, str(path)]) == 2
    told = capsys.readouterr()
    assert re.fullmatch(rf"\w+: cannot write {re.escape(str(path))}: {reason}\n", told.err)
    assert not told.out
    assert [*tmp_path.iterdir()] == [path]
    assert path.read_bytes() == before


def test_nothing_else_writes_files() -> None:
    writes = re.compile(r"\.write_(text|bytes)\(|saveas\(|open\([^)]*[\"'][wax]b?[\"']|O_CREAT")
    package = REPO / "python" / "backspring"
    found = [path.name for path in package.rglob("*.py") if writes.search(path.read_text("utf-8"))]
    assert found == ["whole_file.py"]


def test_a_writer_killed_at_any_moment_leaves_a_whole_file(tmp_path: Path) -> None:
    path, wholes = tmp_path / "a.bin", [bytes([each]) * 300_000 for each in (65, 66)]
    replace_file(path, [wholes[0]])
    chance = random.Random(1)
    seen, kills = set[bytes](), 0
    # On a busy machine a writer needs longer before it has written anything.
    while kills < 40 or (len(seen) < 2 and kills < 1000):
        kills += 1
        child = os.fork()
        if not child:
            while True:
                for whole in wholes:
                    replace_file(path, [whole[:100_000], whole[100_000:]])
        time.sleep(chance.uniform(0.001, 0.02 * (1 + kills // 40)))
        os.kill(child, signal.SIGKILL)
        os.waitpid(child, 0)
        content = path.read_bytes()
        assert content in wholes
        seen.add(content)
    assert len(seen) == 2
