"""`backspring check`: what a design does, and whether it meets its targets."""

from __future__ import annotations

import argparse

from backspring import BladesCheck, check
from backspring.cli import uniform_spring
from backspring.cli.answer import Answer
from backspring.cli.given_design import add_design
from backspring.cli.of_knife import add_log, asked_of, with_knife
from backspring.cli.usage import UsageError
from backspring.cli.watch import add_watch
from backspring.report.check import check_report


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add what the command takes."""
    add_design(parser, optional=True)
    parser.add_argument("--all", action="store_true", help="show every margin of the verdict")
    add_watch(parser)
    add_log(parser)
    uniform_spring.add_arguments(parser)


def run(options: argparse.Namespace) -> Answer:
    """Check a design file, or a uniform spring from the few numbers given as options."""
    given = uniform_spring.given(options)
    if options.design is not None and given:
        raise UsageError(f"backspring check: give a design file or {', '.join(given)}, not both")
    for name in ("log", "habits", "blade"):
        if options.design is None and getattr(options, name) is not None:
            raise UsageError(f"backspring check: --{name} goes with a design file")
    knives = None
    if options.design is not None:
        design, knives = asked_of(options)
    else:
        design = uniform_spring.make_design(options)
    result = check(design)
    # Only JSON shows all of it.
    data = result.to_dict() if options.json else {}
    if isinstance(result, BladesCheck):
        from backspring.report.check_blades import check_blades_report

        blades = check_blades_report(result, options.units, options.all)
        answer = Answer(result.status, data, blades, result.notices, options.design)
        return with_knife(answer, knives, options)
    assumed: tuple[str, ...] = ()
    if options.design is None:
        if data:
            data["defaults"] = [*uniform_spring.assumed("mm"), *data["defaults"]]
        assumed = uniform_spring.assumed(options.units or design.units)
    report = check_report(result, options.units, assumed, options.all)
    answer = Answer(result.status, data, report, result.notices, options.design)
    return with_knife(answer, knives, options)
