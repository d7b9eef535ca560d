"""How temperatures, times and hardness are written for people."""

from __future__ import annotations

from backspring.report.display import STYLES, text, unit_of
from backspring.units import System


def temperature_unit(units: System) -> str:
    """Return C, or F beside inches."""
    return unit_of("temperature", units)


def degrees(value_c: float, units: System) -> float:
    """Turn a temperature into the unit that it is shown in."""
    style = STYLES[units]["temperature"]
    return value_c / style.size + style.zero


def temperature(value_c: float, units: System) -> str:
    """Write a temperature with its unit, to the degree."""
    return text(value_c, "temperature", units)


def time(value_h: float) -> str:
    """Write a time in the unit that suits it."""
    return text(value_h, "time", "mm")


def hardness(value_hrc: float) -> str:
    """Write a hardness as it was stated."""
    return f"{value_hrc:.10g} HRC"


def span(low: float, high: float) -> str:
    """Write the ends of a range."""
    return f"{low:.10g} to {high:.10g}"
