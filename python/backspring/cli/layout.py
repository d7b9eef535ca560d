"""`backspring layout`: a whole design file for a new joint."""

from __future__ import annotations

import argparse
from typing import Any

from backspring.cli.answer import Answer
from backspring.cli.usage import UsageError
from backspring.cli.values import units_of_given
from backspring.errors import NoConvergence
from backspring.new_joint.layout import layout
from backspring.new_joint.request import MEANINGS
from backspring.report.layout import refusal

_NEEDED = {
    "blade": ("LENGTH", "what stands out of the handle, open"),
    "handle": ("LENGTH", "length of the handle"),
    "height": ("LENGTH", "height of the handle, spring's back to rim"),
    "stock": ("LENGTH", "width of the spring, from liner to liner"),
    "steel": ("STEEL", "steel of the spring"),
    "hardness": ("HRC", "after its temper"),
    "pull": ("FORCE", 'wanted at the nail nick, as "4 lbf"; a fifth more or less will do'),
}
_MORE = {
    "openings": ("N", "that the spring must outlast (default: 20000)"),
    "yield-margin": ("MARGIN", "least (default: 1.15)"),
    "reading": ("LENGTH", "farthest of the back from flush (default: 0.05 mm or 2 thou)"),
    "edge-gap": ("LENGTH", "least from edge to spring, eased shut (default: 0.4 mm or 16 thou)"),
    "nick": ("LENGTH", "closed spine above the handle, for the nail (default: 2.5 mm or 0.1 in)"),
    "tip-room": ("LENGTH", "tip to the handle's end, closed (default: 2 mm or 0.08 in)"),
    "pivot-pin": ("LENGTH", "its diameter (default: 3.2 mm or 1/8 in)"),
    "spring-pin": ("LENGTH", "middle and rear pin (default: the thinnest that does)"),
}

_NUMBERS = ("steel", "hardness", "openings", "yield-margin")
_QUANTITIES = [each.replace("-", "_") for each in (*_NEEDED, *_MORE) if each not in _NUMBERS]


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add what the command takes."""
    add = parser.add_argument
    for options in (_NEEDED, _MORE):
        for name, (metavar, meaning) in options.items():
            add(f"--{name}", metavar=metavar, help=meaning)
    add("--half-stop", choices=("yes", "no"), default="yes", help="(default: yes)")
    add(
        "--closed-face",
        choices=("either", "square", "kick"),
        help="a kick only where a square face leaves the edge too near (default: either)",
    )
    known = ", ".join(MEANINGS)
    add(
        "--bounds",
        nargs=3,
        action="append",
        metavar=("SIZE", "LOW", "HIGH"),
        default=[],
        help=f"limits of {known}",
    )
    add("--name", default="New joint", help="name of the pattern")
    add(
        "--choose",
        type=int,
        choices=(1, 2, 3),
        default=1,
        help="which to write or print (default: 1)",
    )
    add("-o", "--output", metavar="FILE", help="write it there; else it is printed")
    add("--force", action="store_true", help="write over a file that is there")


def run(options: argparse.Namespace) -> Answer:
    """Lay it out; `--units` are those of the file and of bare numbers."""
    places = (name.replace("-", "_") for name in (*_NEEDED, *_MORE))
    asked: dict[str, Any] = {place: getattr(options, place) for place in places}
    limits = (each for _, *ends in options.bounds for each in ends)
    units = units_of_given(options, (*(asked[name] for name in _QUANTITIES), *limits))
    bounds = {}
    for name, low, high in options.bounds:
        if name in bounds:
            raise UsageError(f"backspring layout: --bounds {name} is given twice")
        bounds[name] = (low, high)
    found = layout(
        options.output,
        name=options.name,
        units=units,
        choose=options.choose,
        force=options.force,
        half_stop=options.half_stop == "yes",
        closed_face=options.closed_face,
        bounds=bounds,
        **asked,
    )
    if not found.found:
        raise NoConvergence(refusal(found, "mm" if options.json else units))
    return Answer(found.status, found.to_dict(), found.laid_out(), path=options.output)
