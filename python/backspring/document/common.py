"""Shapes that several commands share: design, steel, targets, the whole back, one knife's log."""

from __future__ import annotations

from backspring.document.shapes import (
    COUNT,
    SHA256,
    TEXT,
    TRUTH,
    Schema,
    by_name,
    list_of,
    one_of,
    or_null,
    part,
    record,
    table,
)
from backspring.fit.estimate import GroundDepth, Learned
from backspring.fit.habits import Habit, LeftOut
from backspring.fit.next_measurement import NextMeasurement
from backspring.question.targets import TargetResult

DESIGN = part("design", table(name=TEXT, sha256=SHA256, left_out={"blade": TEXT}))
DESIGNED = table(name=TEXT, sha256=SHA256)
TARGET = part("target", record(TargetResult))
TARGETS = list_of(TARGET)
# Rows of station and thickness, as a design file has them.
PROFILE = {"type": "array", "items": {"type": "array", "items": {"type": "number"}, "minItems": 2}}
# Keys of a design file with their new values as text with a unit; null for a key that has to go.
_WRITTEN = {"type": ["string", "null", "array"]}
CHANGES = part("changes", by_name(_WRITTEN))
FACE = one_of("open", "half_stop", "closed", "kick", "back", "belly")
SPRING_FACE = one_of("back", "belly", "pad")
FIGURES = ("youngs_modulus", "poisson", "yield", "tensile")
STEEL = part(
    "steel",
    table(
        "hardness_hrc? hardness_low_hrc? hardness_high_hrc? hardness_sd_hrc? youngs_modulus_mpa "
        "youngs_modulus_sd_mpa? poisson yield_mpa yield_low_mpa yield_high_mpa yield_sd_mpa? "
        "tensile_mpa? tensile_low_mpa? tensile_high_mpa?",
        name=TEXT,
        confidence=table(left_out=dict.fromkeys(FIGURES, TEXT)),
        sources=list_of(table(figure=one_of(*FIGURES), key=TEXT, title=TEXT)),
    ),
)
_BACK_ENDS = part(
    "back_ends", table("least_mm least_at_mm greatest_mm greatest_at_mm per_dial_mm?")
)
ALONG = part(
    "along",
    table(
        "nowhere_low_target_mm? flattest_target_mm? flattest_off_mm? flattest_dial_mm? "
        "per_dial_mm?",
        left_out={"half_stop": _BACK_ENDS, "closed": _BACK_ENDS},
    ),
)
BUDGET = {
    "budget": list_of(
        part(
            "left_out_effect",
            table(
                "reading_low_mm? reading_high_mm? pull_share? pull_low_share? pull_high_share?",
                effect=one_of(
                    "stop",
                    "liners",
                    "pin-clearance",
                    "pivot-clearance",
                    "bow",
                    "modulus",
                    "preload",
                    "stick",
                    "friction-couple",
                    "large-slopes",
                    "solver",
                ),
                settled_by=TEXT,
            ),
        )
    ),
    "budget_sum": part(
        "budget_sum",
        table(
            "reading_mm* reading_worst_mm* pull_share* pull_worst_share* reading_target_mm?",
            beyond_target=TRUTH,
            closes_most=or_null(TEXT),
        ),
    ),
}
HABITS = part(
    "habits",
    table(
        folder=TEXT,
        logs=COUNT,
        least_logs=COUNT,
        habits=by_name(record(Habit)),
        left_out_=list_of(record(LeftOut)),
    ),
)
KNIFE = part(
    "knife",
    table(
        "scatter_mm?",
        entries=COUNT,
        ground=list_of(record(GroundDepth)),
        unknowns=by_name(record(Learned)),
        now=table(
            "half_stop_loaded_mm? half_stop_sd_mm? closed_loaded_mm? closed_sd_mm? peak_pull_n? "
            "peak_pull_sd_n? closing_peak_pull_n? closing_peak_pull_sd_n? travel_peak_stress_mpa? "
            "travel_peak_stress_sd_mpa? yield_margin? yield_margin_sd?"
        ),
        misfit=table(
            "chi_squared freedom",
            worst=or_null(table("measured estimate foretold standardised", entry=COUNT, what=TEXT)),
        ),
        next_measurement=list_of(record(NextMeasurement)),
        left_out={"habits": HABITS},
    ),
)
GRIND_ROW_NUMBERS = (
    "removed_mm preload_mm peak_pull_n? peak_torque_nmm? travel_peak_stress_mpa? "
    "travel_peak_stress_station_mm? yield_margin? yield_margin_low? reading_loaded_half_stop_mm? "
    "reading_loaded_closed_mm? stiffness_n_per_mm?"
)


def of_blades(name: str, one: Schema) -> list[Schema]:
    """Allow the answer of one blade, or those of several by name."""
    return [one, table(design=DESIGN, blades=by_name(part(name, one)))]
