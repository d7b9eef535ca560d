"""`backspring plot`: pictures of a design as PNG or SVG."""

from __future__ import annotations

import argparse
from typing import Any

from backspring import Design, check
from backspring.cli.answer import Answer
from backspring.cli.given_design import add_design, given_design
from backspring.cli.of_blades import add_blade, chosen
from backspring.cli.pictures import write_picture
from backspring.cli.usage import UsageError
from backspring.report.tables import Report

# Written out here, so that --help also answers without matplotlib.
_KINDS = ("sheet", "positions", "stress", "action", "back")
_AT_AN_ANGLE = ("positions", "stress")


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add what the command takes."""
    add_design(parser)
    parser.add_argument("--output", required=True, metavar="FILE", help="FILE.png or FILE.svg")
    parser.add_argument(
        "--kind", choices=_KINDS, default="sheet", help="what to draw (default: sheet, all of it)"
    )
    parser.add_argument(
        "--angle",
        type=float,
        metavar="DEG",
        help="blade angle, 0 closed and 180 open, for positions or stress; of several blades with "
        "--blade",
    )
    add_blade(parser)


def run(options: argparse.Namespace) -> Answer:
    """Draw a design file into a picture."""
    if options.angle is not None and options.kind not in _AT_AN_ANGLE:
        kinds = " or ".join(f"--kind {kind}" for kind in _AT_AN_ANGLE)
        raise UsageError(f"backspring plot: --angle goes with {kinds}")
    design = given_design(options)
    if options.angle is not None and chosen(design, options).of_all_blades:
        names = ", ".join(design.blades)
        raise UsageError(f"backspring plot: --angle needs --blade, one of {names}")
    write_picture(options.output, lambda picture: _draw(picture, design, options))
    name, of = design.name, {} if options.blade is None else {"blade": options.blade}
    return Answer(
        "pass",
        {"design": {"name": name}, **of, "kind": options.kind, "output": options.output},
        Report(f"{name}: {options.kind} drawn in {options.output}", ()),
        path=options.design,
    )


def _draw(picture: Any, design: Design, options: argparse.Namespace) -> Any:
    """Of several blades all, or the one that is asked for on the whole spring."""
    asked = {"blade_angle_deg": options.angle, "blade": options.blade}
    if not design.of_all_blades:
        design, asked["blade"] = chosen(design, options), None
    given = {name: value for name, value in asked.items() if value is not None}
    return picture.plot(check(design), options.kind, units=options.units, **given)
