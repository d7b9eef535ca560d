"""`backspring grind`: what grinding does to pull, stress, margin and readings."""

from __future__ import annotations

import argparse
from contextlib import suppress

from backspring import Design, Knife
from backspring.cli.answer import Answer
from backspring.cli.given_design import add_design
from backspring.cli.of_blades import for_each_blade, picture_of
from backspring.cli.of_knife import add_log, asked_of, knife_of, with_knife
from backspring.cli.pictures import write_picture
from backspring.cli.usage import UsageError
from backspring.cli.values import with_unit
from backspring.errors import Error
from backspring.fit.answer_spread import answer_sds
from backspring.fit.knife_data import knife_figures, sd_name
from backspring.question.grind import grind_depth, grind_flush, grind_passes, grind_table
from backspring.question.grind_result import Face, Flush, Rows
from backspring.question.grind_ways import grind_ways
from backspring.report.display import text
from backspring.report.grind import grind_report, notices
from backspring.report.grind_ways import ways_blocks
from backspring.report.tables import Block
from backspring.units import Kind, System, parse

# Round in the units that are shown.
_STEP: dict[System, str] = {"mm": "0.05 mm", "in": "0.002 in"}
_QUESTIONS = {"remove": "--remove DEPTH", "to_pull": "--to-pull PULL", "flush": "--flush"}


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add what the command takes."""
    add_design(parser)
    parser.add_argument("--face", choices=("back", "belly", "pad"), help="default: back")
    parser.add_argument("--remove", metavar="DEPTH", help='a table to this depth, as "0.3 mm"')
    parser.add_argument("--to-pull", metavar="PULL", help='the depth for a pull, as "5 lbf"')
    parser.add_argument(
        "--flush", action="store_true", help="take off what is proud when open and loaded"
    )
    parser.add_argument(
        "--step",
        metavar="DEPTH",
        help=f"between rows (default: {' or '.join(_STEP.values())}, as is shown)",
    )
    parser.add_argument(
        "--pass",
        dest="per_pass",
        metavar="DEPTH",
        help="taken off in one pass (default: the step)",
    )
    parser.add_argument(
        "--region",
        nargs=2,
        metavar=("A", "B"),
        help="stations to grind between (default: the whole back, or the belly ahead of the "
        "middle pin)",
    )
    parser.add_argument(
        "--liners",
        nargs=4,
        metavar=("A", "HEIGHT_A", "B", "HEIGHT_B"),
        help="with --flush: the liners' straight back, heights above the pivot at two stations "
        "(default: the back as it lies at open with the rear pin out)",
    )
    add_log(parser)
    parser.add_argument("--output", metavar="FILE", help="picture to FILE.png or FILE.svg")


def run(options: argparse.Namespace) -> Answer:
    """Answer one of three questions: what a depth does, how deep for a pull, what is proud."""
    _require_one_question(options)
    design, knives = asked_of(options)
    answer = for_each_blade(
        design, options, lambda each: _answer(options, each, knife_of(knives, each))
    )
    return with_knife(answer, knives, options)


def _answer(options: argparse.Namespace, design: Design, knife: Knife | None) -> Answer:
    values = _Values(options, design)
    table = values.table(design)
    passes = table.passes if isinstance(table, Flush) else values.passes(table.removed_mm)
    pass_mm = parse(values.per_pass, "length")
    data = table.to_dict() | {"pass_mm": pass_mm, "passes": passes}
    units = options.units or design.units
    beside: tuple[Block, ...] = ()
    if values.pull is not None:
        ways = grind_ways(design, values.pull)
        data |= {"pull_n": ways.pull_n, "ways": ways.to_dict()["ways"]}
        beside = ways_blocks(ways, units)
    sds: dict[str, float | None] = {}
    if knife is not None:
        sds = answer_sds(knife, lambda likely: _figures(values, likely, table))
        data["spread"] = {sd_name(name): each for name, each in sds.items()}
    if options.output is not None:
        data["output"] = output = picture_of(options, design)
        write_picture(output, lambda picture: picture.grinding(table, units=options.units))
    said = f"{passes} of at most {text(pass_mm, 'reading', units)}"
    report = grind_report(table, options.units, said, beside, sds)
    return Answer(table.status, data, report, notices(table), options.design)


def _figures(values: _Values, design: Design, asked: Rows) -> dict[str, float | None]:
    """Ask a knife as likely: what it is when ground alike, and how much it would have had off."""
    if values.options.flush:
        row = values.table(design).rows[-1]
        return {"removed_mm": row.removed_mm, **knife_figures(row)}
    depth = asked.removed_mm
    row = grind_table(design, values.face, depth, depth, values.region).rows[-1]
    figures = knife_figures(row)
    if values.pull is not None:
        figures["removed_mm"] = None
        with suppress(Error):
            figures["removed_mm"] = values.depth_for_pull(design)
    return figures


class _Values:
    """The options read; a bare number is in the design's units, whatever is printed."""

    def __init__(self, options: argparse.Namespace, design: Design) -> None:
        self.options, self.units = options, design.units
        self.step = self._read("step", "length") or _STEP[options.units or design.units]
        self.per_pass = self._read("per_pass", "length", "pass") or self.step
        self.face: Face = options.face or "back"
        self.region = self._many("region")
        self.pull = self._read("to_pull", "force")
        self.depth = self._read("remove", "length")
        self.liners = self._many("liners")

    def table(self, design: Design) -> Rows:
        """Grind flush, or make the table down to a depth, which is stated or found."""
        if self.options.flush:
            ends = self.liners
            line = None if ends is None else (ends[:2], ends[2:])
            return grind_flush(design, line, self.per_pass)
        depth = self.depth if self.pull is None else self.depth_for_pull(design)
        return grind_table(design, self.face, depth, self.step, self.region)

    def depth_for_pull(self, design: Design) -> float:
        """Find the depth that gives the pull."""
        return grind_depth(design, self.pull, self.face, self.region)

    def passes(self, depth_mm: float) -> int:
        """Count the passes to a depth."""
        return grind_passes(depth_mm, self.per_pass)

    def _many(self, name: str) -> list[str] | None:
        written = getattr(self.options, name)
        return None if written is None else [self._parsed(each, "length", name) for each in written]

    def _read(self, name: str, kind: Kind, option: str | None = None) -> str | None:
        written = getattr(self.options, name)
        return None if written is None else self._parsed(written, kind, option or name)

    def _parsed(self, written: str, kind: Kind, option: str) -> str:
        """Read it once, and hand it on with its unit."""
        named = option.replace("_", "-")
        return with_unit(written, kind, named, self.units, self.options.units)


def _require_one_question(options: argparse.Namespace) -> None:
    values = [name for name in _QUESTIONS if getattr(options, name)]
    if len(values) != 1:
        raise UsageError(f"backspring grind: give one of {', '.join(_QUESTIONS.values())}")
    if options.flush and (options.face not in (None, "back") or options.region or options.step):
        raise UsageError("backspring grind: --flush finds depth and place on the back by itself")
    if options.liners and not options.flush:
        raise UsageError("backspring grind: --liners goes with --flush")
