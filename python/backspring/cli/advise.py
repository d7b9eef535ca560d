"""`backspring advise`: what to change so that a design meets all its targets."""

from __future__ import annotations

import argparse

from backspring.cli.answer import Answer
from backspring.cli.given_design import add_design
from backspring.cli.of_knife import add_log, asked_of, with_knife
from backspring.question.advise import advise
from backspring.report.advise import advise_report


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add what the command takes."""
    add_design(parser)
    parser.add_argument("--all", action="store_true", help="show every way that was found")
    add_log(parser)


def run(options: argparse.Namespace) -> Answer:
    """Advise on a design file; of several blades all are judged, and --blade is what may change."""
    design, knives = asked_of(options)
    advised = advise(design, options.units)
    report = advise_report(advised, options.units, options.all)
    answer = Answer(
        advised.status, advised.to_dict(), report, path=options.design, found=advised.found
    )
    return with_knife(answer, knives, options)
