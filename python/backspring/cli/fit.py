"""`backspring fit`: the allowance to leave, or what to take off which face."""

from __future__ import annotations

import argparse
from dataclasses import asdict
from typing import TYPE_CHECKING, Any

from backspring import load
from backspring.cli import UsageError
from backspring.cli.answer import Answer
from backspring.cli.pictures import write_picture
from backspring.cli.values import with_unit
from backspring.design.design import Design
from backspring.fit.after_back_grind import BackGround, readings_after_back_grind
from backspring.fit.plan import allowance, fit_plan
from backspring.fit.result import FACES, Allowance, FitPlan
from backspring.report.fit import allowance_report, log_report, plan_report, undo_report
from backspring.units import System

if TYPE_CHECKING:
    from backspring.fit.log import FitLog


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add what the command takes."""
    add = parser.add_argument
    add("design", metavar="DESIGN", help="design file (TOML)")
    add("--target", metavar="READING", help="loaded reading wanted (default: 0.001 in)")
    add("--support", help="instead of the design's own: two-pins, clamped, or a root stiffness")
    add("--half-stop", action="append", metavar="READING", help="measured; repeats may be given")
    add("--closed", action="append", metavar="READING", help="measured; repeats may be given")
    add("--state", choices=("loaded", "unloaded"), help="state they were measured in")
    add("--repeatability", metavar="LENGTH", help="standard deviation of one reading")
    add("--reserve", type=float, help="share of what is to go that a pass leaves (default: 1/3)")
    add(
        "--closed-by",
        choices=("level", "least", "closed", "kick"),
        help="where a kicked tang is ground for the closed reading (default: level, the tip stays)",
    )
    add(
        "--material",
        nargs=2,
        action="append",
        metavar=("FACE", "DEPTH"),
        help=f"what may come off a face: {', '.join(FACES)}",
    )
    add("--tip", metavar="MOVE", help="move of the tip wanted, + out of the handle; or level")
    add("--tip-allowance", metavar="LENGTH", help="move of the tip that is no news (0.5 mm)")
    add("--after-back", metavar="DEPTH", help="readings and allowance with this off the back")
    add("--log", metavar="FILE", help="fitting log to add to and to plan from")
    add(
        "--ground",
        nargs=2,
        action="append",
        metavar=("FACE", "DEPTH"),
        help="with --log: what was ground before the readings given here",
    )
    add("--undo", action="store_true", help="with --log: take the last entry off")
    add(
        "--output",
        metavar="FILE",
        help="picture of plan or allowance to FILE.png or FILE.svg",
    )


def run(options: argparse.Namespace) -> Answer:
    """Answer with the allowance, or with a plan from readings or from a log."""
    _require_sense(options)
    design = load(options.design)
    if options.log is not None:
        return _from_log(options, design)
    values = _Values(options, design)
    if options.after_back is not None:
        depth = values.length(options.after_back, "after-back")
        ground = readings_after_back_grind(design, depth, values.target())
        return _finish(ground, ground.laid_out(options.units), options)
    if options.closed is None:
        left = allowance(design, values.target(), options.support)
        return _finish(left, allowance_report(left, options.units), options)
    plan = fit_plan(
        design,
        half_stop=values.mean("half_stop"),
        closed=values.mean("closed"),
        state=options.state,
        repeatability=values.read("repeatability", "0 mm"),
        **values.planning(),
    )
    return _finish(plan, plan_report(plan, options.units), options)


def _require_sense(options: argparse.Namespace) -> None:
    def refuse(message: str) -> None:
        raise UsageError(f"backspring fit: {message}")

    measured = options.closed is not None
    if options.half_stop is not None and not measured:
        refuse("--half-stop needs --closed")
    if measured and options.state is None:
        refuse("say --state loaded or --state unloaded of the readings")
    if not measured and options.state is not None:
        refuse("--state goes with readings: give --closed")
    if not measured and options.repeatability is not None:
        refuse("--repeatability goes with readings: give --closed")
    if options.ground is not None and options.log is None:
        refuse("--ground goes with --log FILE")
    if options.undo and (options.log is None or measured or options.ground is not None):
        refuse("--undo goes with --log FILE alone")
    plans = measured or options.log is not None
    for name in ("reserve", "closed_by", "material", "tip", "tip_allowance"):
        if getattr(options, name) is not None and not plans:
            refuse(f"--{name.replace('_', '-')} goes with a plan: give readings or --log")
    if options.support is not None and (plans or options.after_back is not None):
        refuse("--support goes with the allowance alone")
    if options.after_back is not None and (plans or options.output is not None):
        refuse("--after-back goes without readings, --log and --output")


class _Values:
    """Options read; a bare number is in the units of the output, or else of the design."""

    def __init__(self, options: argparse.Namespace, design: Design) -> None:
        self.options, self.units = options, options.units or design.units

    def length(self, written: str, option: str) -> str:
        """Read it in the units meant, and hand it on with its unit."""
        return with_unit(written, "length", option, self.units)

    def read(self, name: str, default: str) -> str:
        """Read one option."""
        written = getattr(self.options, name)
        return default if written is None else self.length(written, name)

    def target(self) -> str:
        """Read the target."""
        return self.read("target", "0.001 in")

    def mean(self, name: str) -> list[str] | None:
        """Read an option that may be repeated."""
        written = getattr(self.options, name)
        option = name.replace("_", "-")
        return None if written is None else [self.length(each, option) for each in written]

    def planning(self) -> dict[str, Any]:
        """Read how to plan."""
        given: dict[str, Any] = {"target": self.target()}
        if self.options.reserve is not None:
            given["reserve"] = self.options.reserve
        if self.options.closed_by is not None:
            given["closed_by"] = self.options.closed_by
        if self.options.tip is not None:
            tip = self.options.tip
            given["tip"] = tip if tip == "level" else self.length(tip, "tip")
        if self.options.tip_allowance is not None:
            given["tip_allowance"] = self.length(self.options.tip_allowance, "tip-allowance")
        if self.options.material is not None:
            given["material"] = {
                face.replace("-", "_"): self.length(depth, "material")
                for face, depth in self.options.material
            }
        return given


def _from_log(options: argparse.Namespace, design: Design) -> Answer:
    """Plan from all that the log holds with what is given; written once the plan stands."""
    from backspring.fit.log import FitLog

    log = FitLog(design, options.log, units=options.units)
    if options.undo:
        return _undo(log, options)
    if options.closed is None and options.ground is None:
        return _planned(log, options)
    with log.together(anew=True):
        _add(log, options)
        return _planned(log, options)


def _add(log: FitLog, options: argparse.Namespace) -> None:
    from backspring.fit.log import REPEATABILITY

    values = _Values(options, log.design)
    closed, half_stop = values.mean("closed") or [], values.mean("half_stop")
    if half_stop is not None and len(half_stop) != len(closed):
        raise UsageError("backspring fit: give as many --half-stop as --closed readings to a log")
    for face, depth in options.ground or ():
        log.grind(face.replace("-", "_"), values.length(depth, "ground"))
    for place, each in enumerate(closed):
        log.measure(
            closed=each,
            half_stop=None if half_stop is None else half_stop[place],
            state=options.state,
            repeatability=values.read("repeatability", REPEATABILITY),
        )


def _planned(log: FitLog, options: argparse.Namespace) -> Answer:
    plan = log.plan(**_Values(options, log.design).planning())
    return _finish(plan, log_report(log, plan, options.units), options, log)


def _undo(log: FitLog, options: argparse.Namespace) -> Answer:
    last, left = log.undo(), len(log.entries)
    data = {
        "design": {"name": log.design.name, "sha256": log.design.sha256},
        "undone": {"entry": left + 1, "kind": type(last).__name__, **asdict(last)},
        "log": {"entries": left},
    }
    return Answer("pass", data, undo_report(log, last), (), options.design)


def _finish(
    result: Allowance | BackGround | FitPlan,
    report: Any,
    options: argparse.Namespace,
    log: FitLog | None = None,
) -> Answer:
    data = result.to_dict()
    if log is not None:
        data["log"] = log.to_dict()
    if options.output is not None:
        write_picture(options.output, lambda picture: _picture(picture, result, options.units))
        data["output"] = options.output
    return Answer("pass", data, report, result.notices, options.design)


def _picture(picture: Any, result: Any, units: System | None) -> Any:
    if isinstance(result, FitPlan):
        return picture.fitting(result, units=units)
    return picture.allowance_curves(result.design, result.target_mm, units=units)
