"""`backspring schema`: the shape of what a command prints with --json."""

from __future__ import annotations

import argparse

from backspring.cli.answer import Answer
from backspring.document.schemas import DATA, document_schema, schema_text
from backspring.report.tables import Lines, Report

HAS_UNITS = False


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add what the command takes."""
    parser.add_argument(
        "command",
        nargs="?",
        choices=tuple(DATA),
        metavar="COMMAND",
        help="as check; without it, which there are",
    )


def run(options: argparse.Namespace) -> Answer:
    """Print a command's JSON Schema."""
    if options.command is not None:
        schema = document_schema(options.command)
        return Answer("pass", schema, Report(schema_text(options.command), ()))
    lines = (*DATA, "of the design file: backspring keys --schema")
    report = Report("backspring schema COMMAND, of one of", (Lines("", lines),))
    return Answer("pass", {"commands": list(DATA)}, report)
