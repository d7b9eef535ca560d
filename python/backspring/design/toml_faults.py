"""Tells in a maker's words what of a TOML text cannot be read."""

from __future__ import annotations

import re
from collections.abc import Iterator

from backspring.design.key_lines import KeyLines
from backspring.design.toml_hints import hint_of, unclosed
from backspring.faults import Fault

_PLACE = re.compile(r" \(at (?:line (\d+), column \d+|end of document)\)$")
_QUOTED = re.compile(r"\"[^\"]*\"|'[^']*'")
_BETWEEN = re.compile(r"[=\[\],{}]")
_WITH_UNIT = re.compile(r"[+-]?\d[\d./ -]*[A-Za-z\"\u00b0]\S*(?: \S+)*")
_SECTION = re.compile(r"\s*\[")
_NUMBER = re.compile(r"[+-]?(?:0[xob][\da-fA-F_]+|\d[\d_]*(?:\.\d[\d_]*)?(?:[eE][+-]?\d+)?)")


def toml_faults(error: ValueError, text: str, path: str) -> list[Fault]:
    """Tell what is wrong, line by line, with a text that is no TOML."""
    return [*_without_quotes(text, path)] or [_first_fault(error, text, path)]


def _without_quotes(text: str, path: str) -> Iterator[Fault]:
    """Find every value with a unit that is not in quotes, which is what a maker forgets."""
    keys = KeyLines(text)
    for number, line in enumerate(text.split("\n"), start=1):
        for written in _bare_quantities(line):
            mark = "'" if '"' in written else '"'
            message = f"{written} has a unit: put it in quotes: {mark}{written}{mark}"
            yield Fault("bad-toml", keys.key_at(number), message, path, number)


def _bare_quantities(line: str) -> Iterator[str]:
    for piece in _BETWEEN.split(_QUOTED.sub("''", line).partition("#")[0]):
        written = " ".join(piece.split())
        if ";" in written or "//" in written:
            continue
        if _WITH_UNIT.fullmatch(written) and not _NUMBER.fullmatch(written):
            yield written


def _first_fault(error: ValueError, text: str, path: str) -> Fault:
    message, line, lines = str(error), None, text.split("\n")
    if place := _PLACE.search(message):
        message = message[: place.start()]
        line = int(place[1]) if place[1] else text.rstrip().count("\n") + 1
    if message.startswith(("Cannot overwrite", "Cannot declare")) and line:
        return Fault("bad-toml", "", _twice(message, text, line), path, line)
    ended = line is not None and not (place and place[1])
    # A list that ends in a comma, and with it the text, is told as a value that is none.
    lacks = ended and message == "Invalid value" and not text.rstrip().endswith("=")
    if line and (message == "Unclosed array" or lacks):
        line, told = unclosed(lines, line, ended)
    else:
        told = _plain_words(message, lines[line - 1] if line else "")
    return Fault("bad-toml", "", f"not valid TOML: {told}", path, line)


def _twice(message: str, text: str, line: int) -> str:
    """Say what is given twice, and where it was given first."""
    what = "key" if message.startswith("Cannot overwrite") else "section"
    lines = text.split("\n")
    alone = _with_section(lines, line)
    key = KeyLines("\n".join(alone)).key_at(len(alone))
    above = KeyLines("\n".join(lines[: line - 1]))
    first = above.line(key)
    told = f", first in line {first}" if first and above.key_at(first) == key else ""
    return f"this {what} is given twice{told}"


def _with_section(lines: list[str], line: int) -> list[str]:
    """Cut out a line, with the heading of the section that it stands in."""
    own = lines[line - 1]
    heads = [each for each in lines[: line - 1] if _SECTION.match(each)]
    return [own] if _SECTION.match(own) else [*heads[-1:], own]


def _plain_words(message: str, line: str) -> str:
    if message.startswith("Illegal character '\\n'"):
        return "text in quotes is not closed on this line"
    return hint_of(line) or f"{message[:1].lower()}{message[1:]}"
