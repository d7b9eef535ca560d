"""`--log FILE`: a question asked of one knife, as its log tells it, instead of its drawing."""

from __future__ import annotations

from typing import TYPE_CHECKING

from backspring.cli.answer import Answer
from backspring.cli.given_design import given_design
from backspring.cli.habits import add_habits, habits_of
from backspring.cli.of_blades import add_blade, chosen
from backspring.design.arguments import refusal
from backspring.design.design import Design

if TYPE_CHECKING:
    import argparse

    from backspring.fit.knife import Knife
    from backspring.fit.knives import Knives
    from backspring.notice import Notice
    from backspring.report.tables import Block


def add_log(parser: argparse.ArgumentParser) -> None:
    """Add the option, and the one that says which blade is asked."""
    add_blade(parser)
    parser.add_argument(
        "--log", metavar="FILE", help="ask this knife, as its fitting log tells it, not the drawing"
    )
    add_habits(parser)


def asked_of(options: argparse.Namespace) -> tuple[Design, Knives | None]:
    """Return the design that is asked, and the knives that it is the likely one of.

    Of several blades without --blade it is the knife of the first that was read.
    """
    design = chosen(given_design(options), options)
    if options.log is None:
        if options.habits is not None:
            raise refusal("habits", "go with --log FILE")
        return design, None
    # Knives and logs are loaded only where one is asked of.
    from pathlib import Path

    from backspring.fit.knife import Knife
    from backspring.fit.knives import Knives

    if not Path(options.log).exists():
        raise refusal("log", f"no such file: {options.log}")
    habits = habits_of(options, design)
    if not design.of_all_blades:
        knife = Knife(design, options.log, units=options.units, habits=habits)
        knife.require_agreement()
        return knife.design, Knives(knife, {design.blade: knife})
    any_blade = Knife(
        design.seen_from(design.blades[0]), options.log, units=options.units, habits=habits
    )
    knives = {name: each for name, each in any_blade.blades.items() if each.entries}
    for each in knives.values():
        each.require_agreement()
    knife = next(iter(knives.values()), any_blade)
    return knife.design.of_every_blade(), Knives(knife, knives)


def knife_of(knives: Knives | None, design: Design) -> Knife | None:
    """Return what a log tells of the blade that a design is seen from; None without a log."""
    return None if knives is None else knives.of(design)


def with_knife(answer: Answer, knives: Knives | None, options: argparse.Namespace) -> Answer:
    """Put beside an answer how sure this knife's figures are as it stands."""
    if knives is None:
        return answer
    from backspring.fit.doubts import doubts
    from backspring.report.fit_blades import headed
    from backspring.report.knife import now_lines
    from backspring.report.tables import Lines, Report

    drawn = knives.first.drawn
    several = len(drawn.blades) > 1 and options.blade is None
    units = options.units or drawn.units
    blocks: list[Block] = []
    notices: list[Notice] = []
    for name, each in knives.read.items():
        now = now_lines(each, units)
        blocks.append(headed(name, now) if several else now)
        notices += [*each.notices, *doubts(each.estimate(), each.spread_mm)]
    if notices:
        blocks.append(Lines("Of this log", tuple(each.text(units) for each in notices)))
    first, *others = answer.report.blocks
    data = dict(answer.data)
    if several:
        of_blades = dict(data.get("blades", {}))
        for name, each in knives.read.items():
            of_blades[name] = of_blades.get(name, {}) | {"knife": each.to_dict()}
        data["blades"] = of_blades
    else:
        data["knife"] = knives.first.to_dict()
    return answer._replace(
        data=data,
        report=Report(_headline(answer, knives.read), (*blocks, first, *others)),
        notices=(*notices, *answer.notices),
    )


def _headline(answer: Answer, knives: dict[str, Knife]) -> str:
    """Say first of all where the log does not tell yet what the answer rests on."""
    from backspring.report.knife import guessed

    unknown = dict.fromkeys(label for each in knives.values() for label in guessed(each))
    if not unknown:
        return answer.report.headline
    title = next(iter(knives.values())).drawn.title
    return (
        f"{title}: not known yet of this knife: {', '.join(unknown)}; what follows is a guess, "
        "weigh its pull first (fit --log FILE --pull)"
    )
