"""The simplest spring, from a few numbers on the command line instead of a design file."""

from __future__ import annotations

import argparse
from typing import Any

from backspring import Design, InvalidInput
from backspring.cli.usage import UsageError
from backspring.cli.values import tell_bare, units_of_given
from backspring.faults import Fault, invalid
from backspring.report.display import text
from backspring.units import System, parse

# Option, what it says, and the keys of a design that it stands for.
_OPTIONS = {
    "thickness": ("the same all along", ("spring.thickness",)),
    "length": ("middle pin to pivot", ("tang.pivot", "spring.pad", "fit.dial")),
    "width": ("stock thickness, across the liners", ("spring.width",)),
    "preload": ("interference at the pivot", ("fit.preload",)),
    "steel": ("as O1 or 1095", ("spring.steel",)),
    "hardness": ("Rockwell C", ("spring.hardness",)),
}
_LENGTHS = ("thickness", "length", "width", "preload")
_FACE_MM = 4.5
_CORNER_MM = 0.7
_PAD_BEHIND_MM = 5.0
_PAD_AHEAD_MM = 4.5
_FRONT_MM = 5.0
_NAIL_NICK_MM = 35.0


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add an option for each number."""
    group = parser.add_argument_group(
        "instead of a design file, all of", "a bare number is in mm, hardness in HRC"
    )
    for name, (help_line, _) in _OPTIONS.items():
        group.add_argument(f"--{name}", metavar=name.upper(), help=help_line)


def given(options: argparse.Namespace) -> list[str]:
    """Return the options that were given."""
    return [f"--{name}" for name in _OPTIONS if getattr(options, name) is not None]


def assumed(units: System) -> tuple[str, ...]:
    """Say what was chosen for the user."""
    behind, ahead, face, corner, front, nick = (
        text(each, "size", units)
        for each in (
            _PAD_BEHIND_MM,
            _PAD_AHEAD_MM,
            _FACE_MM,
            _CORNER_MM,
            _FRONT_MM,
            _NAIL_NICK_MM,
        )
    )
    return (
        "spring: one thickness all along, clamped at the middle pin",
        f"spring.pad: from {behind} behind the pivot to {ahead} ahead of it",
        f"tang: square, {face} from the pivot to each face, corner radius {corner}, reaching "
        f"{front} ahead",
        f"blade.nail_nick: {nick}",
    )


def make_design(options: argparse.Namespace) -> Design:
    """Make the design; `assumed()` has what was chosen for the user."""
    missing = [f"--{name}" for name in _OPTIONS if getattr(options, name) is None]
    if len(missing) == len(_OPTIONS):
        raise UsageError(f"backspring check: give a design file, or all of {', '.join(missing)}")
    if missing:
        raise UsageError(f"backspring check: missing {', '.join(missing)}")
    for name in _LENGTHS:
        tell_bare(getattr(options, name), "length", name, "mm", options.units)
    try:
        design = Design(**_tables(options))
    except InvalidInput as error:
        raise invalid([_by_option(fault) for fault in error.faults]) from None
    return design.replace(units=units_of_given(options, (getattr(options, n) for n in _LENGTHS)))


def _tables(options: argparse.Namespace) -> dict[str, Any]:
    length_mm = _length_mm(options.length)
    return {
        "name": "Uniform spring",
        "units": "mm",
        "spring": {
            "steel": options.steel,
            "hardness": options.hardness,
            "width": options.width,
            "thickness": options.thickness,
            "support": "clamped",
            "pin_hole": 0,
            "pad": [f"{length_mm - _PAD_BEHIND_MM!r} mm", f"{length_mm + _PAD_AHEAD_MM!r} mm"]
            if length_mm is not None
            else None,
        },
        "tang": {
            "pivot": options.length,
            "open": f"{_FACE_MM} mm",
            "half_stop": f"{_FACE_MM} mm",
            "closed": f"{_FACE_MM} mm",
            "corner_radius": f"{_CORNER_MM} mm",
            "front": f"{_FRONT_MM} mm",
        },
        "fit": {"preload": options.preload},
        "blade": {"nail_nick": f"{_NAIL_NICK_MM} mm"},
    }


def _length_mm(written: str) -> float | None:
    """Read the length; when it cannot be read the design tells why."""
    try:
        return parse(written, "length")
    except InvalidInput:
        return None


def _by_option(fault: Fault) -> Fault:
    for name, (_, keys) in _OPTIONS.items():
        if fault.key in keys:
            message = fault.message
            if fault.key == "spring.pad":
                message = f"the pad about the pivot {message.partition(' (written')[0]}"
            return fault._replace(key=f"--{name}", message=message)
    return fault
