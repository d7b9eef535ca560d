"""Sizes and checks the spring of a slip-joint folding knife."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from backspring._core import Contact, SpringAlong, Sweep, __version__
    from backspring.checking import Check, TargetResult, check
    from backspring.checking_two import Beside, TwoCheck, check_two
    from backspring.design import Design
    from backspring.design_file.load import load
    from backspring.errors import Error, InvalidInput, NoConvergence, OutOfRange
    from backspring.fitting.back_ground import readings_after_back_grind
    from backspring.fitting.log import FitLog
    from backspring.fitting.plans import allowance, fit_plan
    from backspring.fitting.results import Allowance, FitPlan
    from backspring.grinding import (
        grind,
        grind_depth,
        grind_flush,
        grind_passes,
        grind_table,
    )
    from backspring.ground import Flush, GrindTable
    from backspring.influencing import Influence, gradient, influence
    from backspring.looking import (
        bearing_pressures,
        contact_at,
        permanent_set,
        spring_along,
        sweep,
    )
    from backspring.sized import Sized, Solution, Taper
    from backspring.sizing import DesignMap, design_map, propose_taper, size
    from backspring.study import ManyChecks, check_many
    from backspring.tolerancing import Tolerance, tolerance

__all__ = [
    "Allowance",
    "Beside",
    "Check",
    "Contact",
    "Design",
    "DesignMap",
    "Error",
    "FitLog",
    "FitPlan",
    "Flush",
    "GrindTable",
    "Influence",
    "InvalidInput",
    "ManyChecks",
    "NoConvergence",
    "OutOfRange",
    "Sized",
    "Solution",
    "SpringAlong",
    "Sweep",
    "Taper",
    "TargetResult",
    "Tolerance",
    "TwoCheck",
    "__version__",
    "allowance",
    "bearing_pressures",
    "check",
    "check_many",
    "check_two",
    "contact_at",
    "design_map",
    "fit_plan",
    "gradient",
    "grind",
    "grind_depth",
    "grind_flush",
    "grind_passes",
    "grind_table",
    "influence",
    "load",
    "permanent_set",
    "propose_taper",
    "readings_after_back_grind",
    "size",
    "spring_along",
    "sweep",
    "tolerance",
]

# Each name is fetched on first use, so that `backspring --help` answers at once.
_HOMES = {
    "Allowance": "fitting.results",
    "Beside": "checking_two",
    "Check": "checking",
    "Design": "design",
    "DesignMap": "sizing",
    "Error": "errors",
    "FitLog": "fitting.log",
    "FitPlan": "fitting.results",
    "Flush": "ground",
    "GrindTable": "ground",
    "Influence": "influencing",
    "InvalidInput": "errors",
    "ManyChecks": "study",
    "NoConvergence": "errors",
    "OutOfRange": "errors",
    "Sized": "sized",
    "Solution": "sized",
    "Taper": "sized",
    "TargetResult": "checking",
    "Tolerance": "tolerancing",
    "TwoCheck": "checking_two",
    "allowance": "fitting.plans",
    "bearing_pressures": "looking",
    "check": "checking",
    "check_many": "study",
    "check_two": "checking_two",
    "contact_at": "looking",
    "design_map": "sizing",
    "fit_plan": "fitting.plans",
    "gradient": "influencing",
    "grind": "grinding",
    "grind_depth": "grinding",
    "grind_flush": "grinding",
    "grind_passes": "grinding",
    "grind_table": "grinding",
    "influence": "influencing",
    "load": "design_file.load",
    "permanent_set": "looking",
    "propose_taper": "sizing",
    "readings_after_back_grind": "fitting.back_ground",
    "size": "sizing",
    "spring_along": "looking",
    "sweep": "looking",
    "tolerance": "tolerancing",
}


def __getattr__(name: str) -> Any:
    if name not in __all__:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    from importlib import import_module

    return getattr(import_module(f"{__name__}.{_HOMES.get(name, '_core')}"), name)


def __dir__() -> list[str]:
    return sorted([*globals(), *__all__])
