"""`backspring card`: a page for the bench with outlines, readings, passes to tick and levers."""

from __future__ import annotations

import argparse

from backspring.cli.answer import Answer
from backspring.cli.given_design import add_design, given_design
from backspring.cli.of_blades import add_blade, chosen
from backspring.cli.values import with_unit
from backspring.report.card_files import write_card
from backspring.report.tables import Report


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add what the command takes."""
    add_design(parser)
    add = parser.add_argument
    add("-o", "--output", metavar="FILE", required=True, help="FILE.html or FILE.pdf")
    add("--half-stop", metavar="READING", help="read at half-stop, rear pin out")
    add("--closed", metavar="READING", help="read at closed, rear pin out")
    add_blade(parser)


def run(options: argparse.Namespace) -> Answer:
    """Write the card."""
    design = chosen(given_design(options), options)

    def read(name: str) -> str | None:
        written = getattr(options, name)
        if written is None:
            return None
        option = name.replace("_", "-")
        return with_unit(written, "length", option, design.units, options.units)

    made = write_card(
        design,
        options.output,
        half_stop=read("half_stop"),
        closed=read("closed"),
        units=options.units,
    )
    count = len(made.cards)
    pages = f"{count} pages" if count > 1 else "one page"
    data = {"design": design.identity(), "output": options.output, **made.to_dict()}
    report = Report(f"{made.name}: bench card of {pages} written to {options.output}", ())
    return Answer("pass", data, report, path=options.design)
