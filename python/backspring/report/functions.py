"""What the package offers, from its own docstrings: a list, one name whole, and the reference."""

from __future__ import annotations

import inspect
import re
from collections.abc import Iterator
from types import ModuleType
from typing import Any

import backspring
from backspring.report.result import Reported
from backspring.report.tables import Lines, Report

_HEAD = """# Names of the package

Written by `backspring functions --reference` from the docstrings; do not edit. All of them stand in
`import backspring as bs`. mm, N, MPa and degrees; lengths and forces may be text with a unit.
Every result prints itself, shows itself in a notebook, and has `report(units)` and `to_dict()`.
"""


def names() -> list[str]:
    """Everything that `backspring` offers, but its version."""
    return [name for name in backspring.__all__ if not name.startswith("_")]


def functions_report(name: str | None = None) -> Report:
    """List all names with what they are for, or lay out one of them whole."""
    if name is None:
        width = max(map(len, names()))
        rows = tuple(f"{each:{width}}  {_first_line(each)}" for each in names())
        return Report("import backspring as bs", (Lines("", rows),))
    return Report(_heading(name), (Lines("", tuple(_text(name).splitlines())),))


def functions_reference() -> str:
    """Write every name with its signature and text as Markdown."""
    parts = (f"## {name}\n\n```python\n{_heading(name)}\n```\n\n{_text(name)}" for name in names())
    return "\n\n".join([_HEAD, *parts]) + "\n"


def _first_line(name: str) -> str:
    return _text(name).partition("\n")[0]


def _text(name: str) -> str:
    thing = getattr(backspring, name)
    members = "\n".join(_members(thing))
    return f"{inspect.getdoc(thing) or ''}\n\n{members}".strip()


def _heading(name: str) -> str:
    thing = getattr(backspring, name)
    if isinstance(thing, ModuleType):
        return f"backspring.{name}"
    try:
        # A named tuple wraps the names of its types.
        return re.sub(r"ForwardRef\(('.*?')\)", r"\1", f"{name}{inspect.signature(thing)}")
    except ValueError:
        return name


def _members(thing: Any) -> Iterator[str]:
    """List what a class or a module offers in its turn, a line each."""
    if isinstance(thing, ModuleType):
        given = [name for name in thing.__all__ if name[0].islower()]
    elif inspect.isclass(thing):
        offered = inspect.getmembers(thing, _is_offered)
        # What any tuple has tells nothing.
        own = [name for name, each in offered if each is not getattr(tuple, name, None)]
        # Every result shows itself alike: said once, in the head.
        given = [name for name in own if name[0] != "_" and not hasattr(Reported, name)]
    else:
        return
    for name in given:
        line = (inspect.getdoc(getattr(thing, name)) or "").partition("\n")[0]
        yield f"- `{name}`: {line}"


def _is_offered(member: Any) -> bool:
    return isinstance(member, property) or inspect.isroutine(member)
