"""The design that a command is asked about: of a file, or of the standard input."""

from __future__ import annotations

import argparse
import sys

from backspring.design.design import Design
from backspring.design.load import LARGEST_BYTES, load, load_content
from backspring.faults import Fault, invalid

STANDARD_INPUT = "-"


def add_design(
    parser: argparse.ArgumentParser,
    name: str = "design",
    metavar: str = "DESIGN",
    *,
    optional: bool = False,
) -> None:
    """Add the argument, and where steels of one's own are."""
    parser.add_argument(
        name,
        nargs="?" if optional else None,
        metavar=metavar,
        help=f"design file (TOML); {STANDARD_INPUT} reads it from the standard input",
    )
    add_own_steels(parser)


def add_own_steels(parser: argparse.ArgumentParser) -> None:
    """Add the option, once for a command that takes two designs."""
    if "steels" not in {action.dest for action in parser._actions}:
        parser.add_argument(
            "--steels", metavar="FOLDER", help="steels of one's own: a folder of .toml files"
        )


def given_design(options: argparse.Namespace, name: str = "design") -> Design:
    """Load what an option names, once for a command, for the standard input comes only once."""
    loaded: dict[str, Design] = vars(options).setdefault("loaded", {})
    if name not in loaded:
        loaded[name] = _load(getattr(options, name))
    return loaded[name]


def _load(path: str) -> Design:
    if path != STANDARD_INPUT:
        return load(path)
    try:
        content = sys.stdin.buffer.read(LARGEST_BYTES + 1)
    except (OSError, AttributeError) as error:
        reason = getattr(error, "strerror", None) or "the standard input is closed"
        message = f"cannot be read: {reason.lower()}"
        raise invalid([Fault("unreadable", "", message, path)]) from None
    return load_content(content, path)
