"""The command: `backspring COMMAND DESIGN [options]`.

Results go to stdout, errors to stderr. Exit code: 0 done and all targets met, 1 done and a target
missed, 2 wrong use or a bad file, 3 no solution found.
"""

from __future__ import annotations

import argparse
import importlib
import re
import sys
from argparse import Namespace
from collections.abc import Callable, Iterator, Sequence
from functools import partial
from typing import Any, NoReturn

from backspring._core import __version__
from backspring.cli.answer import Answer, answer_json, error_json, print_report
from backspring.cli.streams import CannotPrint, has_colors, printed, tell, write_no_more
from backspring.cli.usage import UsageError, refuse_repeats
from backspring.cli.values import shown_units
from backspring.cli.watch import changes
from backspring.errors import Error, Explained, NoConvergence
from backspring.faults import Fault, near_match, told

# Name, module and one line of help: a module is loaded only when its command is asked for.
COMMANDS = {
    "advise": ("backspring.cli.advise", "what to change so that a design meets its targets"),
    "bushing": ("backspring.cli.bushing", "what a round bushing would read, from four quarters"),
    "card": ("backspring.cli.card", "a page for the bench: outlines, readings, passes to tick"),
    "check": ("backspring.cli.check", "rests, strokes, stress, margins and readings of a design"),
    "codes": ("backspring.cli.codes", "codes of diagnostics with their severity"),
    "compare": ("backspring.cli.compare", "what changes between two designs, and by what"),
    "completion": ("backspring.cli.completion", "a script that lets a shell complete all this"),
    "fit": ("backspring.cli.fit", "what to leave unloaded, and what to take off which face"),
    "functions": ("backspring.cli.functions", "names of the Python package, each described"),
    "grind": ("backspring.cli.grind", "pull, stress, margin and readings against steel taken off"),
    "habits": (
        "backspring.cli.habits",
        "what the knives of a shop have in common",
    ),
    "keys": ("backspring.cli.keys", "keys of the design file: unit, range, default and meaning"),
    "layout": ("backspring.cli.layout", "a whole design file for a new joint"),
    "load": ("backspring.cli.load", "what it takes to get the spring over the tang"),
    "new": ("backspring.cli.new", "a commented design file to start from"),
    "outline": ("backspring.cli.outline", "a design file out of a drawing of its parts"),
    "plot": ("backspring.cli.plot", "pictures of a design to a PNG or SVG file"),
    "report": ("backspring.cli.report", "a design on one HTML page, to print or to hand on"),
    "schema": ("backspring.cli.schema", "shape of what a command prints with --json"),
    "size": ("backspring.cli.size", "sizes for a wanted pull and margin, or a taper"),
    "steels": ("backspring.cli.steels", "steels with their sources, and what a temper leaves"),
    "template": ("backspring.cli.template", "spring, tang and liner holes at true size, to cut by"),
    "tolerance": (
        "backspring.cli.tolerance",
        "spread of pull, stress and readings for stated tolerances",
    ),
}
_EXIT = {"pass": 0, "fail": 1}
_BAD_USE = 2
_NO_SOLUTION = 3
_STOPPED = 130
_Shown = tuple[int, Callable[[], None]]


class _Help(Exception):
    """A command's help is asked for."""


