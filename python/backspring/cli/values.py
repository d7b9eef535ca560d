"""Values of options."""

from __future__ import annotations

import argparse

from backspring.cli.given_design import given_design
from backspring.design.arguments import quantity
from backspring.units import Kind, System

_UNITS: dict[Kind, str] = {"force": " N", "length": " mm"}


def with_unit(written: str, kind: Kind, option: str, system: System) -> str:
    """Read a value once in the units meant, and hand it on with its unit."""
    return f"{quantity(written, kind, f'--{option}', system)!r}{_UNITS.get(kind, '')}"


def shown_units(options: argparse.Namespace) -> System:
    """Return the units of the output: those asked for, or else the design's own."""
    if options.units is not None:
        units: System = options.units
        return units
    if getattr(options, "design", None) is None:
        return "mm"
    return given_design(options).units
