"""Figures of a check by name, so that two checks can be held side by side."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator

from backspring import _core

Figures = dict[str, float | None]
# Named as in studies: what is looked at until the causes of its change are clear.
MAIN = (
    "peak_pull_n",
    "peak_torque_nmm",
    "travel_peak_stress_mpa",
    "yield_margin",
    "reading_loaded_half_stop_mm",
    "reading_loaded_closed_mm",
)
_STROKE = (
    "start_pull_n",
    "peak_pull_n",
    "closing_start_pull_n",
    "closing_peak_pull_n",
    "start_torque_nmm",
    "peak_torque_nmm",
    "peak_torque_angle_deg",
    "closing_peak_torque_nmm",
    "crest_angle_deg",
    "energy_up_mj",
    "energy_released_mj",
    "snap_energy_mj",
    "tip_speed_m_per_s",
)
_POSITION = ("blade_angle_deg", "force_n", "peak_stress_mpa", "yield_margin", "energy_mj")
_READINGS = ("reading_loaded", "reading_unloaded")
_TRAVEL = ("peak_force_n", "peak_stress_angle_deg", "peak_stress_station_mm")
_MARGINS = ("yield_margin", "yield_margin_low", "yield_margin_high")
_GREATEST = (
    "peak_pull_n",
    "closing_peak_pull_n",
    "peak_torque_nmm",
    "snap_energy_mj",
    "tip_speed_m_per_s",
)
_SEATS = ("open_nmm_per_deg", "half_stop_nmm_per_deg", "closed_nmm_per_deg")
_CLOSED = ("tip_mm", "edge_gap_mm")


def figures_of(found: _core.Check) -> Figures:
    """Return every number of a check; None for one that it does not have."""
    return {
        name: None if value is None or math.isnan(value) else value
        for name, value in _figures(found)
    }


def feel_figures(feel: _core.Feel, strokes: Iterable[_core.StrokeReport]) -> Figures:
    """Return what the hand meets."""
    rises = {
        f"feel.rise_{_way(stroke)}_mm": rise
        for stroke, rise in zip(strokes, feel.rise_mm, strict=False)
    }
    one = ("pull_oiled_n", "pull_dry_n", "evenness", "dial_lift_mm")
    return {
        **{f"feel.{name}": getattr(feel, name) for name in one},
        **rises,
        **{f"feel.seat_{name}": getattr(feel.seat, name) for name in _SEATS},
    }


def _figures(found: _core.Check) -> Iterator[tuple[str, float | None]]:
    for name in _GREATEST:
        values = [value for each in found.strokes if (value := getattr(each, name)) is not None]
        yield name, max(values, default=None)
    yield "travel_peak_stress_mpa", found.travel.peak_stress_mpa
    for name in _MARGINS:
        yield name, getattr(found.travel, name)
    for name in _READINGS:
        for position in found.positions:
            if position.name != "open":
                yield f"{name}_{position.name}_mm", getattr(position, f"{name}_mm")
    yield "stiffness_n_per_mm", found.stiffness_n_per_mm
    for stroke in found.strokes:
        for name in _STROKE:
            yield f"strokes.{_way(stroke)}.{name}", getattr(stroke, name)
    for position in found.positions:
        for name in _POSITION:
            yield f"positions.{position.name}.{name}", getattr(position, name)
    for name in _TRAVEL:
        yield f"travel.{name}", getattr(found.travel, name)
    for name in _CLOSED:
        yield f"closed_blade.{name}", getattr(found.closed_blade, name)
    yield from _verdict(found.verdict)


def _way(stroke: _core.StrokeReport) -> str:
    return f"{stroke.from_position}_to_{stroke.to_position}"


def _verdict(margins: list[_core.Margin]) -> Iterator[tuple[str, float | None]]:
    """Give the least margin of each way to fail."""
    known = set()
    for each in margins:
        if each.name not in known:
            known.add(each.name)
            yield f"verdict.{each.name}.margin", each.margin
            yield f"verdict.{each.name}.margin_low", each.margin_low
