"""`backspring template`: spring, tang and liner holes at true size, to cut by."""

from __future__ import annotations

import argparse

from backspring.cli.answer import Answer
from backspring.cli.given_design import add_design, given_design
from backspring.cli.values import shown_units, with_unit
from backspring.outline.not_drawn import not_drawn
from backspring.outline.template import BARS
from backspring.outline.written import write_template
from backspring.report.tables import Lines, Report


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add what the command takes."""
    add_design(parser)
    add = parser.add_argument
    add("-o", "--output", metavar="FILE", required=True, help="FILE.svg, FILE.pdf or FILE.dxf")
    add("--kerf", metavar="LENGTH", default="0 mm", help="width of the cut (default: none)")
    add("--stock", metavar="LENGTH", default="0 mm", help="left to grind, drawn dashed")


def run(options: argparse.Namespace) -> Answer:
    """Write the file and answer with its size."""
    design = given_design(options)
    units = shown_units(options)
    kerf, stock = (
        with_unit(getattr(options, name), "length", name, design.units, options.units)
        for name in ("kerf", "stock")
    )
    drawn = write_template(design, options.output, kerf=kerf, stock=stock, units=units)
    data = {"output": options.output, "width_mm": drawn.width_mm, "height_mm": drawn.height_mm}
    headline = f"{design.title}: template written to {options.output}"
    checks = (
        f"print at 100 %, then measure the bar: it is {BARS[units][0][0]} long",
        "the blade is broken off at a zigzag: a design says nothing of its shape",
        *not_drawn(design, units),
    )
    return Answer(
        "pass", data, Report(headline, (Lines("Before cutting", checks),)), path=options.design
    )
