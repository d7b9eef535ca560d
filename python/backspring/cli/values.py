"""Values of options."""

from __future__ import annotations

import argparse
from collections.abc import Iterable

from backspring.cli.given_design import given_design
from backspring.cli.streams import tell
from backspring.design.arguments import quantity
from backspring.errors import InvalidInput
from backspring.report.display import Shown, text
from backspring.unit_table import BARE, KINDS
from backspring.units import Kind, System, names_unit, parse, shown, system_written

_UNITS: dict[Kind, str] = {
    "force": " N",
    "length": " mm",
    "temperature": " C",
    "root stiffness": " N mm/rad",
}
_SHOWN: dict[Kind, Shown] = {
    "force": "force",
    "length": "reading",
    "stress": "stress",
    "temperature": "temperature",
    "compliance": "compliance",
    "root stiffness": "root_stiffness",
}
# A length from here on is no reading and no depth.
_SIZE_MM = 2.0
_QUANTITIES = {kind: each for each, kind in KINDS.items()}


def with_unit(
    written: str, kind: Kind, option: str, system: System, shown_in: System | None = None
) -> str:
    """Read a value once in the units meant, and hand it on with its unit.

    Who asks for other units in print may have meant them here too: what was taken is told.
    """
    value = quantity(written, kind, f"--{option}", system)
    tell_bare(written, kind, option, system, shown_in)
    return f"{value!r}{_UNITS.get(kind, '')}"


def tell_bare(
    written: str, kind: Kind, option: str, system: System, shown_in: System | None
) -> None:
    """Tell what a bare number was taken as, where other units are asked for in print.

    What cannot be read is refused elsewhere, with its reason.
    """
    if shown_in in (None, system) or BARE["mm"][kind] == BARE["in"][kind] or names_unit(written):
        return
    try:
        value = parse(written, kind, system)
    except InvalidInput:
        return
    told = " or ".join(_told(value, kind, units) for units in (system, shown_in))
    tell(
        f"--{option} {written}: taken as {told}, "
        f"for a bare number is in {BARE[system][kind]} here: write its unit"
    )


def _told(value: float, kind: Kind, units: System) -> str:
    if kind == "length" and abs(value) >= _SIZE_MM:
        return text(value, "length", units)
    if kind in _SHOWN:
        return text(value, _SHOWN[kind], units)
    return shown(value, _QUANTITIES[kind], units)


def shown_units(options: argparse.Namespace) -> System:
    """Return the units of the output: those asked for, or else the design's own."""
    if options.units is not None:
        units: System = options.units
        return units
    if getattr(options, "design", None) is None:
        return "mm"
    return given_design(options).units


def units_of_given(options: argparse.Namespace, given: Iterable[str | None]) -> System:
    """Return the units of an answer without a design file: those asked for, or those of inches.

    These where every quantity that is given is written in them; a bare number is in mm here.
    """
    if options.units is not None:
        units: System = options.units
        return units
    systems = {system_written(written) for written in given if written is not None}
    return "in" if systems == {"in"} else "mm"
