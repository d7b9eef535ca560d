"""`backspring tolerance`: spread of pull, stress and readings for stated tolerances."""

from __future__ import annotations

import argparse
import sys

from backspring import Design, Knife, tolerance
from backspring.cli.answer import Answer
from backspring.cli.given_design import add_design
from backspring.cli.of_blades import for_each_blade, picture_of
from backspring.cli.of_knife import add_log, asked_of, with_knife
from backspring.cli.pictures import write_picture
from backspring.cli.streams import has_colors
from backspring.cli.usage import UsageError
from backspring.cli.values import tell_bare
from backspring.design.arguments import refusal
from backspring.design.fields import kind_of
from backspring.many.dimensions import find_row
from backspring.many.progress import Progress
from backspring.many.spreads import taken_apart
from backspring.report.tolerance import tolerance_report


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add what the command takes."""
    add_design(parser)
    parser.add_argument(
        "--spread",
        action="append",
        default=[],
        metavar="KEY=TOLERANCE",
        help='as fit.preload="0.05 mm", "sd 0.02 mm" or "uniform 0.05 mm"; once for each '
        "(default: what an ordinary bench holds, or with --log what it tells)",
    )
    parser.add_argument("--n", type=int, default=100_000, help="knives drawn (default: 100000)")
    parser.add_argument("--seed", type=int, default=1, help="another one draws others (default: 1)")
    parser.add_argument("--batch", type=int, default=20, help="knives in a batch (default: 20)")
    parser.add_argument(
        "--wanted-share",
        type=float,
        default=0.95,
        metavar="SHARE",
        help="share of good knives that passes (default: 0.95)",
    )
    add_log(parser)
    parser.add_argument("--output", metavar="FILE", help="picture to FILE.png or FILE.svg")
    parser.add_argument("--threads", type=int, help="default: as many as the machine has")
    parser.add_argument(
        "--progress",
        action=argparse.BooleanOptionalAction,
        help="a bar on the error stream (default: on a terminal)",
    )


def run(options: argparse.Namespace) -> Answer:
    """Work out the spread of a design file's results."""
    design, knives = asked_of(options)
    if knives is not None and design.of_all_blades:
        raise refusal("blade", f"say whose: --blade {' or '.join(design.blades)}")
    knife = None if knives is None else knives.first
    spreads = _spreads(options.spread)
    for key, written in spreads.items():
        row, (_, _, number) = find_row(key), taken_apart(written)
        if row is not None:
            tell_bare(number, kind_of(row), f"spread {key}", design.units, options.units)
    answer = for_each_blade(design, options, lambda each: _answer(options, each, knife, spreads))
    return with_knife(answer, knives, options)


def _bar(options: argparse.Namespace) -> Progress:
    """Show a bar on a terminal, or where one is asked for."""
    on_terminal = sys.stderr is not None and sys.stderr.isatty()
    shown = on_terminal if options.progress is None else options.progress
    return shown and (True if has_colors(options) else "plain")


def _answer(
    options: argparse.Namespace, design: Design, knife: Knife | None, spreads: dict[str, str]
) -> Answer:
    stated = spreads or None
    study = tolerance(
        design,
        knife.spreads if knife is not None and stated is None else stated,
        n=options.n,
        seed=options.seed,
        batch=options.batch,
        wanted_share=options.wanted_share,
        threads=options.threads,
        progress=_bar(options),
        units=design.units,
    )
    report = tolerance_report(study, options.units)
    data = study.to_dict()
    if options.output is not None:
        data["output"] = output = picture_of(options, design)
        write_picture(output, lambda picture: picture.tolerance(study, units=options.units))
    return Answer(study.status, data, report, study.notices, options.design)


def _spreads(words: list[str]) -> dict[str, str]:
    spreads: dict[str, str] = {}
    for word in words:
        key, equals, text = word.partition("=")
        if not (key.strip() and equals and text.strip()):
            raise UsageError(f'backspring tolerance: write --spread KEY=TOLERANCE, got "{word}"')
        if key.strip() in spreads:
            raise UsageError(f"backspring tolerance: --spread {key.strip()} is given twice")
        spreads[key.strip()] = text.strip()
    return spreads
