"""The command: `backspring COMMAND DESIGN [options]`.

Results go to stdout, errors to stderr. Exit code: 0 done and all targets met, 1 done and a target
missed, 2 wrong use or a bad file, 3 no solution found.
"""

from __future__ import annotations

import argparse
import importlib
import os
import re
import sys
from collections.abc import Callable, Sequence
from typing import Any, NoReturn

from backspring._core import __version__
from backspring.cli.answer import Answer, answer_json, error_json, print_report
from backspring.cli.values import shown_units
from backspring.errors import Error, Explained, NoConvergence
from backspring.faults import Fault, near_match

# Name, module and one line of help: a module is loaded only when its command is asked for.
COMMANDS = {
    "advise": ("backspring.cli.advise", "what to change so that a design meets its targets"),
    "bushing": ("backspring.cli.bushing", "what a round bushing would read, from four quarters"),
    "check": ("backspring.cli.check", "rests, strokes, stress, margins and readings of a design"),
    "compare": ("backspring.cli.compare", "what changes between two designs, and by what"),
    "fit": ("backspring.cli.fit", "what to leave unloaded, and what to take off which face"),
    "functions": ("backspring.cli.functions", "names of the Python package, each described"),
    "grind": ("backspring.cli.grind", "pull, stress, margin and readings against steel taken off"),
    "habits": (
        "backspring.cli.habits",
        "what the knives of a shop have in common",
    ),
    "keys": ("backspring.cli.keys", "keys of the design file: unit, range, default and meaning"),
    "load": ("backspring.cli.load", "what it takes to get the spring over the tang"),
    "plot": ("backspring.cli.plot", "pictures of a design to a PNG or SVG file"),
    "report": ("backspring.cli.report", "a design on one HTML page, to print or to hand on"),
    "size": ("backspring.cli.size", "sizes for a wanted pull and margin, or a taper"),
    "steels": ("backspring.cli.steels", "steels with their sources, and what a temper leaves"),
    "tolerance": (
        "backspring.cli.tolerance",
        "spread of pull, stress and readings for stated tolerances",
    ),
}
_EXIT = {"pass": 0, "fail": 1}
_BAD_USE = 2
_NO_SOLUTION = 3
_STOPPED = 130


class UsageError(Exception):
    """The command line cannot be understood."""


class _Parser(argparse.ArgumentParser):
    def __init__(self, **given: Any) -> None:
        super().__init__(**given)
        # A reading below zero with its unit, as -2thou, is a value and no option.
        self._negative_number_matcher = re.compile(r"-\.?\d")

    def error(self, message: str) -> NoReturn:
        raise UsageError(f"{self.prog}: {message}")


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command; returns its exit code."""
    try:
        code, show = _run(list(sys.argv[1:] if arguments is None else arguments))
    except KeyboardInterrupt:
        print("stopped", file=sys.stderr)
        return _STOPPED
    try:
        show()
        sys.stdout.flush()
    except BrokenPipeError:
        # The reader has seen enough; nothing more may be written, not even at exit.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
    return code


def _run(words: list[str]) -> tuple[int, Callable[[], None]]:
    """Work one command out; returns its exit code, and what prints its answer."""
    if not words or words[0] in ("-h", "--help"):
        return 0 if words else _BAD_USE, lambda: print(_help())
    if words[0] == "--version":
        return 0, lambda: print(f"backspring {__version__}")
    command, as_json = words[0], "--json" in words
    try:
        answer, options = _answer(command, words[1:])
    except UsageError as error:
        hint = f"backspring {command} --help" if command in COMMANDS else "backspring --help"
        faults, code = [Fault("usage", "", f"{error} (see {hint})")], _BAD_USE
    except NoConvergence as error:
        faults, code = [Fault("no-solution", "", str(error))], _NO_SOLUTION
    except Error as error:
        faults, code = _faults(error), _BAD_USE
    else:
        code = _EXIT[answer.status] if answer.found else _NO_SOLUTION
        return code, lambda: _show(command, answer, options)
    return code, lambda: _tell(command, as_json, faults)


def _answer(command: str, words: list[str]) -> tuple[Answer, argparse.Namespace]:
    if command not in COMMANDS:
        near = near_match(command, COMMANDS)
        hint = f'did you mean "{near}"?' if near else f"known are {', '.join(COMMANDS)}"
        raise UsageError(f'backspring: unknown command "{command}": {hint}')
    place, help_line = COMMANDS[command]
    module = importlib.import_module(place)
    parser = _Parser(prog=f"backspring {command}", description=help_line, allow_abbrev=False)
    module.add_arguments(parser)
    parser.add_argument("--json", action="store_true", help="print one JSON document")
    parser.add_argument("--units", choices=("mm", "in"), help="units of the output")
    parser.add_argument(
        "--no-color", dest="color", action="store_false", help="no colours on a terminal"
    )
    options = parser.parse_args(words)
    try:
        answer: Answer = module.run(options)
    except Explained as error:
        error.units = "mm" if options.json else shown_units(options)
        raise
    return answer, options


def _help() -> str:
    width = max(map(len, COMMANDS)) + 2
    lines = [f"  {name:<{width}}{help_line}" for name, (_, help_line) in COMMANDS.items()]
    return "\n".join(
        [
            "usage: backspring COMMAND DESIGN [options]",
            "",
            "Sizes and checks the spring of a slip-joint folding knife.",
            "",
            "commands:",
            *lines,
            "",
            "options: --json, --units mm|in, --no-color, --version",
            "backspring COMMAND --help tells what a command takes.",
        ]
    )


def _faults(error: Error) -> list[Fault]:
    faults = [each for each in getattr(error, "faults", ()) if isinstance(each, Fault)]
    return faults or [Fault("bad-value", "", str(error))]


def _show(command: str, answer: Answer, options: argparse.Namespace) -> None:
    if options.json:
        print(answer_json(command, answer))
    else:
        print_report(answer.report, options.color)


def _tell(command: str, as_json: bool, faults: list[Fault]) -> None:
    if as_json:
        print(error_json(command, faults))
    for fault in faults:
        print(fault, file=sys.stderr)
