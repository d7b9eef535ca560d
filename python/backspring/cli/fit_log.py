"""The options of `backspring fit` that go with a knife's log."""

from __future__ import annotations

import argparse
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import asdict
from typing import Any, Literal

from backspring.cli.answer import Answer
from backspring.cli.fit_values import Values
from backspring.cli.habits import add_habits, habits_of
from backspring.design.arguments import refusal
from backspring.fit.blades_of_log import plan_of_blades, unread_beside
from backspring.fit.doubts import doubts
from backspring.fit.given import read_gap, read_weight
from backspring.fit.knife import REPEATABILITY, Knife
from backspring.fit.log_entry import SPRING_FACES
from backspring.fit.result import FACES
from backspring.notice import Notice
from backspring.report.fit_blades import headed
from backspring.report.knife import knife_blocks, knife_report, undo_report
from backspring.report.tables import Block, Report

_PULLS = ("pull", "closing_pull", "start_pull")
_FIGURES = (*_PULLS, "hang", "moved", "hardness", "thickness_at", "tip_height", "gap")
_GROUND = (*FACES, *SPRING_FACES)
_MOST_GROUND = 4
# What says how to plan.
PLANNING = ("target", "reserve", "closed_by", "material", "tip", "tip_allowance", "output")


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add what a log takes."""
    add = parser.add_argument
    add("--log", metavar="FILE", help="log of this knife, to add to and to plan from")
    add(
        "--ground",
        nargs="+",
        action="append",
        metavar="FACE [DEPTH [FROM TO]]",
        help="with --log: what was ground before what is measured here: half_stop, closed, kick, "
        "open, back or belly; the depth need not be known",
    )
    add("--pull", metavar="FORCE", help="with --log: greatest pull to open, on a scale")
    add("--closing-pull", metavar="FORCE", help="with --log: greatest pull to close, on a scale")
    add("--start-pull", metavar="FORCE", help="with --log: what it takes to leave closed")
    add("--hang", metavar="WEIGHT", help='with --log and --moved: "2 kg at 32 mm", pins in')
    add("--moved", metavar="LENGTH", help="with --hang: how far the dial moved")
    add("--hardness", action="append", metavar="HRC", help="with --log; repeats may be given")
    add(
        "--thickness-at",
        nargs=2,
        action="append",
        metavar=("STATION", "THICKNESS"),
        help="with --log: thickness of the spring by caliper",
    )
    add("--tip-height", metavar="HEIGHT", help="with --log: closed, tip over the handle's rim")
    add(
        "--gap",
        action="append",
        metavar="GAP",
        help='with --log: edge to belly by feeler, closed: "0.3 mm at 10 mm"; repeats may be given',
    )
    add_habits(parser)
    add("--undo", action="store_true", help="with --log: take the last entry off")


def require_sense(options: argparse.Namespace, refuse: Callable[[str], None]) -> None:
    """Refuse options that do not go together."""
    given = [name for name in ("ground", *_FIGURES) if getattr(options, name) is not None]
    if given and options.log is None:
        refuse(f"--{given[0].replace('_', '-')} goes with --log FILE")
    if options.habits is not None and options.log is None:
        refuse("--habits goes with --log FILE")
    read = options.closed is not None or options.half_stop is not None
    if options.undo and (options.log is None or given or read or options.habits is not None):
        refuse("--undo goes with --log FILE alone")
    if (options.hang is None) != (options.moved is None):
        refuse('--hang "2 kg at 32 mm" and --moved go together')
    for words in options.ground or ():
        second = next((word for word in words[1:] if word.replace("-", "_") in _GROUND), None)
        if second is not None:
            refuse(f"--ground takes one face: --ground {words[0]} --ground {second}")
        if len(words) not in (1, 2, _MOST_GROUND):
            refuse("--ground takes FACE, FACE DEPTH or FACE DEPTH FROM TO (DEPTH may be ?)")
    halves, closed = options.half_stop or [], options.closed or []
    if options.log is not None and halves and closed and len(halves) != len(closed):
        refuse("give as many --half-stop as --closed readings to a log")


@contextmanager
def opened(options: argparse.Namespace, values: Values) -> Iterator[Knife]:
    """Open the log with what is given added to it, to be written once all is answered."""
    design = values.design
    named = ("closed", "half_stop", "ground", *_FIGURES)
    nothing = all(getattr(options, name) is None for name in named)
    if design.of_all_blades:
        if not nothing:
            raise refusal("blade", f"say whose: --blade {' or '.join(design.blades)}")
        design = design.seen_from(design.blades[0])
    habits = habits_of(options, design)
    knife = Knife(design, options.log, units=options.units, habits=habits)
    if nothing:
        yield knife
        return
    with knife.together(anew=True):
        _add(knife, options, values)
        yield knife


def undone(knife: Knife, options: argparse.Namespace) -> Answer:
    """Take the last entry off."""
    _refuse_planning(options, "and --undo makes none")
    last, left = knife.undo(), len(knife.logged)
    undone = {"entry": left + 1, "kind": type(last).__name__, **asdict(last)}
    if not last.blade:
        del undone["blade"]
    data = {
        **_design(knife),
        "undone": undone,
        "log": {"entries": left},
    }
    return Answer("pass", data, undo_report(knife, last), (), options.design)


def told(knife: Knife, options: argparse.Namespace) -> Answer:
    """Say what the log tells, where its readings are not enough for a plan."""
    knife.require_agreement()
    _refuse_planning(options, "the log does not hold the readings for one yet")
    data = {**_design(knife), "knife": knife.to_dict(), "plan": []}
    report = knife_report(knife, options.units)
    notices = (*knife.notices, *doubts(knife.estimate(), knife.spread_mm))
    return Answer("pass", data, report, notices, options.design)


def _refuse_planning(options: argparse.Namespace, why: str) -> None:
    """Refuse what is said of a plan where there is none."""
    for name in PLANNING:
        if getattr(options, name) is not None:
            raise refusal(f"--{name.replace('_', '-')}", f"goes with a plan, {why}")


def of_blades(knife: Knife, options: argparse.Namespace, values: Values) -> Answer:
    """Plan all blades that were read, and say what the log tells of each."""
    knives = {name: each for name, each in knife.blades.items() if each.entries}
    for each in knives.values():
        each.require_agreement()
    data: dict[str, Any] = {**_design(knife), "plan": [], "blades": {}}
    blocks: list[Block] = []
    notices: tuple[Notice, ...] = ()
    status: Literal["pass", "fail"] = "pass"
    unread = unread_beside(knife)
    names = f"{' and '.join(unread)}, too" if unread else "every blade"
    headline = f"{knife.drawn.name}: logged; read {names}, then a plan can be made"
    if not unread and any(each.can_plan() for each in knives.values()):
        plan = plan_of_blades(knife, **values.planning())
        page, notices = plan.laid_out(options.units), plan.notices
        data, headline, blocks = plan.to_dict(), page.headline, [*page.blocks]
        status = "fail" if plan.unmet else "pass"
    else:
        _refuse_planning(options, "the log does not hold the readings for one yet")
    for name, each in knives.items():
        data["blades"].setdefault(name, {})["knife"] = each.to_dict()
        units = options.units or knife.drawn.units
        blocks += [headed(name, block) for block in knife_blocks(each, units)]
    return Answer(status, data, Report(headline, tuple(blocks)), notices, options.design)


def _design(knife: Knife) -> dict[str, Any]:
    return {"design": {"name": knife.drawn.name, "sha256": knife.drawn.sha256}}


def _add(knife: Knife, options: argparse.Namespace, values: Values) -> None:
    for face, *rest in options.ground or ():
        lengths = [None if each == "?" else values.length(each, "ground") for each in rest]
        if None in lengths[1:]:
            raise refusal("ground", "a region is two stations")
        region = lengths[1:] or None
        knife.ground(face.replace("-", "_"), lengths[0] if lengths else None, region)
    _add_readings(knife, options, values)
    figures = {
        **{name: _force(getattr(options, name), name, values) for name in _PULLS},
        "hang": _weight(options.hang, values),
        "moved": _length(options.moved, "moved", values),
        "hardness": options.hardness,
        "thickness": _thickness(options.thickness_at, values),
        "tip_height": _length(options.tip_height, "tip-height", values),
        "gap": _gaps(options.gap, values),
    }
    if any(each is not None for each in figures.values()):
        knife.measure(**figures)


def _add_readings(knife: Knife, options: argparse.Namespace, values: Values) -> None:
    halves, closed = values.mean("half_stop") or [], values.mean("closed") or []
    for place in range(max(len(halves), len(closed))):
        knife.measure(
            half_stop=halves[place] if halves else None,
            closed=closed[place] if closed else None,
            state=options.state,
            repeatability=values.read("repeatability", REPEATABILITY),
        )


def _force(written: str | None, option: str, values: Values) -> str | None:
    option = option.replace("_", "-")
    return None if written is None else values.force(written, option)


def _length(written: str | None, option: str, values: Values) -> str | None:
    return None if written is None else values.length(written, option)


def _gaps(written: list[str] | None, values: Values) -> list[str] | None:
    if written is None:
        return None
    read = []
    for each in written:
        gap_mm, station_mm = read_gap(each, values.units)
        for part in each.split(" at ", 1):
            values.tell(part, "length", "gap")
        read.append(f"{gap_mm!r} mm at {station_mm!r} mm")
    return read


def _weight(written: str | None, values: Values) -> str | None:
    if written is None:
        return None
    weight_n, station_mm = read_weight(written, values.units)
    weight, station = written.split(" at ", 1)
    values.tell(weight, "mass", "hang")
    values.tell(station, "length", "hang")
    return f"{weight_n!r} N at {station_mm!r} mm"


def _thickness(written: list[list[str]] | None, values: Values) -> dict[str, str] | None:
    if written is None:
        return None
    return {
        values.length(station, "thickness-at"): values.length(value, "thickness-at")
        for station, value in written
    }
