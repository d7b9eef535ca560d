"""Reads a value with its unit into the core's unit.

The core's units are mm, N, MPa, deg, C, HRC, g, kg mm2, N mm/rad and h.
"""

from __future__ import annotations

import math
import re
from decimal import Decimal, InvalidOperation
from fractions import Fraction
from numbers import Real
from typing import Any

from backspring._core import Quantity
from backspring.errors import InvalidInput
from backspring.faults import Fault, invalid
from backspring.unit_table import (
    AMBIGUOUS,
    BARE,
    UNITS,
    Kind,
    System,
    a_kind,
    system_of,
    unit_in,
    unit_names,
)

__all__ = [
    "Kind",
    "System",
    "converted",
    "names_unit",
    "parse",
    "shown",
    "system_written",
    "written_note",
]

_LONGEST_TEXT = 60
_LARGEST_EXPONENT = 300
_NUMBER = re.compile(
    r"(?P<sign>[+-]?)\s*"
    r"(?:(?:(?P<whole>\d+)(?:\s+|-))?(?P<top>\d+)\s*/\s*(?P<bottom>\d+)"
    r"|(?P<decimal>(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?))"
    r"\s*(?P<unit>.*)",
    re.DOTALL,
)
_COMMA = re.compile(r"\d,\d")
_SPELLINGS = str.maketrans(
    {"µ": "u", "μ": "u", "²": "2", "″": '"', "”": '"', "·": " ", "*": " ", "−": "-", "^": None}
)
# What a quantity of another library is asked to become; libraries differ in their names.
_ASKED: dict[Kind, tuple[str, ...]] = {
    "length": ("mm",),
    "force": ("N",),
    "stress": ("MPa",),
    "angle": ("deg",),
    "temperature": ("degC", "deg_C"),
    "mass": ("g",),
    "inertia": ("kg*mm**2",),
    "root stiffness": ("N*mm/rad",),
    "compliance": ("mm/N",),
    "time": ("h", "hr"),
    "number": ("dimensionless", ""),
}


def parse(value: Any, kind: Kind, system: System = "mm") -> float:
    """Read one value: a number, text with a unit, or a quantity of a unit library.

    A bare number, and text without a unit, has the unit that `system` gives to `kind`:
    "mm" means mm, N, MPa, C, g, kg mm2, N mm/rad; "in" means inch, lbf, ksi, F, oz, oz in2,
    lbf in/rad. Hardness is always HRC, an angle deg, a time h. Fractions are read: "3/32 in".

    Returns the value in the core's unit. Raises InvalidInput for anything else.
    """
    if isinstance(value, str):
        return _parse_text(value, kind, system)
    if isinstance(value, Real) and not isinstance(value, bool):
        number = _float(value)
        if not abs(number) <= 10.0**_LARGEST_EXPONENT:
            raise _refusal(f"must be a finite number, got {number:.10g}")
        return _convert(Fraction(Decimal(repr(number))), BARE[system][kind])
    if hasattr(value, "to"):
        return _ask_quantity(value, kind)
    raise _refusal(f"must be {a_kind(kind)}, got {_shown(value)}")


def converted(value: float, quantity: Quantity, system: System) -> float:
    """Turn a value in the core's unit into the unit that a bare number has in `system`."""
    unit = UNITS.get(unit_in(quantity, system))
    if unit is None or unit == UNITS.get(unit_in(quantity, "mm")) or not math.isfinite(value):
        return value
    return float((Fraction(value) - unit.shift) / unit.factor)


def shown(value: float, quantity: Quantity, system: System) -> str:
    """Write a value of the core with the unit that a bare number has in `system`."""
    number = f"{converted(value, quantity, system):.7g}"
    return f"{number} {unit_in(quantity, system)}".rstrip()


def written_note(value: Any, quantity: Quantity, system: System) -> str:
    """Quote what was written, where a message says it in another unit; else nothing."""
    values = value if isinstance(value, list | tuple) else [value]
    if any(isinstance(each, list | tuple | type(None)) for each in values):
        return ""
    bare = unit_in(quantity, system)
    if all(not isinstance(each, str) or _same_unit(each, bare) for each in values):
        return ""
    texts = [f'"{each}"' if isinstance(each, str) else f"{each} {bare}" for each in values]
    return f" (written {', '.join(texts)})"


