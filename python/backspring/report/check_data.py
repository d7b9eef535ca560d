"""Results of a check as plain data."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import TYPE_CHECKING, Any

from backspring import _core
from backspring._core import unit_of
from backspring.report.budget import budget_data
from backspring.report.clearance import clearance_data
from backspring.report.feel import feel_data
from backspring.report.frame import frame_data
from backspring.report.sentences import margin_sentence
from backspring.report.strength_data import kink_data, life_data
from backspring.report.to_change import to_change

if TYPE_CHECKING:
    from backspring.question.check import Beside, BladesCheck, Check

_POSITION = (
    "blade_angle_deg",
    "force_n",
    "contacts_mm",
    "peak_stress_mpa",
    "peak_stress_station_mm",
    "yield_margin",
    "yield_margin_low",
    "reading_loaded_mm",
    "reading_loaded_low_mm",
    "reading_loaded_high_mm",
    "reading_unloaded_mm",
    "energy_mj",
    "torque_nmm",
)
_STROKE = (
    "from_deg",
    "to_deg",
    "start_pull_n",
    "peak_pull_n",
    "start_torque_nmm",
    "peak_torque_nmm",
    "peak_torque_angle_deg",
    "crest_angle_deg",
    "energy_up_mj",
    "energy_released_mj",
    "snap_energy_mj",
    "snap_speed_rad_per_s",
    "tip_speed_m_per_s",
    "closing_start_pull_n",
    "closing_peak_pull_n",
    "closing_start_torque_nmm",
    "closing_peak_torque_nmm",
    "closing_peak_angle_deg",
)
_TRAVEL = (
    "peak_force_n",
    "peak_force_angle_deg",
    "peak_stress_mpa",
    "peak_stress_angle_deg",
    "peak_stress_station_mm",
    "yield_margin",
    "yield_margin_low",
    "yield_margin_high",
)
_MARGIN = ("margin", "margin_low", "station_mm", "blade_angle_deg", "sources")


def check_data(check: Check) -> dict[str, Any]:
    """Everything a check says, ready for JSON."""
    return {
        "design": check.design.identity(),
        **blade_data(check.positions, check.strokes, check.travel),
        **_closed_blade(check.closed_blade),
        "steel": check.steel,
        **_picked(check, ("stiffness_n_per_mm",)),
        "feel": feel_data(check.feel),
        **_stop(check.result.stop_band),
        **budget_data(check.error_budget),
        **clearance_data(check),
        **frame_data(check),
        "verdict": [margin_data(each) for each in check.verdict],
        "targets": [target._asdict() for target in check.targets],
        "along": check.along.to_dict(),
        "to_change": to_change(check, "mm"),
        **kink_data(check.notices),
        "impossible": check.result.impossible,
        "defaults": list(check.design.defaults),
        **({"beside": [_beside(row) for row in check.beside]} if check.beside else {}),
    }


def blades_check_data(check: BladesCheck) -> dict[str, Any]:
    """Everything a check of several blades says, ready for JSON."""
    return {
        "design": check.design.identity(),
        "blades": {name: check_data(each) for name, each in check.blades.items()},
        "steel": check.steel,
        "targets": [target._asdict() for target in check.targets],
        "defaults": list(check.design.defaults),
    }


def _closed_blade(closed: _core.ClosedBlade) -> dict[str, Any]:
    """Tip and edge of the closed blade; left out where the design tells neither."""
    names = ("tip_mm", "edge_gap_mm", "edge_gap_at_mm")
    known = {name: getattr(closed, name) for name in names if getattr(closed, name) is not None}
    return {"closed_blade": known} if known else {}


def _stop(band: _core.StopBand | None) -> dict[str, Any]:
    """Tell what the stop at open may do; nothing where the spring presses no blade on it."""
    if band is None:
        return {}
    names = ("stop_n", "force_n", "blade_angle_deg", "reading_mm")
    ends = {name: [getattr(band, name).low, getattr(band, name).high] for name in names}
    stated = {"place": band.place.name, "face_stated": band.face_stated}
    return {"stop": {**stated, "friction": band.friction, **ends}}


def margin_data(margin: _core.Margin) -> dict[str, Any]:
    """Everything a margin says, ready for JSON; its sentence in mm."""
    return {
        "name": margin.name,
        "group": margin.group.name,
        "word": margin.word.name,
        "fails": margin.word == _core.MarginWord.fails,
        "value": margin.value,
        "limit": margin.limit,
        "unit": unit_of(margin.quantity),
        **_picked(margin, _MARGIN),
        **life_data(margin),
        "sentence": margin_sentence(margin),
    }


def blade_data(
    positions: Mapping[str, _core.Position], strokes: list[_core.StrokeReport], travel: _core.Travel
) -> dict[str, Any]:
    """Pick what a blade does in its positions and between them, ready for JSON."""
    return {
        "positions": {name: _picked(each, _POSITION) for name, each in positions.items()},
        "strokes": [_stroke(each) for each in strokes],
        "travel": _picked(travel, _TRAVEL),
    }


def _beside(row: Beside) -> dict[str, Any]:
    names = ("position", "force_low_n", "force_high_n")
    return {
        "others": {other.name: _picked(other, names) for other in row.others},
        **blade_data(row.positions, row.strokes, row.travel),
    }


def _picked(result: object, names: tuple[str, ...]) -> dict[str, Any]:
    """Fields of a result; none where a number is impossible, for JSON has no such number."""
    values = {name: getattr(result, name) for name in names}
    return {name: None if _is_nan(value) else value for name, value in values.items()}


def _is_nan(value: object) -> bool:
    return isinstance(value, float) and math.isnan(value)


def _stroke(stroke: _core.StrokeReport) -> dict[str, Any]:
    return {
        "from": stroke.from_position,
        "to": stroke.to_position,
        **_picked(stroke, _STROKE),
        "peak_pull_angle_deg": stroke.peak_torque_angle_deg,
    }
