"""The command: `backspring COMMAND DESIGN [options]`.

Results go to stdout, errors to stderr. Exit code: 0 done and all targets met, 1 done and a target
missed, 2 wrong use or a bad file, 3 no solution found.

What a command needs is loaded only once it is known which one is asked for: a version or a check of
a file should not wait for the rest.
"""

from __future__ import annotations

import gc
import sys

from backspring.cli.commands import COMMANDS
from backspring.cli.streams import CannotPrint, printed, tell, write_no_more

# As typing has it, which takes as long to load as all of this.
TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse
    from collections.abc import Callable, Iterator, Sequence

__all__ = ["COMMANDS", "entry", "main", "parser_of"]
_BAD_USE = 2
_STOPPED = 130
_MANY_OBJECTS = 100_000


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
    # What is loaded stays: to look through it for rubbish, now and then and once more at the end,
    # takes a sixth of a check.
    gc.set_threshold(_MANY_OBJECTS)
    try:
        return main()
    except MemoryError:
        tell("backspring: there is not enough memory for this")
    except Exception as error:
        # Ctrl-C while the core is loaded, or a class made, comes as the cause of something else.
        if isinstance(error.__cause__, KeyboardInterrupt):
            tell("stopped")
            return _STOPPED
        from traceback import format_exc

        tell(f"{format_exc()}backspring: a fault of the program, none of yours")
    finally:
        gc.freeze()
    return _BAD_USE


def parser_of(command: str) -> argparse.ArgumentParser:
    """Make the parser of a command; raises UsageError where there is no such command."""
    from backspring.cli import parsing

    return parsing.parser_of(command)


def _answers(words: list[str]) -> Iterator[tuple[int, Callable[[], None]]]:
    """Work a command out, once or as often as it is asked again: exit code and what prints it."""
    if not words or words[0] in ("-h", "--help"):
        yield 0 if words else _BAD_USE, lambda: print(_help())
    elif words[0] == "--version":
        from backspring._core import __version__

        yield 0, lambda: print(f"backspring {__version__}")
    else:
        from backspring.cli.running import answers

        yield from answers(words)


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
