"""`--log FILE`: a question asked of one knife, as its log tells it, instead of its drawing."""

from __future__ import annotations

import argparse
from dataclasses import replace
from pathlib import Path

from backspring import load
from backspring.cli.answer import Answer
from backspring.design.arguments import refusal
from backspring.design.design import Design
from backspring.fit.knife import Knife
from backspring.report.knife import now_lines
from backspring.report.tables import Report


def add_log(parser: argparse.ArgumentParser) -> None:
    """Add the option."""
    parser.add_argument(
        "--log", metavar="FILE", help="ask this knife, as its fitting log tells it, not the drawing"
    )


def asked_of(options: argparse.Namespace) -> tuple[Design, Knife | None]:
    """Return the design that is asked, and the knife that it is the likely one of."""
    design = load(options.design)
    if options.log is None:
        return design, None
    if not Path(options.log).exists():
        raise refusal("log", f"no such file: {options.log}")
    knife = Knife(design, options.log, units=options.units)
    knife.require_agreement()
    return knife.design, knife


def with_knife(answer: Answer, knife: Knife | None, options: argparse.Namespace) -> Answer:
    """Put beside an answer how sure this knife's figures are as it stands."""
    if knife is None:
        return answer
    first, *others = answer.report.blocks
    told = now_lines(knife, options.units or knife.drawn.units)
    report = Report(answer.report.headline, (told, first, *others))
    return replace(answer, data=answer.data | {"knife": knife.to_dict()}, report=report)