class _Parser(argparse.ArgumentParser):
    def __init__(self, **given: Any) -> None:
        super().__init__(**given)
        # A reading below zero with its unit, as -2thou, is a value and no option.
        self._negative_number_matcher = re.compile(r"-\.?\d")

    def print_help(self, file: Any = None) -> NoReturn:
        # Printed where all answers are, so that a full device is told of.
        raise _Help(self.format_help())

    def error(self, message: str) -> NoReturn:
        raise UsageError(f"{self.prog}: {message}")


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command; returns its exit code."""
    code = _BAD_USE
    try:
        for answered, show in _answers(list(sys.argv[1:] if arguments is None else arguments)):
            code = answered
            printed(show)
    except KeyboardInterrupt:
        tell("stopped")
        return _STOPPED
    except BrokenPipeError:
        # The reader has seen enough.
        write_no_more(sys.stdout)
    except CannotPrint as error:
        write_no_more(sys.stdout)
        tell(f"backspring: {error}")
        return _BAD_USE
    return code


def entry() -> int:
    """Run the command that was typed; whatever goes wrong, 1 says only that a target is missed."""
    try:
        return main()
    except MemoryError:
        tell("backspring: there is not enough memory for this")
    except Exception:
        from traceback import format_exc

        tell(f"{format_exc()}backspring: a fault of the program, none of yours")
    return _BAD_USE


def _answers(words: list[str]) -> Iterator[_Shown]:
    """Work a command out, once or as often as it is asked again: exit code and what prints it."""
    if not words or words[0] in ("-h", "--help"):
        yield 0 if words else _BAD_USE, lambda: print(_help())
    elif words[0] == "--version":
        yield 0, lambda: print(f"backspring {__version__}")
    else:
        command, as_json = words[0], "--json" in words
        try:
            parser = parser_of(command)
            refuse_repeats(parser, words[1:])
            options = parser.parse_args(words[1:])
            rounds = changes(options)
        except _Help as help_asked:
            yield 0, partial(print, help_asked, end="")
            return
        except UsageError as error:
            yield _BAD_USE, partial(_tell, command, as_json, [_usage(command, error)])
            return
        for _ in rounds:
            yield _answer(command, Namespace(**vars(options)))


def _answer(command: str, options: Namespace) -> _Shown:
    """Run a command once; returns its exit code, and what prints its answer."""
    module = importlib.import_module(COMMANDS[command][0])
    try:
        if getattr(options, "steels", None) is not None:
            importlib.import_module("backspring.design.own_steels").add_steels(options.steels)
        answer: Answer = module.run(options)
    except UsageError as error:
        faults, code = [_usage(command, error)], _BAD_USE
    except NoConvergence as error:
        faults, code = [Fault("no-solution", "", _worded(error, options))], _NO_SOLUTION
    except Error as error:
        faults, code = _faults(error, options), _BAD_USE
    else:
        code = _EXIT[answer.status] if answer.found else _NO_SOLUTION
        return code, partial(_show, command, answer, options)
    return code, partial(_tell, command, options.json, faults)


def parser_of(command: str) -> argparse.ArgumentParser:
    """Make the parser of a command; raises UsageError where there is no such command."""
    if command not in COMMANDS:
        near = near_match(command, COMMANDS)
        hint = f'did you mean "{near}"?' if near else f"known are {', '.join(COMMANDS)}"
        raise UsageError(f'backspring: unknown command "{command}": {hint}')
    place, help_line = COMMANDS[command]
    parser = _Parser(prog=f"backspring {command}", description=help_line, allow_abbrev=False)
    parser.set_defaults(units=None)
    module = importlib.import_module(place)
    module.add_arguments(parser)
    parser.add_argument("--json", action="store_true", help="print one JSON document")
    if getattr(module, "HAS_UNITS", True):
        parser.add_argument("--units", choices=("mm", "in"), help="units of what is printed")
    parser.add_argument(
        "--no-color", dest="color", action="store_false", help="no colours on a terminal"
    )
    return parser


def _usage(command: str, error: UsageError) -> Fault:
    hint = f"backspring {command} --help" if command in COMMANDS else "backspring --help"
    return Fault("usage", "", f"{error} (see {hint})")


def _worded(error: Error, options: Namespace) -> str:
    if isinstance(error, Explained):
        error.units = "mm" if options.json else shown_units(options)
    return str(error)


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


def _faults(error: Error, options: Namespace) -> list[Fault]:
    faults = [each for each in getattr(error, "faults", ()) if isinstance(each, Fault)]
    return faults or [Fault("bad-value", "", _worded(error, options))]


def _show(command: str, answer: Answer, options: Namespace) -> None:
    if options.json:
        print(answer_json(command, answer))
    else:
        print_report(answer.report, has_colors(options))


def _tell(command: str, as_json: bool, faults: list[Fault]) -> None:
    if as_json:
        print(error_json(command, faults))
    for line in told(faults):
        tell(line)
