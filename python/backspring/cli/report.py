"""`backspring report`: a design on one HTML page, to read, to print or to hand on."""

from __future__ import annotations

import argparse

from backspring.cli.answer import Answer
from backspring.cli.given_design import add_design
from backspring.cli.of_blades import chosen
from backspring.cli.of_knife import add_log, asked_of
from backspring.report.page import page
from backspring.report.tables import Report


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add what the command takes."""
    add_design(parser)
    parser.add_argument("-o", "--output", required=True, metavar="FILE", help="FILE.html")
    add_log(parser)


def run(options: argparse.Namespace) -> Answer:
    """Write the page; its answer is that of the check."""
    design, knives = asked_of(options)
    made = page(knives.first if knives else chosen(design, options), options.output, options.units)
    data = {"design": {"name": made.name}, "output": options.output, **made.to_dict()}
    count = len(made.sections)
    report = Report(f"{made.name}: {count} sections written to {options.output}", ())
    return Answer(made.status, data, report, path=options.design)
