"""Runs a command that is known by its name, and prints its answer or what is wrong."""

from __future__ import annotations

from argparse import Namespace
from collections.abc import Callable, Iterator
from functools import partial
from importlib import import_module

from backspring.cli.answer import Answer, answer_json, error_json, print_report
from backspring.cli.commands import COMMANDS
from backspring.cli.parsing import HelpAsked, parser_of
from backspring.cli.streams import has_colors, tell
from backspring.cli.usage import UsageError, refuse_own_input, refuse_repeats
from backspring.cli.values import shown_units
from backspring.cli.watch import changes
from backspring.errors import Error, Explained, NoConvergence
from backspring.faults import Fault, told

_EXIT = {"pass": 0, "fail": 1}
_BAD_USE = 2
_NO_SOLUTION = 3
_Shown = tuple[int, Callable[[], None]]


def answers(words: list[str]) -> Iterator[_Shown]:
    """Work a command out, once or as often as it is asked again: exit code and what prints it."""
    command, as_json = words[0], "--json" in words
    try:
        parser = parser_of(command)
        refuse_repeats(parser, words[1:])
        options = parser.parse_args(words[1:])
        refuse_own_input(parser, options)
        rounds = changes(options)
    except HelpAsked as help_asked:
        yield 0, partial(print, help_asked, end="")
        return
    except UsageError as error:
        yield _BAD_USE, partial(_tell, command, as_json, [_usage(command, error)])
        return
    for _ in rounds:
        yield _answer(command, Namespace(**vars(options)))


def _answer(command: str, options: Namespace) -> _Shown:
    """Run a command once; returns its exit code, and what prints its answer."""
    module = import_module(COMMANDS[command][0])
    try:
        if getattr(options, "steels", None) is not None:
            import_module("backspring.design.own_steels").add_steels(options.steels)
        answer: Answer = module.run(options)
        show = _shown(command, answer, options)
    except UsageError as error:
        faults, code = [_usage(command, error)], _BAD_USE
    except NoConvergence as error:
        faults, code = [Fault("no-solution", "", _worded(error, options))], _NO_SOLUTION
    except Error as error:
        faults, code = _faults(error, options), _BAD_USE
    else:
        code = _EXIT[answer.status] if answer.found else _NO_SOLUTION
        return code, show
    return code, partial(_tell, command, options.json, faults)


def _usage(command: str, error: UsageError) -> Fault:
    hint = f"backspring {command} --help" if command in COMMANDS else "backspring --help"
    return Fault("usage", "", f"{error} (see {hint})")


def _worded(error: Error, options: Namespace) -> str:
    if isinstance(error, Explained):
        error.units = "mm" if options.json else shown_units(options)
    return str(error)


def _faults(error: Error, options: Namespace) -> list[Fault]:
    faults = [each for each in getattr(error, "faults", ()) if isinstance(each, Fault)]
    return faults or [Fault("bad-value", "", _worded(error, options))]


def _shown(command: str, answer: Answer, options: Namespace) -> Callable[[], None]:
    if options.json:
        return partial(print, answer_json(command, answer))
    return partial(print_report, answer.report, has_colors(options))


def _tell(command: str, as_json: bool, faults: list[Fault]) -> None:
    if as_json:
        print(error_json(command, faults))
    for line in told(faults):
        tell(line)
