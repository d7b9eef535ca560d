"""Files that are no drawings, or drawings made to trip: a clear word each, in bounded time."""

from __future__ import annotations

import io
import os
import re
import time
import zipfile
from collections.abc import Callable
from pathlib import Path
from typing import Any

import ezdxf
import pytest

from backspring.cli import main

_SECONDS = 10.0
NAN = float("nan")


def _svg(body: str, head: str = "", width: str = "90mm") -> bytes:
    names = 'xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink"'
    return f'{head}<svg {names} width="{width}" viewBox="0 0 90 90">{body}</svg>'.encode()


def _dxf(draw: Callable[[Any, Any], object]) -> bytes:
    document = ezdxf.new("R2010")
    document.header["$INSUNITS"] = 4
    draw(document, document.modelspace())
    written = io.StringIO()
    document.write(written)
    return written.getvalue().encode()


def _zip() -> bytes:
    written = io.BytesIO()
    with zipfile.ZipFile(written, "w", zipfile.ZIP_DEFLATED) as file:
        file.writestr("a.dxf", b"0\n" * 4_000_000)
    return written.getvalue()


def _itself(document: Any, space: Any) -> None:
    block = document.blocks.new("A")
    for _ in range(10):
        block.add_blockref("A", (0, 0))
    space.add_blockref("A", (0, 0))


def _each_other(document: Any, space: Any) -> None:
    document.blocks.new("A").add_blockref("B", (0, 0))
    document.blocks.new("B").add_blockref("A", (0, 0))
    space.add_blockref("A", (0, 0))


def _block_bomb(document: Any, space: Any) -> None:
    for level in range(8):
        block = document.blocks.new(f"L{level}")
        for _ in range(10):
            if level:
                block.add_blockref(f"L{level - 1}", (0, 0))
    space.add_blockref("L7", (0, 0))


def _grid(document: Any, space: Any) -> None:
    document.blocks.new("A").add_line((0, 0), (1, 0))
    attribs = {"row_count": 30_000, "column_count": 30_000, "row_spacing": 1, "column_spacing": 1}
    space.add_blockref("A", (0, 0), dxfattribs=attribs)


def _soup(document: Any, space: Any) -> None:
    for i in range(300):
        space.add_line((0, 0), (1 + i, 1), {"layer": "spring"})


_MILLION = b"  0\nSECTION\n  2\nENTITIES\n" + b"  0\nLINE\n  8\n0\n" * 1_000_000 + b"  0\nEOF\n"
_BOMB = "".join(
    f'<g id="l{i}">' + f'<use xlink:href="#l{i - 1}"/>' * 10 + "</g>" for i in range(1, 9)
)
_LAUGHS = (
    '<?xml version="1.0"?><!DOCTYPE svg [<!ENTITY a "haha">'
    + "".join(
        f'<!ENTITY {b} "{f"&{a};" * 10}">' for a, b in zip("abcdefgh", "bcdefghi", strict=True)
    )
    + "]>"
)
_OUTSIDE = '<!DOCTYPE svg [<!ENTITY f SYSTEM "file:///etc/hostname">]>'
_LINK = '<use xlink:href="file:///etc/hostname#a"/>'

