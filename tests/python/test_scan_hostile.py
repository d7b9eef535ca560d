"""Pictures that are none, or that show no knife: a clear word each, in bounded time."""

from __future__ import annotations

import io
import re
import struct
import sys
import time
import zlib
from collections.abc import Callable
from pathlib import Path

import numpy as np
import pytest
from PIL import Image

import backspring as bs
from backspring.cli import main
from backspring.outline.reading import read_outline

_SECONDS = 10.0
_WHITE = 235


def _file(array: object, kind: str = "png", **options: object) -> bytes:
    written = io.BytesIO()
    Image.fromarray(np.asarray(array)).save(written, kind, **options)
    return written.getvalue()


def _paper(*boxes: tuple[int, int, int, int], side: int = 400) -> np.ndarray:
    """Dark boxes on light paper, each as left, top, right, bottom [px]."""
    paper = np.full((side, side), _WHITE, np.uint8)
    for left, top, right, bottom in boxes:
        paper[top:bottom, left:right] = 30
    return paper


def _with_holes(paper: np.ndarray, *centers: tuple[int, int]) -> np.ndarray:
    y, x = np.mgrid[: paper.shape[0], : paper.shape[1]]
    for across, down in centers:
        paper[(x - across) ** 2 + (y - down) ** 2 < 144] = _WHITE
    return paper


def _bomb(side: int) -> bytes:
    """A picture of very many pixels that is a few bytes long."""

    def chunk(name: bytes, data: bytes) -> bytes:
        return (
            struct.pack(">I", len(data)) + name + data + struct.pack(">I", zlib.crc32(name + data))
        )

    head = struct.pack(">IIBBBBB", side, side, 8, 0, 0, 0, 0)
    body = zlib.compress(b"\0" * 10_000)
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + chunk(b"IDAT", body) + chunk(b"IEND", b"")


def _noise() -> np.ndarray:
    return np.random.default_rng(1).integers(0, 256, (600, 600)).astype(np.uint8)


def _sieve() -> np.ndarray:
    """A dark sheet of very many light dots, each smaller than what tells parts apart."""
    sieve = _paper((20, 20, 1980, 1980), side=2000)
    for across in (0, 1, 2, 3):
        for down in (0, 1, 2, 3):
            sieve[20 + across : 1980 : 10, 20 + down : 1980 : 10] = _WHITE
    return sieve


_SPRING = _with_holes(_paper((20, 40, 380, 120)), (60, 80), (300, 80))
_LINE = _paper((20, 20, 380, 380))
_LINE[26:374, 26:374] = _WHITE
_CUT = _with_holes(_paper((0, 40, 380, 120)), (60, 80), (300, 80))

PICTURES: list[tuple[str, Callable[[], bytes], str, str]] = [
    ("empty.png", lambda: b"", "600", "the file is empty"),
    ("words.png", lambda: b"nonsense", "600", "no picture that can be read"),
    ("cut.png", lambda: _file(_SPRING)[:300], "600", "no picture that can be read"),
    ("svg.jpg", lambda: b"<svg/>", "600", "no picture that can be read"),
    ("bomb.png", lambda: _bomb(11_000), "600", "11000 x 11000 pixels, more than 100 million"),
    ("vast.png", lambda: _bomb(2**30), "600", "pixels, more than 100 million"),
    ("black.png", lambda: _file(_paper() * 0), "600", "too much alike"),
    ("white.tif", lambda: _file(_paper(), "tiff"), "600", "too much alike"),
    ("noise.png", lambda: _file(_noise()), "600", "too much alike|full of specks"),
    ("tiny.png", lambda: _file(_paper(side=12)), "600", "too small to hold"),
    ("coarse.png", lambda: _file(_SPRING), "150", r"5.91 px/mm \(150 dpi\): a face needs 8"),
    ("phone.jpg", lambda: _file(_SPRING, "jpeg", dpi=(72, 72)), "", "own tag says 2.83 px/mm"),
    ("bare.png", lambda: _file(_SPRING), "", "does not say its scale: give --scale"),
    ("uneven.png", lambda: _file(_SPRING, dpi=(600, 300)), "", "does not say its scale"),
    ("nil.png", lambda: _file(_SPRING), "0", "dpi must be greater than 0"),
    ("fine.png", lambda: _file(_SPRING), "20000", "is it the right way round"),
    ("dust.png", lambda: _file(_paper((9, 9, 60, 60))), "600", "no part found: nothing larger"),
    ("half.png", lambda: _file(_SPRING), "254", "tang: no outline with 1 round hole"),
    ("bar.png", lambda: _file(_paper((20, 40, 380, 120))), "254", "spring: no outline with 2"),
    ("line.png", lambda: _file(_LINE), "254", "drawn as a line: fill it in"),
    ("border.png", lambda: _file(_CUT), "254", "spring: cut off by the picture's border"),
    ("sieve.png", lambda: _file(_sieve()), "600", "too ragged an edge, or is full of specks"),
    ("five.png", lambda: _file(_with_holes(_paper((9, 40, 390, 120)), *(
        (40 + 70 * i, 80) for i in range(5)))), "254", "a part of 5 holes at"),
]  # fmt: skip


