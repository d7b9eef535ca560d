"""`backspring new`: a design file to start from."""

from __future__ import annotations

import argparse

from backspring.cli.answer import Answer
from backspring.layout.starter import new_design


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add what the command takes."""
    add = parser.add_argument
    add("--name", default="My pattern", help="name of the pattern")
    add("--steel", default="1075", help="steel of the spring (default: 1075)")
    add("--hardness", default="46", metavar="HRC", help="after its temper (default: 46)")
    add("--half-stop", choices=("yes", "no"), default="yes", help="(default: yes)")
    add("--pull", metavar="FORCE", help="wanted at the nail nick (default: 18 N, or 4 lbf)")
    add("-o", "--output", metavar="FILE", help="write it there; else it is printed")
    add("--force", action="store_true", help="write over a file that is there")


def run(options: argparse.Namespace) -> Answer:
    """Make the file; `--units` are those it is written in."""
    starter = new_design(
        options.output,
        name=options.name,
        units=options.units or "mm",
        steel=options.steel,
        hardness=options.hardness,
        half_stop=options.half_stop == "yes",
        pull=options.pull,
        force=options.force,
    )
    return Answer(starter.status, starter.to_dict(), starter.laid_out(), path=options.output)
