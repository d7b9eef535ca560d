"""`backspring compare`: what changes from one design to another, and by which dimension."""

from __future__ import annotations

import argparse
from typing import Any

from backspring import Design
from backspring.cli.answer import Answer
from backspring.cli.given_design import STANDARD_INPUT, add_design, given_design
from backspring.cli.of_blades import chosen
from backspring.cli.of_knife import add_log, asked_of
from backspring.cli.pictures import write_picture
from backspring.cli.usage import UsageError
from backspring.cli.values import with_unit
from backspring.question.compare import BladesComparison, compare
from backspring.question.grind import grind
from backspring.report.compare import blades_comparison_report, comparison_report


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add what the command takes."""
    add_design(parser, metavar="A")
    add_design(parser, "other", "B", optional=True)
    parser.add_argument(
        "--ground",
        nargs=2,
        metavar=("FACE", "DEPTH"),
        help='instead of B: A with back, belly or pad ground, as --ground back "0.1 mm"',
    )
    parser.add_argument("--all", action="store_true", help="show every figure")
    add_log(parser)
    parser.add_argument("--output", metavar="FILE", help="both pull curves to FILE.png or FILE.svg")


def run(options: argparse.Namespace) -> Answer:
    """Compare a design with another, with itself ground, or with the knife made from it."""
    first, second = _asked(options)
    if options.blade is not None and not (first.of_all_blades or second.of_all_blades):
        # Refuses a name that is not the one blade's.
        first, second = chosen(first, options), chosen(second, options)
    found = compare(*(_of_blade(each, options) for each in (first, second)))
    data: dict[str, Any] = found.to_dict()
    if options.output is not None:
        write_picture(options.output, lambda picture: picture.plot(found, units=options.units))
        data["output"] = options.output
    units = options.units
    report = (
        blades_comparison_report(found, units, options.all)
        if isinstance(found, BladesComparison)
        else comparison_report(found, units, options.all)
    )
    return Answer(found.status, data, report, (), options.design)


def _of_blade(design: Design, options: argparse.Namespace) -> Design:
    """See a design from the blade that was asked for; one blade alone is held beside any."""
    return chosen(design, options) if design.of_all_blades else design


def _asked(options: argparse.Namespace) -> tuple[Design, Design]:
    others = (options.other, options.ground, options.log)
    if sum(each is not None for each in others) != 1:
        raise UsageError("backspring compare: give one of B, --ground FACE DEPTH, --log FILE")
    if options.design == options.other == STANDARD_INPUT:
        raise UsageError("backspring compare: only one design can come from the standard input")
    design = given_design(options)
    if options.log is not None:
        knife, _ = asked_of(options)
        if len(knife.blades) > 1:
            # Others as built stand beside this blade, which a changed copy would not keep.
            return design, knife
        return design, knife.replace(name=f"{design.name}, this knife")
    if options.habits is not None:
        raise UsageError("backspring compare: --habits goes with --log FILE")
    if options.other is not None:
        return design, given_design(options, "other")
    face, written = options.ground
    if face not in ("back", "belly", "pad"):
        raise UsageError(f"backspring compare: --ground back, belly or pad, got {face}")
    depth = with_unit(written, "length", "ground", design.units, options.units)
    ground = grind(design, **{face: depth})
    return design, ground.replace(name=f"{design.name}, {face} ground")
