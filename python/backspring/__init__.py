"""Sizes and checks the spring of a slip-joint folding knife."""

from __future__ import annotations

# As typing has it, which takes longer to load than the core.
TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from backspring import steel
    from backspring._core import Contact, __version__
    from backspring.design.design import Design
    from backspring.design.load import load
    from backspring.design.own_steels import add_steels
    from backspring.errors import Error, InvalidInput, NoConvergence, OutOfRange, WorkerLost
    from backspring.fit.after_back_grind import readings_after_back_grind
    from backspring.fit.answer_spread import answer_sds
    from backspring.fit.blades_of_log import plan_of_blades
    from backspring.fit.blades_result import BladesAllowance, BladesPlan
    from backspring.fit.habits import ShopHabits
    from backspring.fit.knife import Knife
    from backspring.fit.levers import Levers, levers
    from backspring.fit.plan import allowance, fit_plan
    from backspring.fit.result import Allowance, FitPlan
    from backspring.fit.shop_habits import shop_habits
    from backspring.many import ManyChecks, check_many
    from backspring.new_joint.layout import Layout, Proposal, layout
    from backspring.new_joint.measured import measured_design
    from backspring.new_joint.starter import Starter, new_design
    from backspring.outline.reading import OutlineReading, read_outline
    from backspring.outline.written import write_template
    from backspring.picture.panel import Panel, panel
    from backspring.picture.plot import plot
    from backspring.question.advise import advise
    from backspring.question.advise_result import Advice, Advised
    from backspring.question.bushing import Bushing, turning_test
    from backspring.question.causes import Cause
    from backspring.question.check import Beside, BladesCheck, Check, check
    from backspring.question.compare import (
        BladesComparison,
        Comparison,
        FigureChange,
        TargetChange,
        compare,
    )
    from backspring.question.grind import (
        grind,
        grind_depth,
        grind_flush,
        grind_passes,
        grind_table,
    )
    from backspring.question.grind_result import Flush, GrindTable
    from backspring.question.grind_ways import GrindWays, grind_ways
    from backspring.question.load_spring import SpringLoading, load_spring
    from backspring.question.sensitivity import Influence, gradient, gradient_sides, influence
    from backspring.question.size import DesignMap, design_map, propose_taper, size
    from backspring.question.size_result import Sized, Solution, Taper
    from backspring.question.sweep import (
        SpringAlong,
        Sweep,
        bearing_pressures,
        contact_at,
        contacts,
        permanent_set,
        spring_along,
        sweep,
    )
    from backspring.question.targets import TargetResult
    from backspring.question.tolerance import Tolerance, tolerance
    from backspring.report.card_files import Cards, write_card
    from backspring.report.page import Page, page
    from backspring.report.sentences import in_words

__all__ = [
    "Advice",
    "Advised",
    "Allowance",
    "Beside",
    "BladesAllowance",
    "BladesCheck",
    "BladesComparison",
    "BladesPlan",
    "Bushing",
    "Cards",
    "Cause",
    "Check",
    "Comparison",
    "Contact",
    "Design",
    "DesignMap",
    "Error",
    "FigureChange",
    "Knife",
    "FitPlan",
    "Flush",
    "GrindTable",
    "GrindWays",
    "Influence",
    "InvalidInput",
    "Layout",
    "Levers",
    "ManyChecks",
    "NoConvergence",
    "OutOfRange",
    "OutlineReading",
    "Page",
    "Panel",
    "Proposal",
    "ShopHabits",
    "Sized",
    "Solution",
    "SpringAlong",
    "SpringLoading",
    "Starter",
    "Sweep",
    "Taper",
    "TargetChange",
    "TargetResult",
    "Tolerance",
    "WorkerLost",
    "__version__",
    "add_steels",
    "advise",
    "allowance",
    "answer_sds",
    "bearing_pressures",
    "check",
    "check_many",
    "compare",
    "contact_at",
    "contacts",
    "design_map",
    "fit_plan",
    "gradient",
    "gradient_sides",
    "grind",
    "grind_depth",
    "grind_flush",
    "grind_passes",
    "grind_table",
    "grind_ways",
    "in_words",
    "influence",
    "layout",
    "levers",
    "load",
    "load_spring",
    "measured_design",
    "new_design",
    "page",
    "panel",
    "read_outline",
    "write_card",
    "write_template",
    "permanent_set",
    "plan_of_blades",
    "plot",
    "propose_taper",
    "readings_after_back_grind",
    "shop_habits",
    "size",
    "spring_along",
    "steel",
    "sweep",
    "tolerance",
    "turning_test",
]

# Each name is fetched on first use, so that `backspring --help` answers at once.
_NAMES = {
    "design.design": "Design",
    "design.load": "load",
    "design.own_steels": "add_steels",
    "errors": "Error InvalidInput NoConvergence OutOfRange WorkerLost",
    "fit.after_back_grind": "readings_after_back_grind",
    "fit.answer_spread": "answer_sds",
    "fit.blades_of_log": "plan_of_blades",
    "fit.blades_result": "BladesAllowance BladesPlan",
    "fit.habits": "ShopHabits",
    "fit.knife": "Knife",
    "fit.levers": "Levers levers",
    "fit.plan": "allowance fit_plan",
    "fit.result": "Allowance FitPlan",
    "fit.shop_habits": "shop_habits",
    "new_joint.layout": "Layout Proposal layout",
    "new_joint.measured": "measured_design",
    "new_joint.starter": "Starter new_design",
    "many": "ManyChecks check_many",
    "outline.reading": "OutlineReading read_outline",
    "outline.written": "write_template",
    "picture.panel": "Panel panel",
    "picture.plot": "plot",
    "question.advise": "advise",
    "question.advise_result": "Advice Advised",
    "question.bushing": "Bushing turning_test",
    "question.causes": "Cause",
    "question.check": "Beside BladesCheck Check check",
    "question.compare": "BladesComparison Comparison FigureChange TargetChange compare",
    "question.grind": "grind grind_depth grind_flush grind_passes grind_table",
    "question.grind_result": "Flush GrindTable",
    "question.grind_ways": "GrindWays grind_ways",
    "question.load_spring": "SpringLoading load_spring",
    "question.sensitivity": "Influence gradient gradient_sides influence",
    "question.size": "DesignMap design_map propose_taper size",
    "question.size_result": "Sized Solution Taper",
    "question.sweep": "SpringAlong Sweep bearing_pressures contact_at contacts permanent_set "
    "spring_along sweep",
    "question.targets": "TargetResult",
    "question.tolerance": "Tolerance tolerance",
    "report.card_files": "Cards write_card",
    "report.page": "Page page",
    "report.sentences": "in_words",
}
_HOMES = {name: home for home, names in _NAMES.items() for name in names.split()}


def __getattr__(name: str) -> Any:
    if name not in __all__:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    from importlib import import_module

    if name == "steel":
        return import_module(f"{__name__}.steel")
    return getattr(import_module(f"{__name__}.{_HOMES.get(name, '_core')}"), name)


def __dir__() -> list[str]:
    return sorted([*globals(), *__all__])