@pytest.mark.parametrize(
    ("name", "content", "dpi", "rule"), PICTURES, ids=[each[0] for each in PICTURES]
)
def test_a_picture_that_is_none_is_refused_in_words(
    name: str, content: Callable[[], bytes], dpi: str, rule: str, tmp_path: Path
) -> None:
    path = tmp_path / name
    path.write_bytes(content())
    begun = time.process_time()
    with pytest.raises(bs.InvalidInput, match=rule) as refused:
        read_outline(path, dpi=dpi or None)
    assert time.process_time() - begun < _SECONDS
    assert all(fault.path == str(path) for fault in refused.value.faults)


@pytest.mark.parametrize(
    ("words", "rule"),
    [
        (["--scale", "50 mm", "--dpi", "600"], "give --scale or --dpi, not both"),
        (["--scale", "50 mm is 812"], 'scale must be as "50 mm = 1181 px", got "50 mm is 812"'),
        (["--scale", "0 mm = 812 px"], "scale must be greater than 0"),
        (["--scale", "50 kg = 812 px"], "scale"),
        (["--dpi", "many"], "dpi"),
        (["--dpi", "600", "--hole", "0 mm"], "hole must be from 0 to 20 mm, got 0 mm"),
        (["--dpi", "600", "--spring", "s"], "a picture has no layers"),
    ],
    ids=lambda each: str(each)[:24],
)
def test_a_scale_that_is_none_is_refused(
    words: list[str], rule: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "a.png"
    path.write_bytes(_file(_SPRING))
    assert main(["outline", str(path), *words]) == 2
    assert rule in re.sub(r"\s+", " ", capsys.readouterr().err)


def test_a_drawing_takes_no_scale_and_no_file_is_no_file(tmp_path: Path) -> None:
    drawing = tmp_path / "a.svg"
    drawing.write_text("<svg/>", encoding="utf-8")
    with pytest.raises(bs.InvalidInput, match="a drawing has its own scale"):
        read_outline(drawing, scale="50 mm = 812 px")
    with pytest.raises(bs.InvalidInput, match="no such file"):
        read_outline(tmp_path / "none.png", dpi=600)
    (tmp_path / "folder.png").mkdir()
    with pytest.raises(bs.InvalidInput, match="is no file"):
        read_outline(tmp_path / "folder.png", dpi=600)


@pytest.mark.parametrize("missing", ["skimage", "PIL"])
def test_without_the_library_it_says_what_to_install(
    missing: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "a.png"
    path.write_bytes(_file(_SPRING))
    for name in [each for each in sys.modules if each.split(".")[0] == missing]:
        monkeypatch.delitem(sys.modules, name)
    monkeypatch.setitem(sys.modules, missing, None)
    with pytest.raises(bs.InvalidInput, match=r'needs .*: pip install "backspring\[scan\]"'):
        read_outline(path, dpi=600)
