"""Finds the line of each key in a design file."""

from __future__ import annotations

import re
from bisect import bisect_right

_SECTION = re.compile(r"\s*\[\s*([A-Za-z_][\w.\- ]*?)\s*\]\s*(?:#.*)?$")
_BLADE = re.compile(r"\s*\[\[\s*blades\s*\]\]\s*(?:#.*)?$")
_NAME = re.compile(r"""\s*name\s*=\s*["']([^"'.]+)["']""")
_KEY = re.compile(r"""\s*((?:[\w-]+|"[^"]*"|'[^']*')(?:\s*\.\s*(?:[\w-]+|"[^"]*"|'[^']*'))*)\s*=""")


class KeyLines:
    """Lines of a TOML text by dotted key; a key inside another's value has that one's line."""

    def __init__(self, text: str) -> None:
        self._lines: dict[str, int] = {}
        section, blade, lines = "", "", text.split("\n")
        self._names: dict[str, str] = {}
        count = 0
        for number, line in enumerate(lines, start=1):
            if _BLADE.match(line):
                section = blade = f"blades.{self._free_name(lines[number:], count)}"
                self._names[f"blades.{count}"] = blade
                count += 1
                self._lines.setdefault("blades", number)
                self._lines.setdefault(section, number)
            elif found := _SECTION.match(line):
                section = _dotted(found[1])
                if section.startswith("blades."):
                    section = f"{blade}.{section.removeprefix('blades.')}"
                self._lines.setdefault(section, number)
            elif found := _KEY.match(line):
                key = _dotted(found[1])
                self._lines.setdefault(f"{section}.{key}" if section else key, number)
        self._at: dict[int, str] = {}
        for key, number in self._lines.items():
            self._at.setdefault(number, key)
        self._numbers = [*self._at]

    def _free_name(self, lines: list[str], count: int) -> str:
        """Name of the blade whose table begins; its number where it has none of its own."""
        for line in lines:
            if line.lstrip().startswith("["):
                break
            if found := _NAME.match(line):
                name = found[1]
                return name if f"blades.{name}" not in self._lines else str(count)
        return str(count)

    def line(self, key: str) -> int | None:
        """Line of a key, else of what it stands in; None when neither is written."""
        # A blade that cannot go by its name goes by its number.
        names = key.split(".")
        key = ".".join([self._names.get(".".join(names[:2]), ".".join(names[:2])), *names[2:]])
        while key:
            if key in self._lines:
                return self._lines[key]
            key = key.rpartition(".")[0]
        return None

    def key_at(self, line: int) -> str:
        """Key whose value stands on a line, or began before it; empty above the first."""
        place = bisect_right(self._numbers, line)
        return self._at[self._numbers[place - 1]] if place else ""


def _dotted(written: str) -> str:
    return ".".join(part.strip().strip("\"'") for part in written.split("."))