HOSTILE: list[tuple[str, Callable[[], bytes], str]] = [
    ("empty.dxf", lambda: b"", "the file is empty"),
    ("blank.svg", lambda: b" \n\0\n", "the file is empty"),
    ("words.dxf", lambda: b"nonsense", "no DXF drawing"),
    ("bytes.dxf", lambda: bytes(range(256)) * 40, "no DXF drawing"),
    ("zeros.dxf", lambda: b"0\n" * 1000, "no DXF drawing|no closed outline|not state its units"),
    ("cut.dxf", lambda: _dxf(_soup)[:9000], "no DXF drawing|no closed outline|not state its units"),
    ("zip.dxf", _zip, "a zip file: unpack it first"),
    ("svg.dxf", lambda: _svg("<path/>"), "no DXF drawing"),
    ("million.dxf", lambda: _MILLION, "1000001 entities: more than 60000"),
    ("numbers.dxf", lambda: b" 10\n1\n" * 800_000, "too many numbers"),
    ("large.dxf", lambda: b"1" * 20_000_001, "larger than 20 MB"),
    ("itself.dxf", lambda: _dxf(_itself), "block A holds itself"),
    ("each_other.dxf", lambda: _dxf(_each_other), "holds itself"),
    ("bomb.dxf", lambda: _dxf(_block_bomb), "more than 10000 entities"),
    ("grid.dxf", lambda: _dxf(_grid), "more than 10000 entities"),
    ("none.dxf", lambda: _dxf(lambda _, s: s.add_blockref("X", (0, 0))), "spring: no closed"),
    ("nan.dxf", lambda: _dxf(lambda _, s: s.add_line((NAN, 0), (1, 1))), "no number"),
    ("far.dxf", lambda: _dxf(lambda _, s: s.add_line((1e300, 0), (1, 1))), "over 10 m away"),
    ("dot.dxf", lambda: _dxf(lambda _, s: s.add_circle((0, 0), 0)), "without a diameter"),
    ("minus.dxf", lambda: _dxf(lambda _, s: s.add_circle((0, 0), -1)), "without a diameter"),
    ("spline.dxf", lambda: _dxf(lambda _, s: s.add_spline([(0, 0), (NAN, 1), (2, 2), (3, 1)])),
     "SPLINE on layer 0 is none"),
    ("wild.dxf", lambda: _dxf(lambda _, s: s.add_open_spline(
        [(i * 7919 % 8999, i * 104729 % 8999) for i in range(400)])), "never comes smooth"),
    ("star.dxf", lambda: _dxf(_soup), r"spring: no closed outline|ends at \(0\.000, 0\.000\)"),
    ("dots.svg", lambda: _svg('<circle cx="1" cy="2" r="3"/>' * 400), "400 circles: keep the"),
    ("solid.dxf", lambda: _dxf(lambda _, s: s.add_3dface([(0, 0, 0), (1, 0, 0), (1, 1, 1)])),
     "a 3DFACE on layer 0 is no outline"),
    ("words.svg", lambda: b"nonsense", "no SVG drawing"),
    ("cut.svg", lambda: b"<svg", "no SVG drawing"),
    ("page.svg", lambda: b"<html><body/></html>", "no SVG drawing, but <html>"),
    ("packed.svg", lambda: b"\x1f\x8b\x08" + bytes(99), "no SVG drawing"),
    ("bare.svg", lambda: _svg("", width="90"), "does not state its units"),
    ("laughs.svg", lambda: _svg("<text>&i;</text>", _LAUGHS), "defines entities"),
    ("outside.svg", lambda: _svg("<text>&f;</text>", _OUTSIDE), "defines entities"),
    ("link.svg", lambda: _svg(_LINK), "a part of another file, which is not read"),
    ("lost.svg", lambda: _svg('<use href="#a"/>'), "which the drawing does not hold"),
    ("itself.svg", lambda: _svg('<g id="a"><use xlink:href="#a"/></g>'), '"a" uses itself'),
    ("bomb.svg", lambda: _svg('<g id="l0"><path d="M0 0 1 1"/></g>' + _BOMB),
     "more than 20000 shapes"),
    ("deep.svg", lambda: _svg("<g>" * 5000 + "</g>" * 5000), "nested more than 100 deep"),
    ("long.svg", lambda: _svg(f'<path d="M0 0{" 1 1" * 550_000}"/>'), "paths too long"),
    ("elements.svg", lambda: _svg("<g/>" * 100_001), "more than 100000 elements"),
    ("name.svg", lambda: _svg(f'<path id="{"x" * 100_001}" d="M0 0 1 1"/>'), "too long to be of"),
    ("style.svg", lambda: _svg(f"<style>{'a{}' * 40_000}</style>"), "too long to be of"),
    ("points.svg", lambda: _svg(f'<polygon points="{"1 1 " * 550_000}"/>'), "paths too long"),
    ("many.svg", lambda: _svg('<path d="M0 0 1 1"/>' * 20_001), "more than 20000 shapes"),
    ("nan.svg", lambda: _svg('<path d="M0 0 L NaN 1 L 2 2 Z"/>'), "spring: no closed outline"),
    ("far.svg", lambda: _svg('<path d="M0 0 L 1e300 1 L 2 2 Z"/>'), "over 10 m away"),
    ("picture.pdf", lambda: b"%PDF", r'is no .dxf, .svg or picture, but "\.pdf"'),
]  # fmt: skip


@pytest.mark.parametrize(("name", "content", "words"), HOSTILE, ids=[row[0] for row in HOSTILE])
def test_a_hostile_file_is_refused_with_a_word(
    name: str,
    content: Callable[[], bytes],
    words: str,
    tmp_path: Path,
    capsys: pytest.CaptureFixture[str],
) -> None:
    path = tmp_path / name
    path.write_bytes(content())
    begun = time.process_time()
    assert main(["outline", str(path)]) == 2
    assert time.process_time() - begun < _SECONDS
    told = capsys.readouterr().err
    assert re.search(words, told), told
    assert told.startswith(f"{path}: outline: ")
    assert len(told) < 3000


def _directory(path: Path) -> None:
    path.mkdir()


def _pipe(path: Path) -> None:
    os.mkfifo(path)


def _circle(path: Path) -> None:
    path.symlink_to(path)


def _nowhere(path: Path) -> None:
    path.symlink_to(path.parent / "gone.dxf")


@pytest.mark.parametrize("suffix", [".dxf", ".svg"])
@pytest.mark.parametrize(
    ("make", "words"),
    [
        (_directory, "is a directory, not a drawing"),
        (_pipe, "is no file"),
        (_circle, "symbolic links"),
        (_nowhere, "no such file"),
    ],
)
def test_what_is_no_file_is_refused_without_waiting(
    make: Callable[[Path], None],
    words: str,
    suffix: str,
    tmp_path: Path,
    capsys: pytest.CaptureFixture[str],
) -> None:
    path = tmp_path / f"a{suffix}"
    make(path)
    assert main(["outline", str(path)]) == 2
    assert words in capsys.readouterr().err
