"""How temperatures, times and hardness are written for people."""

from __future__ import annotations

import re

from backspring.units import System

_NUMBER = r"(-?\d+(?:\.\d+)?)"
_DEGREES = re.compile(rf"(?:{_NUMBER}( to | and ))?{_NUMBER} C\b")


def temperature_unit(units: System) -> str:
    """Return C, or F beside inches."""
    return "F" if units == "in" else "C"


def degrees(value_c: float, units: System) -> float:
    """Turn a temperature into the unit that it is shown in."""
    return value_c * 9.0 / 5.0 + 32.0 if units == "in" else value_c


def temperature(value_c: float, units: System) -> str:
    """Write a temperature with its unit, to the degree."""
    return f"{degrees(value_c, units):.0f} {temperature_unit(units)}"


def temperatures_in(message: str, units: System) -> str:
    """Turn the temperatures of a message in C, single or a span, into the units asked for."""
    if units == "mm":
        return message

    def turned(found: re.Match[str]) -> str:
        low, word, high = found.groups()
        first = "" if low is None else f"{degrees(float(low), units):.0f}{word}"
        return first + temperature(float(high), units)

    return _DEGREES.sub(turned, message)


def time(value_h: float) -> str:
    """Write a time in the unit that suits it."""
    for size, unit in ((1.0, "h"), (1.0 / 60.0, "min")):
        if value_h >= size:
            return f"{value_h / size:.4g} {unit}"
    return f"{value_h * 3600.0:.4g} s"


def hardness(value_hrc: float) -> str:
    """Write a hardness as it was stated."""
    return f"{value_hrc:.10g} HRC"


def span(low: float, high: float) -> str:
    """Write the ends of a range."""
    return f"{low:.10g} to {high:.10g}"
