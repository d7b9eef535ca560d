"""Sizes and checks the spring of a slip-joint folding knife."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from backspring._core import Contact, SpringAlong, Sweep, __version__
    from backspring.checking import Check, TargetResult, check
    from backspring.design import Design
    from backspring.design_file import load
    from backspring.errors import Error, InvalidInput, NoConvergence, OutOfRange
    from backspring.looking import contact_at, spring_along, sweep

__all__ = [
    "Check",
    "Contact",
    "Design",
    "Error",
    "InvalidInput",
    "NoConvergence",
    "OutOfRange",
    "SpringAlong",
    "Sweep",
    "TargetResult",
    "__version__",
    "check",
    "contact_at",
    "load",
    "spring_along",
    "sweep",
]

# Each name is fetched on first use, so that `backspring --help` answers at once.
_HOMES = {
    "Check": "checking",
    "Design": "design",
    "Error": "errors",
    "InvalidInput": "errors",
    "NoConvergence": "errors",
    "OutOfRange": "errors",
    "TargetResult": "checking",
    "check": "checking",
    "contact_at": "looking",
    "load": "design_file",
    "spring_along": "looking",
    "sweep": "looking",
}


def __getattr__(name: str) -> Any:
    if name not in __all__:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    from importlib import import_module

    return getattr(import_module(f"{__name__}.{_HOMES.get(name, '_core')}"), name)


def __dir__() -> list[str]:
    return sorted([*globals(), *__all__])
