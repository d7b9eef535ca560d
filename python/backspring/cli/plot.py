"""`backspring plot`: pictures of a design as PNG or SVG."""

from __future__ import annotations

import argparse
from typing import Any

from backspring import Design, check, load
from backspring.cli import UsageError
from backspring.cli.answer import Answer
from backspring.cli.pictures import write_picture
from backspring.report.tables import Report

# Written out here, so that --help also answers without matplotlib.
_KINDS = ("sheet", "positions", "stress", "action", "back")
_AT_AN_ANGLE = ("positions", "stress")
_OF_TWO_BLADES = ("sheet", "positions")


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add what the command takes."""
    parser.add_argument("design", metavar="DESIGN", help="design file (TOML)")
    parser.add_argument("--output", required=True, metavar="FILE", help="FILE.png or FILE.svg")
    parser.add_argument(
        "--kind", choices=_KINDS, default="sheet", help="what to draw (default: sheet, all of it)"
    )
    parser.add_argument(
        "--angle",
        type=float,
        metavar="DEG",
        help="blade angle, 0 closed and 180 open, for positions or stress",
    )


def run(options: argparse.Namespace) -> Answer:
    """Draw a design file into a picture."""
    if options.angle is not None and options.kind not in _AT_AN_ANGLE:
        kinds = " or ".join(f"--kind {kind}" for kind in _AT_AN_ANGLE)
        raise UsageError(f"backspring plot: --angle goes with {kinds}")
    design = load(options.design)
    write_picture(options.output, lambda picture: _draw(picture, design, options))
    name = design.name
    return Answer(
        "pass",
        {"design": {"name": name}, "kind": options.kind, "output": options.output},
        Report(f"{name}: {options.kind} drawn in {options.output}", ()),
        path=options.design,
    )


def _draw(picture: Any, design: Design, options: argparse.Namespace) -> Any:
    at = {} if options.angle is None else {"blade_angle_deg": options.angle}
    return picture.plot(check(design), options.kind, units=options.units, **at)
