"""Values of options."""

from __future__ import annotations

import argparse

from backspring.cli.given_design import given_design
from backspring.cli.streams import tell
from backspring.design.arguments import quantity
from backspring.report.display import Shown, text
from backspring.unit_table import BARE
from backspring.units import Kind, System, names_unit

_UNITS: dict[Kind, str] = {"force": " N", "length": " mm"}
_SHOWN: dict[Kind, Shown] = {"force": "force", "length": "reading"}


def with_unit(
    written: str, kind: Kind, option: str, system: System, shown_in: System | None = None
) -> str:
    """Read a value once in the units meant, and hand it on with its unit.

    Who asks for other units in print may have meant them here too: what was taken is told.
    """
    value = quantity(written, kind, f"--{option}", system)
    if shown_in not in (None, system) and kind in _SHOWN and not names_unit(written):
        told = " or ".join(text(value, _SHOWN[kind], units) for units in (system, shown_in))
        tell(
            f"--{option} {written}: taken as {told}, "
            f"for a bare number is in {BARE[system][kind]} here: write its unit"
        )
    return f"{value!r}{_UNITS.get(kind, '')}"


def shown_units(options: argparse.Namespace) -> System:
    """Return the units of the output: those asked for, or else the design's own."""
    if options.units is not None:
        units: System = options.units
        return units
    if getattr(options, "design", None) is None:
        return "mm"
    return given_design(options).units
