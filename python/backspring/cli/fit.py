"""`backspring fit`: the allowance to leave, or what to take off which face."""

from __future__ import annotations

import argparse
from typing import Any

from backspring.cli import fit_log
from backspring.cli.answer import Answer
from backspring.cli.fit_values import Values, require_faces
from backspring.cli.given_design import add_design, given_design
from backspring.cli.of_blades import add_blade, chosen, for_each_blade
from backspring.cli.pictures import write_picture
from backspring.cli.usage import UsageError
from backspring.fit.after_back_grind import BackGround, readings_after_back_grind
from backspring.fit.blades_result import BladesAllowance, BladesPlan
from backspring.fit.plan import allowance, fit_plan
from backspring.fit.result import FACES, Allowance, FitPlan
from backspring.report.knife import log_report
from backspring.units import System


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add what the command takes."""
    add = parser.add_argument
    add_design(parser)
    add("--target", metavar="READING", help="loaded reading wanted (default: 0.001 in)")
    add("--support", help="instead of the design's own: two-pins, clamped, or a root stiffness")
    repeats = 'measured; repeats may be given; of several blades "NAME: READING", or --blade'
    add("--half-stop", action="append", metavar="READING", help=repeats)
    add("--closed", action="append", metavar="READING", help=repeats)
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
    add_blade(parser)
    fit_log.add_arguments(parser)
    add(
        "--output",
        metavar="FILE",
        help="picture of plan or allowance to FILE.png or FILE.svg",
    )


def run(options: argparse.Namespace) -> Answer:
    """Answer with the allowance, or with a plan from readings or from a log."""
    _require_sense(options)
    design = chosen(given_design(options), options)
    several = design.of_all_blades or (options.log is not None and len(design.blades) > 1)
    if options.output is not None and several:
        raise UsageError("backspring fit: --output shows one blade: give --blade NAME, no --log")
    require_faces(options, design)
    values = Values(options, design)
    if options.log is not None:
        return _from_log(options, values)
    if options.after_back is not None:
        return for_each_blade(
            design, options, lambda one: _after_back(options, Values(options, one))
        )
    if options.closed is None:
        left = allowance(design, values.target(), values.support())
        return _finish(left, left.laid_out(options.units), options)
    plan = _plan(options, values)
    return _finish(plan, plan.laid_out(options.units), options)


def _plan(options: argparse.Namespace, values: Values) -> FitPlan | BladesPlan:
    repeatability = values.read("repeatability", "0 mm")
    given = {"state": options.state, "repeatability": repeatability, **values.planning()}
    if values.design.of_all_blades:
        return fit_plan(values.design, values.by_blade(), **given)
    half_stop, closed = values.mean("half_stop"), values.mean("closed")
    return fit_plan(values.design, half_stop=half_stop, closed=closed, **given)


def _after_back(options: argparse.Namespace, values: Values) -> Answer:
    depth = values.length(options.after_back, "after-back")
    ground = readings_after_back_grind(values.design, depth, values.target())
    return _finish(ground, ground.laid_out(options.units), options)


def _require_sense(options: argparse.Namespace) -> None:
    def refuse(message: str) -> None:
        raise UsageError(f"backspring fit: {message}")

    measured = options.closed is not None
    if options.half_stop is not None and not measured:
        if options.log is None:
            refuse("--half-stop needs --closed")
        measured = True
    if measured and options.state is None:
        refuse("say --state loaded or --state unloaded of the readings")
    if not measured and options.state is not None:
        refuse("--state goes with readings: give --closed")
    if not measured and options.repeatability is not None:
        refuse("--repeatability goes with readings: give --closed")
    fit_log.require_sense(options, refuse)
    plans = measured or options.log is not None
    for name in ("reserve", "closed_by", "material", "tip", "tip_allowance"):
        if getattr(options, name) is not None and not plans:
            refuse(f"--{name.replace('_', '-')} goes with a plan: give readings or --log")
    if options.support is not None and (plans or options.after_back is not None):
        refuse("--support goes with the allowance alone")
    if options.after_back is not None and (plans or options.output is not None):
        refuse("--after-back goes without readings, --log and --output")


def _from_log(options: argparse.Namespace, values: Values) -> Answer:
    """Plan from all that the log holds with what is given; written once the answer stands."""
    with fit_log.opened(options, values) as knife:
        if options.undo:
            return fit_log.undone(knife, options)
        if len(knife.drawn.blades) > 1:
            return fit_log.of_blades(knife, options, values)
        if not knife.can_plan():
            return fit_log.told(knife, options)
        plan = knife.plan(**values.planning())
        report = log_report(knife, plan, options.units)
        return _finish(plan, report, options, {"knife": knife.to_dict()})


def _finish(
    result: Allowance | BladesAllowance | BackGround | FitPlan | BladesPlan,
    report: Any,
    options: argparse.Namespace,
    more: dict[str, Any] | None = None,
) -> Answer:
    data = result.to_dict() | (more or {})
    if options.output is not None:
        write_picture(options.output, lambda picture: _picture(picture, result, options.units))
        data["output"] = options.output
    # What no plan mends is a target missed.
    missed = isinstance(result, BladesPlan) and bool(result.unmet)
    return Answer("fail" if missed else "pass", data, report, result.notices, options.design)


def _picture(picture: Any, result: Any, units: System | None) -> Any:
    if isinstance(result, FitPlan):
        return picture.fitting(result, units=units)
    return picture.allowance_curves(result.design, result.target_mm, units=units)
