"""Shape of what advice prints."""

from __future__ import annotations

from backspring.document.common import CHANGES, DESIGN, KNIFE, TARGETS
from backspring.document.shapes import (
    SHA256,
    TEXT,
    TRUTH,
    by_name,
    list_of,
    or_null,
    part,
    table,
)

_OF_BLADE = table(
    "peak_pull_n? peak_stress_mpa? yield_margin? fatigue_margin? reading_loaded_half_stop_mm? "
    "reading_loaded_closed_mm? rise_mm?"
)
_FIGURES = part("figures", {"anyOf": [_OF_BLADE, table(blades=by_name(_OF_BLADE))]})
_SPREAD = table(
    "~peak_pull_sd_n? ~peak_stress_sd_mpa? ~yield_margin_sd? ~fatigue_margin_sd? "
    "~reading_loaded_half_stop_sd_mm? ~reading_loaded_closed_sd_mm? ~rise_sd_mm?"
)
_ADVICE = part(
    "advice",
    table(
        "size",
        changes=CHANGES,
        figures=_FIGURES,
        met=TRUTH,
        targets=TARGETS,
        falls_short=list_of(TEXT),
        sha256=SHA256,
        left_out={"spread": {"anyOf": [_SPREAD, by_name(_SPREAD)]}},
    ),
)
_LIMIT = table(
    key=TEXT,
    name=TEXT,
    left_out={
        **dict.fromkeys(("now", "low", "high", "more_low", "more_high", "step"), TEXT),
        "choices": list_of(TEXT),
    },
)
ADVISE = [
    table(
        design=DESIGN,
        targets=TARGETS,
        figures=_FIGURES,
        advice=list_of(_ADVICE),
        nearest=or_null(_ADVICE),
        exclusive=list_of(table(targets=list_of(TEXT), best=by_name({"type": ["number", "null"]}))),
        limits=list_of(_LIMIT),
        faces=list_of(TEXT),
        complete=TRUTH,
        left_out={"knife": KNIFE, "blades": by_name(table(knife=KNIFE))},
    )
]
