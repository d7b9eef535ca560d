"""`backspring codes`: codes of diagnostics with their severity, or one of them."""

from __future__ import annotations

import argparse

from backspring.cli.answer import Answer
from backspring.cli.usage import UsageError
from backspring.faults import Fault, invalid, near_match
from backspring.report.codes import CODES, codes_data, codes_reference, codes_report
from backspring.report.tables import Report

HAS_UNITS = False


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add what the command takes."""
    parser.add_argument("code", nargs="?", metavar="CODE", help="as yields; without it, all")
    parser.add_argument("--reference", action="store_true", help="print them as Markdown")


def run(options: argparse.Namespace) -> Answer:
    """Describe the codes."""
    if options.reference and options.code is not None:
        raise UsageError("backspring codes: give one of CODE and --reference")
    if options.reference:
        text = codes_reference()
        return Answer("pass", {"reference": text}, Report(text.rstrip(), ()))
    if options.code is None:
        return Answer("pass", {"codes": codes_data()}, codes_report())
    if options.code not in CODES:
        near = near_match(options.code, CODES)
        hint = f': did you mean "{near}"?' if near else ""
        raise invalid([Fault("unknown-name", options.code, f"no such code{hint}")])
    (data,) = (each for each in codes_data() if each["code"] == options.code)
    line = f"{data['code']}, {data['severity']}: {data['meaning']}"
    return Answer("pass", {"codes": [data]}, Report(line, ()))
