"""Sizes and checks the spring of a slip-joint folding knife."""

from __future__ import annotations

from importlib import import_module
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from backspring import steel
    from backspring._core import Contact, __version__
    from backspring.design.design import Design
    from backspring.design.load import load
    from backspring.design.own_steels import add_steels
    from backspring.errors import Error, InvalidInput, NoConvergence, OutOfRange
    from backspring.fit.after_back_grind import readings_after_back_grind
    from backspring.fit.blades_of_log import plan_of_blades
    from backspring.fit.blades_result import BladesAllowance, BladesPlan
    from backspring.fit.habits import ShopHabits
    from backspring.fit.knife import Knife
    from backspring.fit.levers import Levers, levers
    from backspring.fit.plan import allowance, fit_plan
    from backspring.fit.result import Allowance, FitPlan
    from backspring.fit.shop_habits import shop_habits
    from backspring.many import ManyChecks, check_many
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
    from backspring.report.card_files import write_card
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
    "Levers",
    "ManyChecks",
    "NoConvergence",
    "OutOfRange",
    "OutlineReading",
    "Page",
    "Panel",
    "ShopHabits",
    "Sized",
    "Solution",
    "SpringAlong",
    "SpringLoading",
    "Sweep",
    "Taper",
    "TargetChange",
    "TargetResult",
    "Tolerance",
    "__version__",
    "add_steels",
    "advise",
    "allowance",
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
    "levers",
    "load",
    "load_spring",
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
_HOMES = {
    "Advice": "question.advise_result",
    "Advised": "question.advise_result",
    "Allowance": "fit.result",
    "Beside": "question.check",
    "BladesAllowance": "fit.blades_result",
    "BladesCheck": "question.check",
    "BladesComparison": "question.compare",
    "BladesPlan": "fit.blades_result",
    "Bushing": "question.bushing",
    "Cause": "question.causes",
    "Check": "question.check",
    "Comparison": "question.compare",
    "Design": "design.design",
    "DesignMap": "question.size",
    "Error": "errors",
    "FigureChange": "question.compare",
    "Knife": "fit.knife",
    "FitPlan": "fit.result",
    "Flush": "question.grind_result",
    "GrindTable": "question.grind_result",
    "GrindWays": "question.grind_ways",
    "Influence": "question.sensitivity",
    "InvalidInput": "errors",
    "Levers": "fit.levers",
    "ManyChecks": "many",
    "NoConvergence": "errors",
    "OutOfRange": "errors",
    "OutlineReading": "outline.reading",
    "Page": "report.page",
    "Panel": "picture.panel",
    "ShopHabits": "fit.habits",
    "Sized": "question.size_result",
    "Solution": "question.size_result",
    "SpringAlong": "question.sweep",
    "SpringLoading": "question.load_spring",
    "Sweep": "question.sweep",
    "Taper": "question.size_result",
    "TargetChange": "question.compare",
    "TargetResult": "question.targets",
    "Tolerance": "question.tolerance",
    "add_steels": "design.own_steels",
    "advise": "question.advise",
    "allowance": "fit.plan",
    "bearing_pressures": "question.sweep",
    "check": "question.check",
    "check_many": "many",
    "compare": "question.compare",
    "contact_at": "question.sweep",
    "contacts": "question.sweep",
    "design_map": "question.size",
    "fit_plan": "fit.plan",
    "gradient": "question.sensitivity",
    "gradient_sides": "question.sensitivity",
    "grind": "question.grind",
    "grind_depth": "question.grind",
    "grind_flush": "question.grind",
    "grind_passes": "question.grind",
    "grind_table": "question.grind",
    "grind_ways": "question.grind_ways",
    "in_words": "report.sentences",
    "influence": "question.sensitivity",
    "levers": "fit.levers",
    "load": "design.load",
    "load_spring": "question.load_spring",
    "page": "report.page",
    "panel": "picture.panel",
    "read_outline": "outline.reading",
    "write_card": "report.card_files",
    "write_template": "outline.written",
    "permanent_set": "question.sweep",
    "plan_of_blades": "fit.blades_of_log",
    "plot": "picture.plot",
    "propose_taper": "question.size",
    "readings_after_back_grind": "fit.after_back_grind",
    "shop_habits": "fit.shop_habits",
    "size": "question.size",
    "spring_along": "question.sweep",
    "steel": "steel",
    "sweep": "question.sweep",
    "tolerance": "question.tolerance",
    "turning_test": "question.bushing",
}


def __getattr__(name: str) -> Any:
    if name not in __all__:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    home = import_module(f"{__name__}.{_HOMES.get(name, '_core')}")
    return home if name == "steel" else getattr(home, name)


def __dir__() -> list[str]:
    return sorted([*globals(), *__all__])
