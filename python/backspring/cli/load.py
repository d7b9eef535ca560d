"""`backspring load`: what it takes to get the spring over the tang."""

from __future__ import annotations

import argparse

from backspring import load
from backspring.cli.answer import Answer
from backspring.cli.pictures import write_picture
from backspring.cli.values import with_unit
from backspring.question.load_spring import CLEARANCE, load_spring
from backspring.report.load_spring import loading_report


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add what the command takes."""
    add = parser.add_argument
    add("design", metavar="DESIGN", help="design file (TOML)")
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
    add("--output", metavar="FILE", help="force against station to FILE.png or FILE.svg")


def run(options: argparse.Namespace) -> Answer:
    """Answer with force, movement, stress and pin forces; a bare number is in the units shown."""
    design = load(options.design)
    units = options.units or design.units

    def read(name: str) -> str | None:
        written = getattr(options, name)
        return None if written is None else with_unit(written, "length", name, units)

    found = load_spring(design, read("at"), read("clearance") or CLEARANCE, read("lever"))
    data = found.to_dict()
    if options.output is not None:
        write_picture(options.output, lambda picture: picture.plot(found, units=options.units))
        data["output"] = options.output
    report = loading_report(found, options.units)
    return Answer(found.status, data, report, found.notices, options.design)
