"""What is wrong with a line of a design file that is no TOML, in a maker's words."""

from __future__ import annotations

import re

_QUOTED = re.compile(r"\"[^\"]*\"|'[^']*'")
_KEY = r"^\s*[\w.-]+\s*"
# What the line looks like with all in quotes blanked, and what to do about it.
_HINTS = tuple(
    (re.compile(pattern), hint)
    for pattern, hint in (
        ("[\u2018\u2019\u201a\u201c\u201d\u201e]", "write straight quotes, not curly ones"),
        ("[\u2010-\u2015\u2212]\\s*[\\d.]", "write a plain minus before a number, as -38"),
        ("[\u00a0\u2000-\u200b\u3000]", "one of the spaces is no plain space: type it again"),
        (r"^\s*[\[(]\s*[A-Za-z][^=\[\]]*$|^\s*\[\w+ [\w ]+\]",
         "a section is headed by its name in square brackets, as [fit]"),
        (_KEY + r":", "write = between a key and its value, not a colon"),
        (r"^\s*\w+ +\w[\w ]*=", "a key is one word, as half_stop"),
        (_KEY + r"=\s*$", "the value is missing"),
        (r"^\s*[A-Za-z][^=]*$", "a line is a key, = and a value, or a section's name as [fit]"),
        (r"\S\s*(?:;|//)", "a remark begins with #"),
        (r"\"\"\s*\"|''\s*'", "the inch mark ends the text: write in for it, as \"3/32 in\""),
        (r"^[^\[]*=\s*[+-]?\d+,\d", "write a decimal point, not a comma"),
        (r"[=\[,]\s*[+-]?\.\d", "write a digit before the decimal point, as 0.5"),
        (r"[=\[,]\s*[+-]?\d+\.(?!\d)", "write a digit behind the decimal point, as 9.0"),
        (r"[=\[,]\s*[+-]?0\d", "write a number without a nought before it"),
        (r"\d\s*/\s*\d", 'write a fraction in quotes, as "3/32 in"'),
        (_KEY + r"=\s*(?:[Yy]es|[Nn]o|[Oo]n|[Oo]ff|True|False)\b", "write true or false"),
        (r"[=\[,]\s*(?!true\b|false\b|nan\b|inf\b)[A-Za-z]", "write text in quotes"),
        (r"\]\s*\[", "a comma is missing between two rows"),
    )
)  # fmt: skip
_STARTS = re.compile(r"\s*(?:[\w.-]+\s*=|\[\s*[A-Za-z])")


def hint_of(line: str) -> str | None:
    """Say what is to be done about a line; None where nobody knows."""
    bare = _bare(line)
    return next((hint for pattern, hint in _HINTS if pattern.search(bare)), None)


def unclosed(lines: list[str], at: int, ended: bool) -> tuple[int, str]:
    """Tell of a list that does not end, where a reader stopped at a line: which line, and what.

    Lines count from 1; `ended` is whether the text did. Where another key begins in the midst of
    it, or nothing follows, it is the list's own line.
    """
    start, depth = at, 0
    for number, line in enumerate(lines[:at], start=1):
        bare = _bare(line)
        if depth == 0:
            start = number
        depth = max(0, depth + bare.count("[") - bare.count("]"))
    here = _bare(lines[at - 1])
    if re.search(r"\]\s*\[", here):
        return at, "a comma is missing between two rows"
    if ended or start == at or _STARTS.match(here) or not here.strip():
        return start, "the list that begins here is not closed: ] is missing"
    return at, f"a comma is missing before this, in the list that begins in line {start}"


def _bare(line: str) -> str:
    """Blank what stands in quotes, and leave out a remark."""
    return _QUOTED.sub('""', line).partition("#")[0].rstrip()
