"""`--blade NAME`: a question asked of one of several blades, or of each in turn."""

from __future__ import annotations

import argparse
from collections.abc import Callable, Sequence
from typing import Literal, TypeVar

from backspring.cli.answer import Answer
from backspring.cli.values import shown_units
from backspring.design.design import Design
from backspring.errors import NoConvergence
from backspring.report.tables import Block, Lines, Report
from backspring.units import System

_Each = TypeVar("_Each")


def add_blade(parser: argparse.ArgumentParser) -> None:
    """Add the option."""
    parser.add_argument(
        "--blade", metavar="NAME", help="ask one of several blades (default: each of them)"
    )


def chosen(design: Design, options: argparse.Namespace) -> Design:
    """Return the design seen from the blade that was asked for."""
    return design if options.blade is None else design.seen_from(options.blade)


def for_each_blade(
    given: Design, options: argparse.Namespace, answer: Callable[[Design], Answer]
) -> Answer:
    """Ask the blade that was chosen, or each of several, and join their answers."""
    design = chosen(given, options)
    if not design.of_all_blades:
        return answer(design)
    answers = {name: _of_blade(design, name, options, answer) for name in design.blades}
    status: Literal["pass", "fail"] = (
        "pass" if all(each.status == "pass" for each in answers.values()) else "fail"
    )
    reports = [each.report for each in answers.values()]
    shared = [
        block
        for block in reports[0].blocks
        if all(block in each.blocks for each in reports) and isinstance(block, Lines)
    ]
    blocks: list[Block] = []
    for name, report in zip(answers, reports, strict=True):
        own = [block for block in report.blocks if block not in shared]
        blocks += [Lines(f"Blade {name}", (report.headline,)), *own]
    return Answer(
        status,
        {
            "design": design.identity(),
            "blades": {name: each.data for name, each in answers.items()},
        },
        Report(_headline(design, answers), (*blocks, *shared)),
        _once([notice for each in answers.values() for notice in each.notices]),
        options.design,
    )


def picture_of(options: argparse.Namespace, design: Design) -> str:
    """Return the file for a picture: where each of several blades has one, with its name."""
    from pathlib import Path

    output = Path(options.output)
    if options.blade is not None or len(design.blades) == 1:
        return str(options.output)
    return str(output.with_name(f"{output.stem}-{design.blade}{output.suffix}"))


def _of_blade(
    design: Design, name: str, options: argparse.Namespace, answer: Callable[[Design], Answer]
) -> Answer:
    """Ask one blade; an answer that cannot be found says whose it is."""
    try:
        return answer(design.seen_from(name))
    except NoConvergence as error:
        units: System = "mm" if options.json else shown_units(options)
        raise NoConvergence(f"{name}: {error.text(units)}") from None


def _headline(design: Design, answers: dict[str, Answer]) -> str:
    """Say which blades there are, and which of them miss a target."""
    names = ", ".join(answers)
    missed = [name for name, each in answers.items() if each.status == "fail"]
    if not missed:
        return f"{design.name}: {names}: every target met"
    return f"{design.name}: {names}: missed with {' and '.join(missed)}"


def _once(rows: Sequence[_Each]) -> list[_Each]:
    """Leave out what was said before, as a caution that holds for every blade."""
    kept: list[_Each] = []
    for row in rows:
        if row not in kept:
            kept.append(row)
    return kept
