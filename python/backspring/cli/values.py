"""Values of options."""

from __future__ import annotations

from backspring.design.arguments import quantity
from backspring.units import Kind, System

_UNITS: dict[Kind, str] = {"force": " N", "length": " mm"}


def with_unit(written: str, kind: Kind, option: str, system: System) -> str:
    """Read a value once in the units meant, and hand it on with its unit."""
    return f"{quantity(written, kind, f'--{option}', system)!r}{_UNITS.get(kind, '')}"
