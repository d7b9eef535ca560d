"""How temperatures, times and hardness are written for people."""

from __future__ import annotations

from backspring.units import System


def temperature_unit(units: System) -> str:
    """Return C, or F beside inches."""
    return "F" if units == "in" else "C"


def degrees(value_c: float, units: System) -> float:
    """Turn a temperature into the unit that it is shown in."""
    return value_c * 9.0 / 5.0 + 32.0 if units == "in" else value_c


def temperature(value_c: float, units: System) -> str:
    """Write a temperature with its unit, to the degree."""
    return f"{degrees(value_c, units):.0f} {temperature_unit(units)}"


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
