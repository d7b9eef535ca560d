"""The streams that a command writes to: full, closed, or unable to write every letter."""

from __future__ import annotations

import os
import sys

# As typing has it, which takes as long to load as all of this.
TYPE_CHECKING = False
if TYPE_CHECKING:
    from argparse import Namespace
    from collections.abc import Callable
    from typing import TextIO


class CannotPrint(Exception):
    """The answer cannot be written to where it is to go."""


def printed(show: Callable[[], None]) -> None:
    """Print an answer to its last byte; raises CannotPrint, and BrokenPipeError as it comes."""
    if sys.stdout is None:
        raise CannotPrint("cannot write the answer: the standard output is closed")
    _keep_every_letter()
    try:
        show()
        sys.stdout.flush()
    except BrokenPipeError:
        raise
    except OSError as error:
        reason = (error.strerror or str(error)).lower()
        raise CannotPrint(f"cannot write the answer: {reason}") from None


def tell(line: str) -> None:
    """Write a line to the error stream, where there is one that takes it."""
    if sys.stderr is None:
        return
    try:
        print(line, file=sys.stderr, flush=True)
    except OSError:
        write_no_more(sys.stderr)


def write_no_more(stream: TextIO) -> None:
    """Let what is still held back for a stream go nowhere, at exit too."""
    try:
        nowhere = os.open(os.devnull, os.O_WRONLY)
        os.dup2(nowhere, stream.fileno())
        os.close(nowhere)
    except (OSError, AttributeError, ValueError):
        return


def has_colors(options: Namespace) -> bool:
    """Whether colours are wanted: neither --no-color nor NO_COLOR, and no dumb terminal."""
    wanted: bool = getattr(options, "color", True)
    dumb = os.environ.get("TERM") == "dumb"
    return wanted and not os.environ.get("NO_COLOR") and not dumb


def _keep_every_letter() -> None:
    """Write what the stream's encoding has not as its code, so that a name stops no answer."""
    if hasattr(sys.stdout, "reconfigure"):
        sys.stdout.reconfigure(errors="backslashreplace")
