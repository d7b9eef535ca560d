"""Shapes of what the other commands print."""

from __future__ import annotations

from backspring.document.common import (
    DESIGN,
    DESIGNED,
    GRIND_ROW_NUMBERS,
    HABITS,
    KNIFE,
    PROFILE,
    SPRING_FACE,
    TARGET,
    TARGETS,
    of_blades,
)
from backspring.document.shapes import (
    COUNT,
    NUMBER,
    SHA256,
    TEXT,
    TRUTH,
    Schema,
    by_name,
    list_of,
    may_have,
    one_of,
    or_null,
    part,
    record,
    table,
    with_others,
)
from backspring.steel.records import Source, Steel

_ANY: Schema = {}
_NUMBERS = list_of(NUMBER)
_CHANGE = "a? b? change? share?"
_COMPARED = table(
    figures=list_of(table(_CHANGE, name=TEXT)),
    causes=list_of(
        table(
            "pull_n? torque_nmm? stress_mpa? yield_margin? half_stop_mm? closed_mm?",
            key=TEXT,
            sort=one_of("number", "kind", "together"),
            a=_ANY,
            b=_ANY,
            changes=by_name({"type": ["number", "null"]}),
        )
    ),
)
_SIDES = {
    "a": DESIGNED,
    "b": DESIGNED,
    "targets": list_of(table(name=TEXT, a=or_null(TARGET), b=or_null(TARGET), lost=TRUTH)),
}
COMPARE = [
    may_have(with_others(_COMPARED, **_SIDES), output=TEXT),
    table(
        **_SIDES,
        blades=by_name(part("compared", _COMPARED)),
        only=list_of(TEXT),
        left_out={"output": TEXT},
    ),
]


_ROW = may_have(table(GRIND_ROW_NUMBERS, missed=list_of(TEXT)), proud_mm=NUMBER)
_WAY = {"face": SPRING_FACE, "region_mm": _NUMBERS}
_GROUND = table(
    "removed_mm pass_mm",
    design=DESIGN,
    **_WAY,
    passes=COUNT,
    rows=list_of(_ROW),
    targets=TARGETS,
    ground=table(sha256=SHA256, thickness_mm=PROFILE),
    left_out={
        "before": table("station_mm* proud_mm*"),
        "removed": table("station_mm* depth_mm*"),
        "pull_n": NUMBER,
        "ways": list_of(
            {"anyOf": [with_others(_ROW, **_WAY), table(**_WAY, refused=or_null(TEXT))]}
        ),
        "output": TEXT,
        "knife": KNIFE,
        "spread": table(
            "~removed_sd_mm? half_stop_sd_mm? closed_sd_mm? peak_pull_sd_n? "
            "travel_peak_stress_sd_mpa? yield_margin_sd?"
        ),
    },
)
GRIND = of_blades("ground", _GROUND)
_LOADING = table(
    "clearance_mm at_mm force_n movement_mm clears_last_mm peak_stress_mpa peak_stress_station_mm "
    "yield_margin? yield_margin_low? stop_before_mm? stop_before_low_mm? rear_pin_force_n? "
    "middle_pin_force_n? wanted_margin?",
    design=DESIGN,
    rear_pin_last=or_null(table("hole_to_go_mm force_n lever_mm? lever_force_n?")),
    left_out={"output": TEXT},
)
LOAD = of_blades("loading", _LOADING)
_POSITIONS = "half_stop_mm? closed_mm?"
BUSHING = [
    table(
        "eccentricity_mm? oval_mm? scatter_mm? half_stop_spread_mm? closed_spread_mm?",
        readings=list_of(table(_POSITIONS, quarter=COUNT)),
        round=table(_POSITIONS),
        unknown=list_of(TEXT),
    )
]
_HARDNESS = "hardness_hrc hardness_low_hrc hardness_high_hrc"
_TEMPERED = table(
    f"temper_c time_h? ~temper_low_c ~temper_high_c {_HARDNESS}",
    confidence=TEXT,
    sources=list_of(TEXT),
    left_out={"after": table(f"temperature_c time_h {_HARDNESS}", extrapolated_in_time=TRUTH)},
)
STEELS = [
    table(
        steels=list_of(
            table(
                "hardness_low_hrc hardness_high_hrc temper_low_c? temper_high_c?",
                name=TEXT,
                also_called=list_of(TEXT),
                family=TEXT,
                time_counts={"type": ["boolean", "null"]},
            )
        )
    ),
    table(
        steel=record(Steel),
        sources=by_name(record(Source)),
        left_out={"answer": _TEMPERED, "output": TEXT},
    ),
]
_DRAWN = table(name=TEXT)
PLOT = [table(design=_DRAWN, kind=TEXT, output=TEXT, left_out={"blade": TEXT})]
REPORT = [table(design=_DRAWN, output=TEXT, sections=list_of(TEXT))]
HABITS_OF_SHOP = [HABITS]
_TEXTS = ("key", "form", "kind", "left_out", "meaning", "example")
_KEY = with_others(
    table("least? greatest?", unit=or_null(TEXT), choices=list_of(TEXT)),
    **dict.fromkeys(_TEXTS, TEXT),
    **dict.fromkeys(("required", "dimension", "in_file", "of_blade"), TRUTH),
)
_REFERENCE = table(reference=TEXT)
_A_SCHEMA: Schema = {"type": "object", "required": ["$schema"]}
KEYS = [table(keys=list_of(_KEY)), _REFERENCE, table(output=TEXT), _A_SCHEMA]
FUNCTIONS = [table(names=list_of(TEXT)), _REFERENCE]
CODES = [table(codes=list_of(table(code=TEXT, severity=TEXT, meaning=TEXT))), _REFERENCE]
COMPLETION = [table(shell=one_of("bash", "zsh", "fish"), script=TEXT)]
SCHEMA = [table(commands=list_of(TEXT)), _A_SCHEMA]
