"""What a knife's log holds and tells, as plain data."""

from __future__ import annotations

from dataclasses import asdict
from typing import TYPE_CHECKING, Any

from backspring.fit.misfit import worst

if TYPE_CHECKING:
    from backspring.fit.estimate import FitEstimate
    from backspring.fit.next_measurement import NextMeasurement

# Figure by figure: the names of value and standard deviation.
_NOW = {
    "half_stop_loaded_mm": "half_stop_sd_mm",
    "closed_loaded_mm": "closed_sd_mm",
    "peak_pull_n": "peak_pull_sd_n",
    "closing_peak_pull_n": "closing_peak_pull_sd_n",
    "travel_peak_stress_mpa": "travel_peak_stress_sd_mpa",
    "yield_margin": "yield_margin_sd",
}


def knife_data(
    found: FitEstimate, entries: int, scatter_mm: float | None, following: list[NextMeasurement]
) -> dict[str, Any]:
    """Return what a log of so many entries tells."""
    return {
        "entries": entries,
        "ground": [asdict(each) for each in found.ground],
        "unknowns": {name: asdict(each) for name, each in found.unknowns.items()},
        "now": _now(found),
        "misfit": _misfit(found),
        "scatter_mm": scatter_mm,
        "next_measurement": [asdict(each) for each in following],
    }


def _now(found: FitEstimate) -> dict[str, float | None]:
    now: dict[str, float | None] = {}
    for name, sd_name in _NOW.items():
        figure = found.figures.get(name)
        now[name] = None if figure is None else figure.value
        now[sd_name] = None if figure is None else figure.sd
    return now


def _misfit(found: FitEstimate) -> dict[str, Any]:
    fits = worst(found.observations) if found.observations else None
    farthest = None
    if fits is not None:
        farthest = {
            "entry": fits.entry,
            "what": fits.what if not fits.state else f"{fits.what}_{fits.state}",
            "measured": fits.value,
            "estimate": fits.estimate,
            "foretold": fits.foretold,
            "standardised": fits.off,
        }
    misfit = found.misfit
    return {"chi_squared": misfit.chi_squared, "freedom": misfit.freedom, "worst": farthest}
