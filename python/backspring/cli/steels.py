"""`backspring steels`: the steels, one steel's data with sources, and what a temper does to it."""

from __future__ import annotations

import argparse
from typing import Any

from backspring import steel as steels
from backspring.cli.answer import Answer
from backspring.cli.given_design import add_own_steels
from backspring.cli.pictures import write_picture
from backspring.cli.temper_question import TemperAnswer, temper_answer
from backspring.cli.usage import UsageError
from backspring.faults import Fault, invalid
from backspring.report.steel import cited, steel_blocks, steels_table
from backspring.report.tables import Report
from backspring.steel.records import as_data
from backspring.steel.tempering import limits_c
from backspring.units import System

_NEEDS_NAME = ("temper", "time", "hardness", "after", "output")


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add what the command takes."""
    parser.add_argument("name", nargs="?", metavar="STEEL", help="as O1; without it, all of them")
    add_own_steels(parser)
    parser.add_argument("--temper", metavar="TEMP", help='what hardness it leaves, as "515 C"')
    parser.add_argument("--hardness", metavar="HRC", help='which temper leaves it, as "45 HRC"')
    parser.add_argument("--time", metavar="TIME", help='hold of the temper, as "2 h"')
    parser.add_argument(
        "--after",
        nargs=2,
        metavar=("TEMP", "TIME"),
        help='what a later heat leaves, as "400 C" "60 s"',
    )
    parser.add_argument("--output", metavar="FILE", help="temper curve to FILE.png or FILE.svg")


def run(options: argparse.Namespace) -> Answer:
    """List the steels, or answer for one of them."""
    units: System = options.units or "mm"
    if options.name is None:
        given = [f"--{each}" for each in _NEEDS_NAME if getattr(options, each) is not None]
        if given:
            raise UsageError(f"backspring steels: {given[0]} needs the name of a steel")
        return _list(units)
    steel = _find(options.name)
    tempered = temper_answer(steel, options, units)
    if options.output is not None:
        write_picture(options.output, lambda picture: _draw(picture, steel, tempered, units))
    headline = f"{steel.name}: {steel.family}"
    if steel.also_called:
        headline += f", also called {', '.join(steel.also_called)}"
    data: dict[str, Any] = {"steel": as_data(steel)}
    data["sources"] = {key: as_data(steels.sources()[key]) for key in cited(steel)}
    if tempered is not None:
        headline, data = tempered.headline, {"answer": tempered.data, **data}
    blocks = tuple(steel_blocks(steel, steels.sources(), units))
    if tempered is not None:
        blocks = tempered.blocks
    if options.output is not None:
        data["output"] = options.output
        headline += f"; temper curve drawn in {options.output}"
    return Answer("pass", data, Report(headline, blocks), tempered.notices if tempered else ())


def _find(name: str) -> steels.Steel:
    try:
        return steels.steel(name)
    except LookupError as error:
        raise invalid([Fault("bad-value", "", str(error.args[0]))]) from None


def _list(units: System) -> Answer:
    known = [steels.steel(name) for name in steels.names()]
    headline = f"{len(known)} steels; backspring steels {known[-2].name} tells all of one"
    data = {"steels": [_summary(each) for each in known]}
    return Answer("pass", data, Report(headline, (steels_table(known, units),)))


def _summary(steel: steels.Steel) -> dict[str, Any]:
    temper = steel.temper
    low_c, high_c = limits_c(temper) if temper else (None, None)
    return {
        "name": steel.name,
        "also_called": steel.also_called,
        "family": steel.family,
        "hardness_low_hrc": steel.hardness_low_hrc,
        "hardness_high_hrc": steel.hardness_high_hrc,
        "temper_low_c": low_c,
        "temper_high_c": high_c,
        "time_counts": None if temper is None else temper.fit is not None,
    }


def _draw(picture: Any, steel: steels.Steel, tempered: TemperAnswer | None, units: System) -> Any:
    time_h = tempered.data["time_h"] if tempered else None
    mark = (tempered.data["temper_c"], tempered.data["hardness_hrc"]) if tempered else None
    return picture.temper_curve(steel.name, time_h=time_h, mark=mark, units=units).figure
