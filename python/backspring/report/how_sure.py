"""How sure the figures of one knife are, in words."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from backspring.report.display import Shown, reading, text
from backspring.units import System

# A figure of a log: what it is called, and what kind of number it is.
FIGURES: dict[str, tuple[str, Shown]] = {
    "half_stop_loaded_mm": ("half-stop loaded", "reading"),
    "closed_loaded_mm": ("closed loaded", "reading"),
    "peak_pull_n": ("peak pull to open", "force"),
    "closing_peak_pull_n": ("peak pull to close", "force"),
    "travel_peak_stress_mpa": ("worst stress", "stress"),
    "yield_margin": ("yield margin", "margin"),
}
# A figure known no better than to this share of itself has no digits; a reading, than to this.
_KNOWN_SHARE = 0.5
_KNOWN_READING_MM = 0.5


def is_guess(value: float, sd: float) -> bool:
    """Say whether a figure is known so badly that its digits say nothing."""
    return sd > _KNOWN_SHARE * abs(value)


def sure_to(sd: float, kind: Shown, units: System) -> str:
    """Write a standard deviation with its unit."""
    return f"+-{text(sd, kind, units)}"


def good_to(sd: float | None, kind: Shown, units: System) -> str:
    """Say how sure a number is."""
    return "how sure is not known" if sd is None else f"good to {sure_to(sd, kind, units)}"


def figure_lines(
    figures: Mapping[str, tuple[float | None, float | None]], units: System
) -> Iterator[str]:
    """Say figures of a log, each with its standard deviation; of what has none, nothing."""
    for name, (label, kind) in FIGURES.items():
        value, sd = figures.get(name, (None, None))
        if value is None or sd is None:
            continue
        if name.endswith("_loaded_mm"):
            known, digits = sd <= _KNOWN_READING_MM, f"{reading(value, units)}, good to"
        else:
            known, digits = not is_guess(value, sd), text(value, kind, units)
        yield f"{label}: {f'{digits} {sure_to(sd, kind, units)}' if known else 'not known yet'}"
