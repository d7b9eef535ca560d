"""Refuses a command line that cannot be understood, or an option that would change nothing."""

from __future__ import annotations

import argparse
import os
from collections import Counter

# Arguments that name a file, in all commands.
_WRITTEN = {"output", "picture"}
_READ = {"design", "other", "drawing", "log"}


class UsageError(Exception):
    """The command line cannot be understood."""


def refuse_repeats(parser: argparse.ArgumentParser, words: list[str]) -> None:
    """Refuse an option that is given twice where only the last would count."""
    given = Counter(word.partition("=")[0] for word in words if word.startswith("-"))
    for action in parser._actions:
        once = action.nargs != 0 and not isinstance(action, argparse._AppendAction)
        if once and sum(given[name] for name in action.option_strings) > 1:
            raise UsageError(f"{parser.prog}: {action.option_strings[-1]} is given twice")


def refuse_own_input(parser: argparse.ArgumentParser, options: argparse.Namespace) -> None:
    """Refuse to write over a file that is read, or was just written."""
    files = {name: getattr(options, name, None) for name in _WRITTEN | _READ}
    places = {name: _place(path) for name, path in files.items() if isinstance(path, str)}
    for name in sorted(_WRITTEN & places.keys()):
        for other in sorted(places.keys() - {name}):
            if places[name] == places[other]:
                what = "written" if other in _WRITTEN else "read"
                raise UsageError(
                    f"{parser.prog}: --{name} {files[name]} is {what} too: choose another name"
                )


def _place(path: str) -> str:
    try:
        return os.path.realpath(path)
    except ValueError:
        return path