def names_unit(written: str) -> bool:
    """Whether a text that holds a value says in what unit."""
    return bool(_unit_of(written))


def system_written(written: str) -> System | None:
    """Return the system whose unit a text with a value names; None where it names neither's."""
    name = _unit_of(written)
    return system_of(name) if name in UNITS else None


def _same_unit(text: str, bare: str) -> bool:
    name = _unit_of(text)
    return not name or UNITS.get(name) == UNITS[bare]


def _unit_of(text: str) -> str:
    match = _NUMBER.fullmatch(text.translate(_SPELLINGS).strip())
    return _unit_name(match["unit"]) if match else ""


def _float(value: Real) -> float:
    try:
        return float(value)
    except OverflowError:
        return math.inf


def _parse_text(text: str, kind: Kind, system: System) -> float:
    shown = f'"{text}"'
    if len(text) > _LONGEST_TEXT:
        raise _refusal(f"must be {a_kind(kind)}, got a text of {len(text)} characters")
    if _COMMA.search(text):
        raise _refusal(f"{shown} has a comma: write a decimal point, nothing between thousands")
    match = _NUMBER.fullmatch(text.translate(_SPELLINGS).strip())
    if match is None:
        raise _refusal(f"must be {a_kind(kind)}, got {shown}")
    name = _unit_name(match["unit"])
    if not name and match["top"] and system == "mm" and kind != "number":
        raise _refusal(f'{shown} has no unit: write a fraction with its unit, as "{text} in"')
    name = name or BARE[system][kind]
    _require_kind(name, kind, shown)
    return _convert(_number(match, shown), name)


def _number(match: re.Match[str], shown: str) -> Fraction:
    sign = -1 if match["sign"] == "-" else 1
    if match["top"]:
        if int(match["bottom"]) == 0:
            raise _refusal(f"{shown} divides by 0")
        return sign * (int(match["whole"] or 0) + Fraction(int(match["top"]), int(match["bottom"])))
    try:
        number = Decimal(match["decimal"])
    # An exponent beyond what even a decimal number may have.
    except InvalidOperation:
        raise _refusal(f"must be a finite number, got {shown}") from None
    if number and abs(number.adjusted()) > _LARGEST_EXPONENT:
        raise _refusal(f"must be a finite number, got {shown}")
    return sign * Fraction(number)


def _unit_name(written: str) -> str:
    name = " ".join(written.split())
    return "deg" if name == "°" else name.removeprefix("°")


def _require_kind(name: str, kind: Kind, shown: str) -> None:
    if name in AMBIGUOUS:
        raise _refusal(f'unit "{name}" in {shown} can be a force or a mass: {AMBIGUOUS[name]}')
    unit = UNITS.get(name)
    if unit is None:
        raise _refusal(f'unknown unit "{name}" in {shown}: {_near(name, kind)}')
    if unit.kind != kind:
        hint = f": did you mean {name}f?" if kind == "force" and f"{name}f" in UNITS else ""
        raise _refusal(f"must be {a_kind(kind)}, got {shown}, which is {a_kind(unit.kind)}{hint}")


def _near(name: str, kind: Kind) -> str:
    if kind == "number":
        return "write a plain number"
    import difflib

    known = unit_names(kind)
    alike = {each.casefold(): each for each in known}
    near = difflib.get_close_matches(name.casefold(), alike, n=1)
    return f'did you mean "{alike[near[0]]}"?' if near else f"known are {', '.join(known)}"


def _convert(number: Fraction, name: str) -> float:
    unit = UNITS[name]
    return float(number * unit.factor + unit.shift)


def _ask_quantity(value: Any, kind: Kind) -> float:
    for unit in _ASKED.get(kind, ()):
        # Each library has its own exception for a unit of the wrong kind.
        try:
            converted = value.to(unit)
            held = converted.magnitude if hasattr(converted, "magnitude") else converted.value
            number = float(held)
        except Exception:
            continue
        if math.isfinite(number):
            return number
    raise _refusal(f"must be {a_kind(kind)}, got {value}")


def _shown(value: Any) -> str:
    if isinstance(value, bool):
        return str(value).lower()
    if isinstance(value, list | tuple):
        return f"a list of {len(value)}"
    return "a table" if isinstance(value, dict) else str(value)


def _refusal(message: str) -> InvalidInput:
    return invalid([Fault("bad-value", "", message)])
