"""`backspring size`: sizes for a wanted pull and margin, or a taper for a pull."""

from __future__ import annotations

import argparse
from typing import Any

from backspring import Design, Knife
from backspring.cli.answer import Answer
from backspring.cli.given_design import add_design
from backspring.cli.of_blades import for_each_blade, picture_of
from backspring.cli.of_knife import add_log, asked_of, knife_of, with_knife
from backspring.cli.pictures import write_picture
from backspring.cli.usage import UsageError
from backspring.cli.values import shown_units, with_unit
from backspring.errors import NoConvergence
from backspring.fit.size_spread import SolutionSds, solution_sds, taper_sds
from backspring.question.size import propose_taper, size
from backspring.question.size_result import Sized
from backspring.report.size import refusal, size_report, taper_report
from backspring.units import Kind


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add what the command takes."""
    add_design(parser)
    parser.add_argument("--pull", help='peak pull, opening, as "5 lbf"')
    parser.add_argument("--yield-margin", metavar="MARGIN", help="least margin, as 1.2")
    parser.add_argument(
        "--vary",
        action="append",
        metavar="KEY",
        help="spring.thickness (default: at the middle pin, the profile in proportion), "
        "spring.thickness_scale (the same by its factor), spring.thickness@STATION, fit.preload, "
        "spring.width, tang.pivot or spring.length; twice for two of them",
    )
    parser.add_argument(
        "--bounds",
        nargs=3,
        action="append",
        metavar=("KEY", "LOW", "HIGH"),
        default=[],
        help="limits of a varied size",
    )
    parser.add_argument(
        "--stock",
        nargs="+",
        action="append",
        metavar=("KEY", "SIZE"),
        default=[],
        help='sizes it comes in, as --stock spring.width "3/32 in" "1/8 in"',
    )
    parser.add_argument(
        "--taper",
        metavar="LEAST",
        help="instead of --vary: the profile with the least peak stress for the pull, nowhere "
        "thinner than this",
    )
    add_log(parser)
    parser.add_argument(
        "--output", metavar="FILE", help="map of pull and margin to FILE.png or FILE.svg"
    )


def run(options: argparse.Namespace) -> Answer:
    """Size a design file; without a solution tell the nearest and what is in the way."""
    _require_sense(options)
    design, knives = asked_of(options)
    answer = for_each_blade(
        design, options, lambda each: _answer(options, each, knife_of(knives, each))
    )
    return with_knife(answer, knives, options)


def _answer(options: argparse.Namespace, design: Design, knife: Knife | None) -> Answer:
    values = _Values(options, design)
    if options.taper is not None:
        return _taper(options, design, knife, values)
    pull, margin = values.read("pull", "force"), values.margin()
    vary = values.vary()
    bounds, stock = values.bounds(), values.stock()

    def ask(each: Design) -> Sized:
        return size(each, pull=pull, yield_margin=margin, vary=vary, bounds=bounds, stock=stock)

    sized = ask(design)
    data = sized.to_dict()
    if options.output is not None:
        data["output"] = output = picture_of(options, design)
        write_picture(output, lambda picture: picture.map_of(sized, units=options.units))
    if not sized.found:
        raise NoConvergence(refusal(sized, "mm" if options.json else shown_units(options)))
    sds: list[SolutionSds] = []
    if knife is not None:
        sds = solution_sds(knife, sized, ask)
        for solution, each in zip(data["solutions"], sds, strict=True):
            solution["spread"] = each.to_dict()
    report = size_report(sized, options.units, sds)
    return Answer(sized.status, data, report, path=options.design)


def _taper(
    options: argparse.Namespace, design: Design, knife: Knife | None, values: _Values
) -> Answer:
    asked = values.read("pull", "force"), values.read("taper", "length")
    taper = propose_taper(design, *asked)
    data, sds = taper.to_dict(), None
    if knife is not None:
        sds = taper_sds(knife, lambda likely: propose_taper(likely, *asked))
        data["spread"] = sds.to_dict()
    report = taper_report(taper, options.units, sds)
    return Answer(taper.status, data, report, path=options.design)


def _require_sense(options: argparse.Namespace) -> None:
    if options.taper is not None:
        if options.pull is None:
            raise UsageError("backspring size: --taper needs --pull")
        others = ("vary", "bounds", "stock", "yield_margin", "output")
        if given := [name for name in others if getattr(options, name)]:
            option = given[0].replace("_", "-")
            raise UsageError(f"backspring size: --taper does not go with --{option}")
    elif options.pull is None and options.yield_margin is None:
        raise UsageError("backspring size: give --pull, --yield-margin or both")
    for stock in options.stock:
        if len(stock) < 2:
            raise UsageError("backspring size: --stock needs a key and at least one size")


class _Values:
    """The options read; a bare number is in the design's units, whatever is printed."""

    def __init__(self, options: argparse.Namespace, design: Design) -> None:
        self.options, self.units = options, design.units

    def read(self, name: str, kind: Kind) -> str | None:
        """Read an option and hand it on with its unit; None when it was not given."""
        written = getattr(self.options, name)
        return None if written is None else self._parsed(written, kind, name)

    def margin(self) -> float | None:
        """Read the margin."""
        written = self.options.yield_margin
        if written is None:
            return None
        return float(self._parsed(written, "number", "yield-margin"))

    def vary(self) -> list[str]:
        """Read what is varied."""
        return [self._key(each, "vary") for each in self.options.vary or ["spring.thickness"]]

    def bounds(self) -> dict[str, tuple[Any, Any]]:
        """Read the limits."""
        return {
            self._key(key, "bounds"): (
                self._sized(key, low, "bounds"),
                self._sized(key, high, "bounds"),
            )
            for key, low, high in self.options.bounds
        }

    def stock(self) -> dict[str, list[Any]]:
        """Read the stock sizes."""
        return {
            self._key(key, "stock"): [self._sized(key, each, "stock") for each in sizes]
            for key, *sizes in self.options.stock
        }

    def _key(self, written: str, option: str) -> str:
        """Read the station of a key that has one."""
        key, at, station = written.partition("@")
        return f"{key}@{self._parsed(station, 'length', option)}" if at else key

    def _sized(self, key: str, written: str, option: str) -> str:
        """Read a size; that of a scale is a plain number."""
        kind: Kind = "number" if key.endswith("thickness_scale") else "length"
        return self._parsed(written, kind, option)

    def _parsed(self, written: str, kind: Kind, option: str) -> str:
        return with_unit(written, kind, option, self.units, self.options.units)
