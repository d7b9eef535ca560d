"""Every picture by one name: what is drawn follows from the result that is given."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from matplotlib.axes import Axes
from matplotlib.figure import Figure, SubFigure

from backspring.design.arguments import refusal
from backspring.design.design import Design
from backspring.fit.blades_result import BladesAllowance, BladesPlan
from backspring.fit.levers import Levers
from backspring.fit.result import Allowance, FitPlan
from backspring.outline.reading import OutlineReading
from backspring.picture.action import action
from backspring.picture.allowance import allowance_curves
from backspring.picture.blades_action import blades_action
from backspring.picture.blades_back import blades_back
from backspring.picture.blades_stress import blades_stress
from backspring.picture.compare import blades_comparison, comparison
from backspring.picture.design_map import design_map, map_of
from backspring.picture.faces import lever_bars, ways_to_pull
from backspring.picture.fitting import fitting
from backspring.picture.flush import flush_back
from backspring.picture.grinding import grinding
from backspring.picture.influence import influence
from backspring.picture.load_spring import spring_loading
from backspring.picture.outline_reading import outline_picture
from backspring.picture.positions import positions
from backspring.picture.sheet import blades_sheet, sheet
from backspring.picture.stress import stress_along
from backspring.picture.temper import temper_curve
from backspring.picture.tolerance import tolerance
from backspring.picture.whole_back import whole_back
from backspring.picture.whole_joint import whole_joint
from backspring.question.check import BladesCheck, Check, check
from backspring.question.compare import BladesComparison, Comparison
from backspring.question.grind_result import Flush, Rows
from backspring.question.grind_ways import GrindWays
from backspring.question.load_spring import SpringLoading
from backspring.question.sensitivity import Influence
from backspring.question.size import DesignMap
from backspring.question.size_result import Sized, Solution, Taper
from backspring.question.tolerance import Tolerance
from backspring.steel.records import Steel

Draw = Callable[..., Any]

_CHECK: dict[str, Draw] = {
    "sheet": sheet,
    "positions": positions,
    "stress": stress_along,
    "action": action,
    "back": whole_back,
}


_BLADES: dict[str, Draw] = {
    "sheet": blades_sheet,
    "positions": whole_joint,
    "stress": blades_stress,
    "action": blades_action,
    "back": blades_back,
}


def _allowance(left: Allowance, **options: Any) -> Figure:
    return allowance_curves(left.design, left.target_mm, **options)


def _temper(steel: Steel, **options: Any) -> Axes:
    return temper_curve(steel.name, **options)


# The first kind of each is drawn when none is named.
KINDS: tuple[tuple[type, dict[str, Draw]], ...] = (
    (Check, _CHECK),
    (BladesCheck, _BLADES),
    (Design, _CHECK),
    (Comparison, {"compare": comparison}),
    (BladesComparison, {"compare": blades_comparison}),
    (Flush, {"grind": grinding, "flush": flush_back}),
    (Rows, {"grind": grinding}),
    (GrindWays, {"ways": ways_to_pull}),
    (Levers, {"levers": lever_bars}),
    (Allowance, {"allowance": _allowance}),
    (FitPlan, {"fit": fitting}),
    (SpringLoading, {"load": spring_loading}),
    (Influence, {"influence": influence}),
    (DesignMap, {"map": design_map}),
    (Sized, {"map": map_of}),
    (Tolerance, {"tolerance": tolerance}),
    (Steel, {"temper": _temper}),
    (OutlineReading, {"outline": outline_picture}),
)
# Those drawn in axes of their own or in given ones; the others are whole figures.
IN_AXES = (
    stress_along,
    action,
    comparison,
    whole_back,
    blades_stress,
    blades_action,
    spring_loading,
    flush_back,
    lever_bars,
    design_map,
    _temper,
)


def plot(
    result: Any, kind: str | None = None, *, ax: Axes | None = None, **options: Any
) -> Figure | SubFigure | Axes:
    """Draw a result.

    A check or a design: `kind` "sheet", "positions", "stress", "action" or "back"; positions and
    stress also at a `blade_angle_deg`. A map: wanted `pull_n` and `yield_margin` are marked. A
    steel: `time_h` and `mark`. Flush grinding: "grind" or "flush". What grinding does and the ways
    to a pull, levers, getting the spring over the tang, an allowance, a plan, an influence, sizes,
    a comparison and a tolerance have one picture each. A solution and a taper are drawn as their
    designs.

    Of several blades the same kinds show all on their spring, or with `blade` one of them; an
    allowance or a plan of all needs `blade`. What was read from a drawing or a scan is drawn as it
    was taken.

    `units` "mm" or "in" take the place of the design's own. Returns the figure; with `ax`, which
    stress, action, back, compare, flush, levers, load, map and temper can be drawn into, the axes.
    Raises InvalidInput for a kind that the result does not have.
    """
    result, options = _of_blades(result, kind, options)
    name, draw = _drawing(result, kind)
    try:
        if ax is not None:
            if draw not in IN_AXES:
                raise refusal("ax", f"{name} is a figure of its own: leave ax out")
            axes: Axes = draw(result, ax=ax, **options)
            return axes
        drawn = draw(result, **options)
    except TypeError as error:
        if "keyword argument" not in str(error):
            raise
        raise refusal("options", f"{name}: {str(error).partition('() ')[2]}") from None
    figure: Figure | SubFigure = drawn.figure if draw in IN_AXES else drawn
    return figure


def _of_blades(
    result: Any, kind: str | None, options: dict[str, Any]
) -> tuple[Any, dict[str, Any]]:
    """Check a design with several blades, and take the one that is asked for.

    Positions show the whole joint also for one blade.
    """
    if isinstance(result, Solution | Taper):
        result = result.design
    if isinstance(result, BladesAllowance | BladesPlan):
        return _of_one(result, options)
    if isinstance(result, Design) and result.of_all_blades:
        result = check(result)
    if not isinstance(result, BladesCheck):
        return result, options
    blade = options.get("blade")
    if blade is None:
        if options.get("blade_angle_deg") is not None:
            raise refusal("blade", "must say which blade stands at blade_angle_deg")
        return result, options
    one = result.design.seen_from(blade)
    if kind == "positions":
        return result, options
    rest = {key: value for key, value in options.items() if key != "blade"}
    return result.blades[one.blade], rest


def _of_one(
    result: BladesAllowance | BladesPlan, options: dict[str, Any]
) -> tuple[Any, dict[str, Any]]:
    blade = str(options.get("blade"))
    if blade not in result.blades:
        raise refusal("blade", f"must be one of {', '.join(result.blades)}, got {blade}")
    rest = {key: value for key, value in options.items() if key != "blade"}
    return result.blades[blade], rest


def _drawing(result: Any, kind: str | None) -> tuple[str, Draw]:
    for type_, kinds in KINDS:
        if not isinstance(result, type_):
            continue
        name = kind or next(iter(kinds))
        if name not in kinds:
            raise refusal("kind", f"must be {' or '.join(kinds)} for this result, got {kind!r}")
        return name, kinds[name]
    raise refusal("result", f"has no picture: {type(result).__name__}")
