"""Steels of one's own: a folder of files with the fields that the shipped ones have."""

from __future__ import annotations

import os
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from backspring.design.key_lines import KeyLines
from backspring.design.own_steel_checks import Checked, read_sources
from backspring.design.own_steel_defaults import with_defaults
from backspring.design.own_steel_fields import STEEL
from backspring.design.toml_text import parse_toml
from backspring.faults import Fault, invalid
from backspring.steel import known
from backspring.steel.files import all_sources, all_steels, parse_steel
from backspring.steel.records import Source, Steel

_SOURCES = "sources.toml"
_LARGEST_BYTES = 1_000_000


def add_steels(folder: str | os.PathLike[str]) -> tuple[str, ...]:
    """Make the steels of a folder known until the program ends, and return their names.

    Each file NAME.toml has the fields of those under data/steels; `name`, a Young's modulus and a
    yield ratio must be given, what else is left out is taken as usual for steel. A file
    sources.toml holds the sources they cite beside those that are shipped. Raises InvalidInput with
    every fault of every file.
    """
    place = Path(folder)
    paths = sorted(place.glob("*.toml")) if place.is_dir() else []
    if not [path for path in paths if path.name != _SOURCES]:
        raise invalid(
            [Fault("unreadable", "", "is no folder with a steel's .toml file", str(place))]
        )
    faults: list[Fault] = []
    sources = _sources(place / _SOURCES, faults)
    steels = list(_steels(paths, {*all_sources(), *sources}, faults))
    if faults:
        raise invalid(faults)
    files = {
        _own_key(path): Source(f"the steel's own file, {path.name}", "own", "memory")
        for path in paths
    }
    known.know(steels, files | sources)
    return tuple(each.name for each in steels)


def _steels(paths: list[Path], sources: set[str], faults: list[Fault]) -> Iterator[Steel]:
    taken = {
        called.casefold(): "shipped"
        for each in all_steels()
        for called in (each.name, *each.also_called)
    }
    for path in paths:
        if path.name == _SOURCES:
            continue
        text, data = _read(path)
        checked = Checked(sources)
        checked.table(STEEL, data, "")
        if isinstance(name := data.get("name"), str):
            for called in (name, *_texts(data.get("also_called"))):
                if other := taken.get(called.casefold()):
                    checked.refuse("name", f'"{called}" is taken: there is such a steel, {other}')
                taken[called.casefold()] = f"in {path.name}"
        faults += _placed(checked.faults, text, path)
        if not checked.faults:
            yield parse_steel(with_defaults(data, _own_key(path)))


def _own_key(path: Path) -> str:
    return f"own-{path.stem}"


def _texts(value: Any) -> list[str]:
    return [each for each in value if isinstance(each, str)] if isinstance(value, list) else []


def _sources(path: Path, faults: list[Fault]) -> dict[str, Source]:
    if not path.exists():
        return {}
    text, data = _read(path)
    found, wrong = read_sources(data)
    faults += _placed(wrong, text, path)
    return found


def _read(path: Path) -> tuple[str, dict[str, Any]]:
    try:
        with path.open("rb") as file:
            content = file.read(_LARGEST_BYTES + 1)
        if len(content) > _LARGEST_BYTES:
            raise ValueError("larger than 1 MB")
        text = content.decode("utf-8-sig").replace("\r\n", "\n")
    except (OSError, ValueError) as error:
        raise invalid([Fault("unreadable", "", f"cannot be read: {error}", str(path))]) from None
    return text, parse_toml(text, str(path))


def _placed(faults: list[Fault], text: str, path: Path) -> list[Fault]:
    lines = KeyLines(text)
    return [fault._replace(path=str(path), line=lines.line(fault.key)) for fault in faults]
