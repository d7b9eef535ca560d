"""`backspring functions`: what the Python package offers, or one name of it."""

from __future__ import annotations

import argparse

from backspring.cli.answer import Answer
from backspring.cli.usage import UsageError
from backspring.faults import Fault, invalid, near_match
from backspring.report.functions import functions_reference, functions_report, names
from backspring.report.tables import Report

HAS_UNITS = False


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add what the command takes."""
    parser.add_argument("name", nargs="?", metavar="NAME", help="as check; without it, all")
    parser.add_argument(
        "--reference", action="store_true", help="print all of them whole, as Markdown"
    )


def run(options: argparse.Namespace) -> Answer:
    """Describe the names."""
    if options.reference and options.name is not None:
        raise UsageError("backspring functions: give one of NAME and --reference")
    if options.reference:
        text = functions_reference()
        return Answer("pass", {"reference": text}, Report(text.rstrip(), ()))
    if options.name is not None and options.name not in names():
        near = near_match(options.name, names())
        hint = f': did you mean "{near}"?' if near else ""
        raise invalid([Fault("unknown-name", options.name, f"no name of the package{hint}")])
    report = functions_report(options.name)
    return Answer("pass", {"names": [options.name] if options.name else names()}, report)
