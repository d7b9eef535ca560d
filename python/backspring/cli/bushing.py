"""`backspring bushing`: the turning test of a bushing that may not be round."""

from __future__ import annotations

import argparse

from backspring.cli.answer import Answer
from backspring.cli.values import units_of_given, with_unit
from backspring.question.bushing import turning_test
from backspring.report.bushing import bushing_report

_NOT_READ = "-"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add what the command takes."""
    for position in ("half-stop", "closed"):
        parser.add_argument(
            f"--{position}",
            nargs="+",
            metavar="READING",
            help=f"{position} against open, the bushing turned in the tang by none, one, two and "
            'three quarters; "-" where not read',
        )


def run(options: argparse.Namespace) -> Answer:
    """Work out what a round bushing would read."""
    found = turning_test(_read(options, "half_stop"), _read(options, "closed"))
    read = [*(options.half_stop or ()), *(options.closed or ())]
    units = units_of_given(options, (each for each in read if each != _NOT_READ))
    return Answer("pass", found.to_dict(), bushing_report(found, units))


def _read(options: argparse.Namespace, name: str) -> list[str | None]:
    """Read each; a bare number is in mm."""
    option = name.replace("_", "-")
    return [
        None if word == _NOT_READ else with_unit(word, "length", option, "mm", options.units)
        for word in getattr(options, name) or ()
    ]
