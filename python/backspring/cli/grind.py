"""`backspring grind`: what grinding does to pull, stress, margin and readings."""

from __future__ import annotations

import argparse
from typing import Any

from backspring import Design
from backspring.cli.answer import Answer
from backspring.cli.given_design import add_design
from backspring.cli.of_blades import for_each_blade, picture_of
from backspring.cli.of_knife import add_log, asked_of, with_knife
from backspring.cli.pictures import write_picture
from backspring.cli.usage import UsageError
from backspring.cli.values import with_unit
from backspring.question.grind import grind_depth, grind_flush, grind_passes, grind_table
from backspring.question.grind_result import Face, Rows
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
    design, knife = asked_of(options)
    answer = for_each_blade(design, options, lambda each: _answer(options, each))
    return with_knife(answer, knife, options)


def _answer(options: argparse.Namespace, design: Design) -> Answer:
    values = _Values(options, design)
    table, data = values.flush() if options.flush else values.table()
    units = options.units or design.units
    beside: tuple[Block, ...] = ()
    if options.to_pull is not None:
        ways = grind_ways(design, data["pull_n"])
        data["ways"] = ways.to_dict()["ways"]
        beside = ways_blocks(ways, units)
    if options.output is not None:
        data["output"] = output = picture_of(options, design)
        write_picture(output, lambda picture: picture.grinding(table, units=options.units))
    passes = f"{data['passes']} of at most {text(data['pass_mm'], 'reading', units)}"
    report = grind_report(table, options.units, passes, beside)
    return Answer(table.status, data, report, notices(table), options.design)


class _Values:
    """The options read; a bare number is in the design's units, whatever is printed."""

    def __init__(self, options: argparse.Namespace, design: Design) -> None:
        self.options, self.design = options, design
        self.step = self._read("step", "length") or _STEP[options.units or design.units]
        self.per_pass = self._read("per_pass", "length", "pass") or self.step

    def table(self) -> tuple[Rows, dict[str, Any]]:
        """Read a depth, or find it, and make the table down to it."""
        face: Face = self.options.face or "back"
        region = self._many("region")
        wanted: dict[str, Any] = {}
        if self.options.to_pull is not None:
            pull = self._read("to_pull", "force")
            wanted["pull_n"] = parse(pull, "force")
            depth: Any = grind_depth(self.design, pull, face, region)
        else:
            depth = self._read("remove", "length")
        table = grind_table(self.design, face, depth, self.step, region)
        passes = grind_passes(depth, self.per_pass)
        return table, table.to_dict() | wanted | self._passes(passes)

    def flush(self) -> tuple[Rows, dict[str, Any]]:
        """Grind flush."""
        ends = self._many("liners")
        line = None if ends is None else (ends[:2], ends[2:])
        found = grind_flush(self.design, line, self.per_pass)
        return found, found.to_dict() | self._passes(found.passes)

    def _passes(self, passes: int) -> dict[str, Any]:
        return {"pass_mm": parse(self.per_pass, "length"), "passes": passes}

    def _many(self, name: str) -> list[str] | None:
        written = getattr(self.options, name)
        return None if written is None else [self._parsed(each, "length", name) for each in written]

    def _read(self, name: str, kind: Kind, option: str | None = None) -> str | None:
        written = getattr(self.options, name)
        return None if written is None else self._parsed(written, kind, option or name)

    def _parsed(self, written: str, kind: Kind, option: str) -> str:
        """Read it once, and hand it on with its unit."""
        named = option.replace("_", "-")
        return with_unit(written, kind, named, self.design.units, self.options.units)


def _require_one_question(options: argparse.Namespace) -> None:
    values = [name for name in _QUESTIONS if getattr(options, name)]
    if len(values) != 1:
        raise UsageError(f"backspring grind: give one of {', '.join(_QUESTIONS.values())}")
    if options.flush and (options.face not in (None, "back") or options.region or options.step):
        raise UsageError("backspring grind: --flush finds depth and place on the back by itself")
    if options.liners and not options.flush:
        raise UsageError("backspring grind: --liners goes with --flush")
