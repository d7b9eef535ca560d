"""Loads a design from its TOML file."""

from __future__ import annotations

import os

from backspring.design.design import Design
from backspring.design.reader import read_design
from backspring.design.toml_text import parse_toml
from backspring.errors import InvalidInput
from backspring.faults import Fault, invalid

LARGEST_BYTES = 1_000_000


def load(path: str | os.PathLike[str]) -> Design:
    """Load a design file.

    Raises InvalidInput, with every fault as `PATH:LINE: key: message`, when anything is wrong.
    """
    shown = os.fspath(path)
    try:
        with open(shown, "rb") as file:
            content = file.read(LARGEST_BYTES + 1)
    except (OSError, ValueError) as error:
        raise _unreadable(shown, _why(error)) from None
    return load_content(content, shown)


def load_content(content: bytes, shown: str) -> Design:
    """Load what a design file holds; faults name it as `shown`."""
    text = _decoded(content, shown)
    parts = read_design(parse_toml(text, shown))
    if isinstance(parts, list):
        from backspring.design.key_lines import KeyLines

        lines = KeyLines(text)
        placed = [fault._replace(path=shown, line=lines.line(fault.key)) for fault in parts]
        raise invalid(sorted(placed, key=lambda fault: fault.line or 0))
    return Design.from_parts(parts)


def _decoded(content: bytes, path: str) -> str:
    if len(content) > LARGEST_BYTES:
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
    return text.replace("\r\n", "\n").replace("\r", "\n")


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
