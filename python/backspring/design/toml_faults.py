"""Tells in a maker's words what of a TOML text cannot be read."""

from __future__ import annotations

import re
from collections.abc import Iterator

from backspring.design.key_lines import KeyLines
from backspring.faults import Fault

_PLACE = re.compile(r" \(at (?:line (\d+), column \d+|end of document)\)$")
_QUOTED = re.compile(r"\"[^\"]*\"|'[^']*'")
_BETWEEN = re.compile(r"[=\[\],{}]")
_WITH_UNIT = re.compile(r"[+-]?\d[\d./ -]*[A-Za-z\"\u00b0]\S*(?: \S+)*")
_NUMBER = re.compile(r"[+-]?(?:0[xob][\da-fA-F_]+|\d[\d_]*(?:\.\d[\d_]*)?(?:[eE][+-]?\d+)?)")
_HINTS = (
    (re.compile(r"^[^#\"'\[]*=\s*[+-]?\d+,\d"), "write a decimal point, not a comma"),
    (re.compile(r"[=\[,]\s*[+-]?\.\d"), "write a digit before the decimal point, as 0.5"),
)


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
        if _WITH_UNIT.fullmatch(written) and not _NUMBER.fullmatch(written):
            yield written


def _first_fault(error: ValueError, text: str, path: str) -> Fault:
    message, line = str(error), None
    if place := _PLACE.search(message):
        message = message[: place.start()]
        line = int(place[1]) if place[1] else text.rstrip().count("\n") + 1
    message = _plain_words(message, text.split("\n")[line - 1] if line else "")
    return Fault("bad-toml", "", message, path, line)


def _plain_words(message: str, line: str) -> str:
    if message.startswith("Cannot overwrite"):
        return "this key is given twice"
    if message.startswith("Cannot declare"):
        return "this section is given twice"
    if message.startswith("Illegal character '\\n'"):
        return "not valid TOML: text in quotes is not closed on this line"
    hint = next((f": {hint}" for pattern, hint in _HINTS if pattern.search(line)), "")
    return f"not valid TOML: {message[:1].lower()}{message[1:]}{hint}"
