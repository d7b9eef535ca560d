"""Bad designs: every fault is told at once, with file, line, key, rule and value."""

from __future__ import annotations

import json
import tomllib
from collections.abc import Callable
from pathlib import Path

import pytest

import backspring as bs
from backspring.cli import main

BAD = tomllib.loads(Path(__file__).with_name("bad_designs.toml").read_text("utf-8"))
GOOD = BAD["good"]
ROWS = [pytest.param(row, id=row["reason"]) for row in BAD["bad"]]


def told(path: Path) -> str:
    """What loading a file says, without the file's path."""
    with pytest.raises(bs.InvalidInput) as refused:
        bs.load(path)
    return str(refused.value).replace(str(path), "")


def test_the_text_that_is_spoiled_is_good(tmp_path: Path) -> None:
    path = tmp_path / "dunnock.toml"
    path.write_text(GOOD)
    assert bs.check(bs.load(path)).design.name == "Dunnock"


@pytest.mark.parametrize("row", ROWS)
def test_a_bad_value_is_told(row: dict[str, str], tmp_path: Path) -> None:
    assert GOOD.count(row["old"]) >= 1
    path = tmp_path / "dunnock.toml"
    path.write_text(GOOD.replace(row["old"], row["new"], 1))
    assert told(path) == row["message"]


def write(content: bytes) -> Callable[[Path], object]:
    return lambda path: path.write_bytes(content)


FILES: list[tuple[str, Callable[[Path], object], str]] = [
    ("missing", lambda path: None, ": no such file"),
    ("a directory", lambda path: path.mkdir(), ": is a directory, not a design file"),
    ("empty", write(b""), ": the file is empty"),
    ("blank", write(b"\xef\xbb\xbf \r\n"), ": the file is empty"),
    ("binary", write(bytes(range(256))), ": not a text file in UTF-8"),
    ("with a zero byte", write(b"format = 1\0"), ": not a text file in UTF-8"),
    ("UTF-16", write(GOOD.encode("utf-16")), ": saved as UTF-16: save it as UTF-8"),
    ("too large", write(b"#" * 1_000_001), ": larger than 1 MB: this is no design file"),
    ("nested too deep", write(b"a = " + b"[" * 50_000), ": brackets or keys are nested too deep"),
    ("no TOML", write(b"Heron\n"), ":1: not valid TOML: a line is a key, = and a value, or a "
     "section's name as [fit]"),
    ("another format", write(b"format = 7\nwidht = 2"), ":1: format: this version reads format 1, "
     "got 7"),
    ("only a comment", write(b"# nothing"), ": format: missing: write format = 1 in the first "
     "line"),
]  # fmt: skip


@pytest.mark.parametrize(
    ("spoil", "message"), [row[1:] for row in FILES], ids=[r[0] for r in FILES]
)
def test_a_bad_file_is_told(spoil: Callable[[Path], object], message: str, tmp_path: Path) -> None:
    path = tmp_path / "dunnock.toml"
    spoil(path)
    assert told(path) == message


def test_faults_are_carried_one_by_one(tmp_path: Path) -> None:
    path = tmp_path / "dunnock.toml"
    path.write_text(GOOD.replace("width = 2.3", "widht = 2.3").replace("preload = 0.9", ""))
    with pytest.raises(bs.InvalidInput) as refused:
        bs.load(path)
    assert [(each.code, each.key, each.line) for each in refused.value.faults] == [
        ("unknown-key", "spring.widht", 8),
        ("missing-key", "fit.preload", 22),
    ]
    assert isinstance(refused.value, ValueError)


def test_without_a_file_the_key_is_told() -> None:
    tables = tomllib.loads(GOOD)
    tables["spring"] |= {"width": -2.3, "pad": [27, "40 N"]}
    with pytest.raises(bs.InvalidInput) as refused:
        bs.Design(**tables)
    assert str(refused.value).splitlines() == [
        'spring.pad: value 2: must be a length, got "40 N", which is a force',
        "spring.width: must be greater than 0 mm, got -2.3 mm",
    ]


@pytest.mark.parametrize("old", ["width = 2.3", "name = ", "[fit]", '"O1"', "format = 1"])
def test_the_command_tells_the_same(
    old: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "dunnock.toml"
    path.write_text(GOOD.replace(old, "#", 1))
    assert main(["check", str(path)]) == 2
    shown = capsys.readouterr()
    assert shown.out == ""
    assert shown.err.replace(str(path), "") == told(path) + "\n"


def test_the_command_tells_it_as_json(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "dunnock.toml"
    path.write_text(GOOD.replace("width = 2.3", "width = 0"))
    assert main(["check", str(path), "--json"]) == 2
    document = json.loads(capsys.readouterr().out)
    assert document["status"] == "error"
    assert document["diagnostics"] == [
        {
            "code": "bad-value",
            "severity": "error",
            "message": "spring.width: must be greater than 0 mm, got 0 mm",
            "path": str(path),
            "line": 8,
        }
    ]
