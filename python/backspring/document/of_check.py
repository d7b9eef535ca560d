"""Shapes of what `check` prints."""

from __future__ import annotations

from backspring.document.common import ALONG, BUDGET, DESIGN, DESIGNED, KNIFE, STEEL, TARGETS
from backspring.document.shapes import (
    NUMBER,
    TEXT,
    TRUTH,
    Schema,
    by_name,
    list_of,
    one_of,
    or_null,
    part,
    table,
)

_POSITION = part(
    "position",
    table(
        "blade_angle_deg? force_n? contacts_mm* peak_stress_mpa? peak_stress_station_mm? "
        "yield_margin? yield_margin_low? reading_loaded_mm? reading_loaded_low_mm? "
        "reading_loaded_high_mm? reading_unloaded_mm? energy_mj? torque_nmm?"
    ),
)
_STROKE = part(
    "stroke",
    table(
        "from_deg? to_deg? start_pull_n? peak_pull_n? start_torque_nmm? peak_torque_nmm? "
        "peak_torque_angle_deg? peak_pull_angle_deg? crest_angle_deg? energy_up_mj? "
        "energy_released_mj? snap_energy_mj? snap_speed_rad_per_s? tip_speed_m_per_s? "
        "closing_start_pull_n? closing_peak_pull_n? closing_start_torque_nmm? "
        "closing_peak_torque_nmm? closing_peak_angle_deg?",
        from_=one_of("closed", "half_stop"),
        to=one_of("half_stop", "open"),
    ),
)
_TRAVEL = part(
    "travel",
    table(
        "peak_force_n? peak_force_angle_deg? peak_stress_mpa? peak_stress_angle_deg? "
        "peak_stress_station_mm? yield_margin? yield_margin_low? yield_margin_high?"
    ),
)
_POSITIONS = table(left_out=dict.fromkeys(("open", "half_stop", "closed"), _POSITION))
_WORKING = {"positions": _POSITIONS, "strokes": list_of(_STROKE), "travel": _TRAVEL}
_OPENINGS = {
    "openings": NUMBER,
    "life_openings": table("99_percent? low? high? half?"),
    "peened": table("residual_mpa margin life_openings?"),
}
_MARGIN = part(
    "margin",
    table(
        "value? limit? margin? margin_low? station_mm? blade_angle_deg?",
        name=TEXT,
        group=one_of("holds", "lasts", "wears", "feels"),
        unit=TEXT,
        sources=list_of(TEXT),
        sentence=TEXT,
        word=one_of("fails", "close", "holds", "note"),
        fails=TRUTH,
        left_out=_OPENINGS,
    ),
)
_FEEL = part(
    "feel",
    table(
        "evenness? dial_lift_mm? pull_oiled_n? pull_dry_n?",
        rise_mm=list_of({"type": ["number", "null"]}),
        seat_stiffness_nmm_per_deg=table("~open? ~half_stop? ~closed?"),
    ),
)
_HELD = table(
    "peak_pull_n? travel_peak_stress_mpa? yield_margin? reading_loaded_half_stop_mm? "
    "reading_loaded_closed_mm?"
)
_STOP = table(
    "friction stop_n* force_n* blade_angle_deg* reading_mm*",
    place=one_of("unstated", "back", "middle", "belly", "height"),
    face_stated=TRUTH,
)
_BESIDE = table(
    others=by_name(
        table("force_low_n? force_high_n?", position=one_of("open", "half_stop", "closed"))
    ),
    **_WORKING,
)
BLADE = table(
    "stiffness_n_per_mm?",
    design=DESIGN,
    **_WORKING,
    steel=STEEL,
    feel=_FEEL,
    **BUDGET,
    verdict=list_of(_MARGIN),
    targets=TARGETS,
    along=ALONG,
    impossible=list_of(TEXT),
    defaults=list_of(TEXT),
    to_change=TEXT,
    left_out={
        "beside": list_of(_BESIDE),
        "clearance": table("preload_lost_mm", peened=or_null(_HELD)),
        "frame": table(
            "seat_mm_per_n middle_pin_mm_per_n rear_pin_mm_per_n pivot_mm_per_n",
            fixture=_HELD,
            shift_mm=table("half_stop? closed?"),
        ),
        "closed_blade": table("~tip_mm ~edge_gap_mm ~edge_gap_at_mm"),
        "kink_not_judged": table(
            "station_mm nominal_mpa",
            with_radius=list_of(table("radius_mm stress_mpa yield_margin fatigue_margin?")),
        ),
        "knife": KNIFE,
        "stop": _STOP,
    },
)
CHECK: list[Schema] = [
    BLADE,
    table(
        design=DESIGNED,
        blades=by_name(part("blade", BLADE)),
        steel=STEEL,
        targets=TARGETS,
        defaults=list_of(TEXT),
    ),
]
