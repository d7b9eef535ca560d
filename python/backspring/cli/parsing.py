"""Makes the parser of the one command that is asked for."""

from __future__ import annotations

import argparse
import os
import re
import sys
from importlib import import_module
from typing import Any, NoReturn

from backspring.cli.commands import COMMANDS
from backspring.cli.usage import UsageError
from backspring.faults import near_match


class HelpAsked(Exception):
    """A command's help is asked for."""


class _Parser(argparse.ArgumentParser):
    def __init__(self, **given: Any) -> None:
        super().__init__(**given)
        # A reading below zero with its unit, as -2thou, is a value and no option.
        self._negative_number_matcher = re.compile(r"-\.?\d")

    def print_help(self, file: Any = None) -> NoReturn:
        # Printed where all answers are, so that a full device is told of.
        raise HelpAsked(self.format_help())

    def _get_formatter(self) -> argparse.HelpFormatter:
        # Else the library loads much to learn the width, even where no help is asked for.
        return argparse.HelpFormatter(prog=self.prog, width=_columns() - 2)

    def error(self, message: str) -> NoReturn:
        raise UsageError(f"{self.prog}: {message}")


def parser_of(command: str) -> argparse.ArgumentParser:
    """Make the parser of a command; raises UsageError where there is no such command."""
    if command not in COMMANDS:
        near = near_match(command, COMMANDS)
        hint = f'did you mean "{near}"?' if near else f"known are {', '.join(COMMANDS)}"
        raise UsageError(f'backspring: unknown command "{command}": {hint}')
    place, help_line = COMMANDS[command]
    parser = _Parser(prog=f"backspring {command}", description=help_line, allow_abbrev=False)
    parser.set_defaults(units=None)
    module = import_module(place)
    module.add_arguments(parser)
    parser.add_argument("--json", action="store_true", help="print one JSON document")
    if getattr(module, "HAS_UNITS", True):
        parser.add_argument("--units", choices=("mm", "in"), help="units of what is printed")
    parser.add_argument(
        "--no-color", dest="color", action="store_false", help="no colours on a terminal"
    )
    return parser


def _columns() -> int:
    """Width of the terminal."""
    try:
        return int(os.environ["COLUMNS"])
    except (KeyError, ValueError):
        pass
    try:
        return os.get_terminal_size(sys.__stdout__.fileno()).columns or 80  # type: ignore[union-attr]
    except (AttributeError, ValueError, OSError):
        return 80
