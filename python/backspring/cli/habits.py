"""`backspring habits`: what the knives of a shop have in common, from a folder of their logs."""

from __future__ import annotations

import argparse
from typing import TYPE_CHECKING

from backspring.cli.answer import Answer
from backspring.design.design import Design

if TYPE_CHECKING:
    from backspring.fit.habits import ShopHabits


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add what the command takes."""
    parser.add_argument(
        "folder",
        metavar="FOLDER",
        help="logs of the shop's knives (*.csv) and the designs that they are of (*.toml)",
    )


def run(options: argparse.Namespace) -> Answer:
    """Pool the logs."""
    from backspring.fit.shop_habits import shop_habits
    from backspring.report.habits import habits_report

    found = shop_habits(options.folder)
    return Answer(
        "pass", found.to_dict(), habits_report(found, options.units), found.notices, options.folder
    )


def add_habits(parser: argparse.ArgumentParser) -> None:
    """Add the option that goes with a knife's log."""
    parser.add_argument(
        "--habits",
        metavar="FOLDER",
        help="with --log: expect of this knife what the shop's other knives have in common",
    )


def habits_of(options: argparse.Namespace, design: Design) -> ShopHabits | None:
    """Pool the other knives' logs; nothing where no folder is given."""
    if options.habits is None:
        return None
    from backspring.fit.shop_habits import shop_habits

    return shop_habits(options.habits, design, without=options.log)
