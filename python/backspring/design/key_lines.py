"""Finds the line of each key in a design file."""

from __future__ import annotations

import re

_SECTION = re.compile(r"\s*\[\s*([A-Za-z_][\w.\- ]*?)\s*\]\s*(?:#.*)?$")
_KEY = re.compile(r"""\s*((?:[\w-]+|"[^"]*"|'[^']*')(?:\s*\.\s*(?:[\w-]+|"[^"]*"|'[^']*'))*)\s*=""")


class KeyLines:
    """Lines of a TOML text by dotted key; a key inside another's value has that one's line."""

    def __init__(self, text: str) -> None:
        self._lines: dict[str, int] = {}
        section = ""
        for number, line in enumerate(text.split("\n"), start=1):
            if found := _SECTION.match(line):
                section = _dotted(found[1])
                self._lines.setdefault(section, number)
            elif found := _KEY.match(line):
                key = _dotted(found[1])
                self._lines.setdefault(f"{section}.{key}" if section else key, number)

    def line(self, key: str) -> int | None:
        """Line of a key, else of what it stands in; None when neither is written."""
        while key:
            if key in self._lines:
                return self._lines[key]
            key = key.rpartition(".")[0]
        return None


def _dotted(written: str) -> str:
    return ".".join(part.strip().strip("\"'") for part in written.split("."))
