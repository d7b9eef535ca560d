"""`backspring advise`: what to change so that a design meets all its targets."""

from __future__ import annotations

import argparse
from collections.abc import Mapping
from typing import TYPE_CHECKING, Any

from backspring.cli.answer import Answer
from backspring.cli.given_design import add_design
from backspring.cli.of_knife import add_log, asked_of, with_knife
from backspring.fit.advise_spread import advice_sds
from backspring.fit.knife_data import sd_name
from backspring.question.advise import advise
from backspring.question.advise_result import Advised
from backspring.report.advise import advise_report
from backspring.report.advise_sure import WaysSds

if TYPE_CHECKING:
    from backspring.fit.knives import Knives


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add what the command takes."""
    add_design(parser)
    parser.add_argument("--all", action="store_true", help="show every way that was found")
    add_log(parser)


def run(options: argparse.Namespace) -> Answer:
    """Advise on a design file; of several blades all are judged, and --blade is what may change."""
    design, knives = asked_of(options)
    advised = advise(design, options.units)
    data, sds = advised.to_dict(), _sds(advised, knives, options.all)
    for place, way in enumerate(data["advice"]):
        spread = [_named(blade, each[place]) for blade, each in sds.items() if place < len(each)]
        if spread:
            way["spread"] = {name: sd for each in spread for name, sd in each.items()}
    report = advise_report(advised, options.units, options.all, sds)
    answer = Answer(advised.status, data, report, path=options.design, found=advised.found)
    return with_knife(answer, knives, options)


def _sds(advised: Advised, knives: Knives | None, everything: bool) -> WaysSds:
    """Work out, by blade, how sure the ways are that are shown."""
    if knives is None:
        return {}
    ways = advised.shown(everything)
    several = len(advised.original.blades) > 1
    read = knives.read or {knives.first.drawn.blade: knives.first}
    return {name if several else "": advice_sds(each, advised, ways) for name, each in read.items()}


def _named(blade: str, sds: Mapping[str, float | None]) -> dict[str, Any]:
    named = {sd_name(name): sd for name, sd in sds.items()}
    return {blade: named} if blade else named
