"""`backspring evidence`: what we say beside what published sources and other methods say."""

from __future__ import annotations

import argparse
import json
import sys
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

from backspring.cli.answer import Answer, answer_json
from backspring.cli.usage import UsageError
from backspring.evidence.collect import collect
from backspring.evidence.folder import chosen, left_for_later, tests_folder
from backspring.evidence.kept import NAME, kept_text, with_kept
from backspring.evidence.result import Evidence, Left
from backspring.report.evidence import evidence_reference
from backspring.whole_file import replace_file

HAS_UNITS = False
_QUICK_JOINTS, _JOINTS = 50, 500


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add what the command takes."""
    add = parser.add_argument
    add("--tests", metavar="DIR", help="tests of a clone (default: those found here or above)")
    add("--quick", action="store_true", help="published sources and a few drawn joints alone")
    add("--long", action="store_true", help="with the models that take minutes each")
    add(
        "--only",
        metavar="SOURCE",
        nargs="+",
        default=[],
        help="sources with this in their name, as shigley; however long they take",
    )
    add(
        "--joints",
        type=int,
        metavar="N",
        help=f"drawn joints (default: {_JOINTS}, with --quick {_QUICK_JOINTS})",
    )
    add(
        "--keep",
        action="store_true",
        help="write what was run into data/evidence.json and .md of the clone, where the other "
        "sources stay as kept; not where a figure is outside",
    )


def run(options: argparse.Namespace) -> Answer:
    """Run the tests and lay the table out."""
    if options.only and (options.quick or options.long):
        raise UsageError("backspring evidence: --only says what is run: leave out --quick, --long")
    if options.quick and options.long:
        raise UsageError("backspring evidence: give one of --quick and --long")
    if options.joints is not None and options.joints < 1:
        raise UsageError("backspring evidence: --joints must be 1 or more")
    joints = options.joints or (_QUICK_JOINTS if options.quick else _JOINTS)
    if options.keep and joints < _JOINTS:
        text = f"--keep is for {_JOINTS} drawn joints or more: leave out --quick, --joints"
        raise UsageError(f"backspring evidence: {text}")
    tests = tests_folder(options.tests)
    files = chosen(tests, options.quick, options.long, options.only)
    found = collect(tests, files, joints, _counter() if sys.stderr.isatty() else None)
    if not options.only and not options.quick:
        later = (
            Left(f"oracle/{each.name}", "takes minutes: ask for it with --long or --only")
            for each in left_for_later(tests, files)
        )
        found = replace(found, not_run=(*found.not_run, *later))
    if options.keep:
        _keep(found, tests)
    return Answer(found.status, found.to_dict(), found.laid_out())


def _keep(found: Evidence, tests: Path) -> None:
    """Write both files; evidence that something is wrong is not kept."""
    if found.status == "fail":
        print("not kept: see what is outside or broke off", file=sys.stderr)
        return
    data = tests.parent / "data"
    whole = with_kept(found, data, tests)
    answer = Answer("pass", whole.to_dict(), whole.laid_out())
    document = json.loads(answer_json("evidence", answer))
    replace_file(data / NAME, [kept_text(document).encode()])
    replace_file((data / NAME).with_suffix(".md"), [evidence_reference(whole).encode()])
    print(f"kept in {data / NAME} and .md", file=sys.stderr)


def _counter() -> Callable[[int], None]:
    def tell(count: int) -> None:
        print(f"\r{count} figures", end="", file=sys.stderr, flush=True)

    return tell
