"""Loads a design from its TOML file."""

from __future__ import annotations

import os
import re
import tomllib
from dataclasses import replace
from pathlib import Path
from typing import Any

from backspring.design.design import Design
from backspring.design.key_lines import KeyLines
from backspring.design.reader import read_design
from backspring.errors import InvalidInput
from backspring.faults import Fault, invalid

_LARGEST_BYTES = 1_000_000
_PLACE = re.compile(r" \(at (?:line (\d+), column \d+|end of document)\)$")
_HINTS = (
    (re.compile(r"^[^#\"'\[]*=\s*[+-]?\d+,\d"), "write a decimal point, not a comma"),
    (re.compile(r"[=\[,]\s*[+-]?\.\d"), "write a digit before the decimal point, as 0.5"),
    (
        re.compile(r"[=\[,]\s*[+-]?\d[\d./ -]*[A-Za-z\"]"),
        'put a value with a unit in quotes, as "2.9 mm"',
    ),
)


def load(path: str | os.PathLike[str]) -> Design:
    """Load a design file.

    Raises InvalidInput, with every fault as `PATH:LINE: key: message`, when anything is wrong.
    """
    shown = os.fspath(path)
    text = _read_text(shown)
    parts = read_design(_parse_toml(text, shown))
    if isinstance(parts, list):
        lines = KeyLines(text)
        placed = [replace(fault, path=shown, line=lines.line(fault.key)) for fault in parts]
        raise invalid(sorted(placed, key=lambda fault: fault.line or 0))
    return Design.from_parts(parts)


def _read_text(path: str) -> str:
    try:
        with Path(path).open("rb") as file:
            content = file.read(_LARGEST_BYTES + 1)
    except (OSError, ValueError) as error:
        raise _unreadable(path, _why(error)) from None
    if len(content) > _LARGEST_BYTES:
        raise _unreadable(path, "larger than 1 MB: this is no design file")
    if content.startswith((b"\xff\xfe", b"\xfe\xff")):
        raise _unreadable(path, "saved as UTF-16: save it as UTF-8")
    try:
        text = content.decode("utf-8-sig")
    except UnicodeDecodeError:
        raise _unreadable(path, "not a text file in UTF-8") from None
    if "\0" in text:
        raise _unreadable(path, "not a text file in UTF-8")
    if not text.strip():
        raise _unreadable(path, "the file is empty")
    return text.replace("\r\n", "\n")


def _why(error: OSError | ValueError) -> str:
    if isinstance(error, FileNotFoundError):
        return "no such file"
    if isinstance(error, IsADirectoryError):
        return "is a directory, not a design file"
    if isinstance(error, PermissionError):
        return "may not be read: permission denied"
    return f"cannot be read: {getattr(error, 'strerror', None) or error}"


def _unreadable(path: str, message: str) -> InvalidInput:
    return invalid([Fault("unreadable", "", message, path)])


def _parse_toml(text: str, path: str) -> dict[str, Any]:
    try:
        return tomllib.loads(text)
    except ValueError as error:
        message, line = str(error), None
        if place := _PLACE.search(message):
            message = message[: place.start()]
            line = int(place[1]) if place[1] else text.rstrip().count("\n") + 1
        message = _plain_words(message, text.split("\n")[line - 1] if line else "")
        raise invalid([Fault("bad-toml", "", message, path, line)]) from None
    except RecursionError:
        raise _unreadable(path, "brackets are nested too deep") from None


def _plain_words(message: str, line: str) -> str:
    if message.startswith("Cannot overwrite"):
        return "this key is given twice"
    if message.startswith("Cannot declare"):
        return "this section is given twice"
    if message.startswith("Illegal character '\\n'"):
        return "not valid TOML: text in quotes is not closed on this line"
    hint = next((f": {hint}" for pattern, hint in _HINTS if pattern.search(line)), "")
    return f"not valid TOML: {message[:1].lower()}{message[1:]}{hint}"
