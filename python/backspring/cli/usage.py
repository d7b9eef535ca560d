"""Refuses a command line that cannot be understood, or an option that would change nothing."""

from __future__ import annotations

import argparse
import os
from collections import Counter

_WRITTEN = {"output", "picture"}


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
    texts = {name: each for name, each in vars(options).items() if isinstance(each, str)}
    for name in _WRITTEN & texts.keys():
        for other in texts.keys() - {name}:
            if _place(texts[name]) == _place(texts[other]):
                what = "written" if other in _WRITTEN else "read"
                raise UsageError(
                    f"{parser.prog}: --{name} {texts[name]} is {what} too: choose another name"
                )


def _place(path: str) -> str:
    try:
        return os.path.realpath(path)
    except ValueError:
        return path
