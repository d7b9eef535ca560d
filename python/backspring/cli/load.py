"""`backspring load`: what it takes to get the spring over the tang."""

from __future__ import annotations

import argparse

from backspring import Design
from backspring.cli.answer import Answer
from backspring.cli.given_design import add_design, given_design
from backspring.cli.of_blades import add_blade, for_each_blade, picture_of
from backspring.cli.pictures import write_picture
from backspring.cli.values import with_unit
from backspring.question.load_spring import CLEARANCE, load_spring
from backspring.report.load_spring import loading_report


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add what the command takes."""
    add = parser.add_argument
    add_design(parser)
    add(
        "--at",
        metavar="STATION",
        help="where hook, pin or clamp pulls (default: the nearest behind the open tang)",
    )
    add(
        "--clearance",
        metavar="LENGTH",
        help=f"between pad and tang as it goes under (default: {CLEARANCE})",
    )
    add(
        "--lever",
        metavar="LENGTH",
        help="for the other way in, rear pin last: middle pin to hand along a bar",
    )
    add_blade(parser)
    add("--output", metavar="FILE", help="force against station to FILE.png or FILE.svg")


def run(options: argparse.Namespace) -> Answer:
    """Answer with force, movement, stress and pin forces; bare numbers in the design's units."""
    return for_each_blade(given_design(options), options, lambda each: _answer(options, each))


def _answer(options: argparse.Namespace, design: Design) -> Answer:
    def read(name: str) -> str | None:
        written = getattr(options, name)
        if written is None:
            return None
        return with_unit(written, "length", name, design.units, options.units)

    found = load_spring(design, read("at"), read("clearance") or CLEARANCE, read("lever"))
    data = found.to_dict()
    if options.output is not None:
        data["output"] = output = picture_of(options, design)
        write_picture(output, lambda picture: picture.plot(found, units=options.units))
    report = loading_report(found, options.units)
    return Answer(found.status, data, report, found.notices, options.design)
