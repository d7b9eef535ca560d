"""Refuses a command line that cannot be understood, or an option that would change nothing."""

from __future__ import annotations

import argparse
from collections import Counter


class UsageError(Exception):
    """The command line cannot be understood."""


def refuse_repeats(parser: argparse.ArgumentParser, words: list[str]) -> None:
    """Refuse an option that is given twice where only the last would count."""
    given = Counter(word.partition("=")[0] for word in words if word.startswith("-"))
    for action in parser._actions:
        once = action.nargs != 0 and not isinstance(action, argparse._AppendAction)
        if once and sum(given[name] for name in action.option_strings) > 1:
            raise UsageError(f"{parser.prog}: {action.option_strings[-1]} is given twice")
