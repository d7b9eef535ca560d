"""`--blade NAME`: a question asked of one of several blades, or of each in turn."""

from __future__ import annotations

import argparse
from collections.abc import Callable
from dataclasses import replace
from typing import Literal

from backspring.cli.answer import Answer
from backspring.design.design import Design
from backspring.report.tables import Block, Lines, Report


def add_blade(parser: argparse.ArgumentParser) -> None:
    """Add the option."""
    parser.add_argument(
        "--blade", metavar="NAME", help="ask one of several blades (default: each of them)"
    )


def chosen(design: Design, options: argparse.Namespace) -> Design:
    """Return the design seen from the blade that was asked for."""
    return design if options.blade is None else design.seen_from(options.blade)


def for_each_blade(design: Design, answer: Callable[[Design], Answer]) -> Answer:
    """Ask the blade that was chosen, or each of several, and join their answers."""
    if not design.of_all_blades:
        return answer(design)
    answers = {name: answer(design.seen_from(name)) for name in design.blades}
    status: Literal["pass", "fail"] = (
        "pass" if all(each.status == "pass" for each in answers.values()) else "fail"
    )
    first = next(iter(answers.values()))
    blocks: list[Block] = []
    for name, each in answers.items():
        blocks += [Lines(f"Blade {name}", (each.report.headline,)), *each.report.blocks]
    return replace(
        first,
        status=status,
        data={"blades": {name: each.data for name, each in answers.items()}},
        report=Report(f"{design.name}: {len(answers)} blades", tuple(_once(blocks))),
        notices=[notice for each in answers.values() for notice in each.notices],
    )


def _once(blocks: list[Block]) -> list[Block]:
    """Leave out what was said before, as a caution that holds for every blade."""
    kept: list[Block] = []
    for block in blocks:
        if block not in kept:
            kept.append(block)
    return kept
