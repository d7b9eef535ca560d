"""`--log FILE`: a question asked of one knife, as its log tells it, instead of its drawing."""

from __future__ import annotations

import argparse
from dataclasses import replace
from pathlib import Path

from backspring import load
from backspring.cli.answer import Answer
from backspring.cli.habits import add_habits, habits_of
from backspring.cli.of_blades import chosen
from backspring.design.arguments import refusal
from backspring.design.design import Design
from backspring.fit.doubts import doubts
from backspring.fit.knife import Knife
from backspring.report.knife import now_lines
from backspring.report.tables import Lines, Report


def add_log(parser: argparse.ArgumentParser) -> None:
    """Add the option."""
    parser.add_argument(
        "--log", metavar="FILE", help="ask this knife, as its fitting log tells it, not the drawing"
    )
    add_habits(parser)


def asked_of(options: argparse.Namespace) -> tuple[Design, Knife | None]:
    """Return the design that is asked, and the knife that it is the likely one of."""
    design = load(options.design)
    if options.log is None:
        if options.habits is not None:
            raise refusal("habits", "go with --log FILE")
        return design, None
    if not Path(options.log).exists():
        raise refusal("log", f"no such file: {options.log}")
    design = chosen(design, options)
    if design.of_all_blades:
        raise refusal("blade", f"say whose: --blade {' or '.join(design.blades)}")
    habits = habits_of(options, design)
    knife = Knife(design, options.log, units=options.units, habits=habits)
    knife.require_agreement()
    return knife.design, knife


def with_knife(answer: Answer, knife: Knife | None, options: argparse.Namespace) -> Answer:
    """Put beside an answer how sure this knife's figures are as it stands."""
    if knife is None:
        return answer
    first, *others = answer.report.blocks
    units = options.units or knife.drawn.units
    blocks = [now_lines(knife, units)]
    notices = (*knife.notices, *doubts(knife.estimate(), knife.spread_mm))
    if notices:
        blocks.append(Lines("Of this log", tuple(each.text(units) for each in notices)))
    return replace(
        answer,
        data=answer.data | {"knife": knife.to_dict()},
        report=Report(answer.report.headline, (*blocks, first, *others)),
        notices=(*notices, *answer.notices),
    )
