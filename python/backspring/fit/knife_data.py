"""What a knife's log holds and tells, as plain data."""

from __future__ import annotations

from dataclasses import asdict
from typing import TYPE_CHECKING, Any

from backspring.fit.misfit import worst

if TYPE_CHECKING:
    from backspring import _core
    from backspring.fit.estimate import FitEstimate
    from backspring.fit.next_measurement import NextMeasurement

# Figure by figure: the names of value and standard deviation.
NOW_SD = {
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


def knife_figures(row: _core.GrindRow) -> dict[str, float | None]:
    """Name what a row of a grinding table says as a log's figures are named."""
    return {
        "half_stop_loaded_mm": row.reading_loaded_half_stop_mm,
        "closed_loaded_mm": row.reading_loaded_closed_mm,
        "peak_pull_n": row.peak_pull_n,
        "travel_peak_stress_mpa": row.travel_peak_stress_mpa,
        "yield_margin": row.yield_margin,
    }


def sd_name(figure: str) -> str:
    """Name the standard deviation of a figure, as "removed_sd_mm" for "removed_mm"."""
    if figure in NOW_SD:
        return NOW_SD[figure]
    if figure.endswith("_margin"):
        return f"{figure}_sd"
    name, _, unit = figure.rpartition("_")
    return f"{name}_sd_{unit}"


def _now(found: FitEstimate) -> dict[str, float | None]:
    now: dict[str, float | None] = {}
    for name, sd_name in NOW_SD.items():
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
