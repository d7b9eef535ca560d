"""Shapes of what the commands print that look for another design, or at many."""

from __future__ import annotations

from backspring.document.common import CHANGES, DESIGN, KNIFE, PROFILE, TARGETS, of_blades
from backspring.document.shapes import (
    COUNT,
    NUMBER,
    SHA256,
    TEXT,
    TRUTH,
    by_name,
    list_of,
    or_null,
    part,
    table,
)

_SOLUTION = part(
    "solution",
    table(
        "pull_n? yield_margin?",
        sha256=SHA256,
        sizes_mm=by_name(NUMBER),
        changes=CHANGES,
        thickness_mm=PROFILE,
        left_out={
            "spread": table("pull_sd_n? yield_margin_sd?", sizes_sd_mm=by_name(or_null(NUMBER))),
        },
    ),
)
_SIZED = table(
    "pull_n? yield_margin?",
    design=DESIGN,
    vary=list_of(TEXT),
    bounds_mm=by_name(list_of(NUMBER)),
    could_vary=list_of(TEXT),
    solutions=list_of(_SOLUTION),
    targets=TARGETS,
    nearest=or_null(_SOLUTION),
    limits=list_of(TEXT),
    left_out={"output": TEXT, "knife": KNIFE},
)
_TAPER = table(
    "pull_n peak_stress_mpa yield_margin?",
    design=DESIGN,
    sha256=SHA256,
    changes=CHANGES,
    thickness_mm=PROFILE,
    targets=TARGETS,
    left_out={
        "knife": KNIFE,
        "spread": table(
            "peak_stress_sd_mpa? yield_margin_sd?", thickness_sd_mm=list_of(or_null(NUMBER))
        ),
    },
)
SIZE = [*of_blades("sized", _SIZED), *of_blades("taper", _TAPER)]
_SHARE = table("first total")
_RESULT = table(
    "nominal? mean? standard_deviation? root_sum_square? worst_low? worst_high?",
    quantiles=by_name({"type": ["number", "null"]}),
    slopes=by_name({"type": ["number", "null"]}),
    shares=by_name(_SHARE),
)
_SPREAD_STUDY = table(
    "share? share_low? share_high? wanted_share",
    design=DESIGN,
    **dict.fromkeys(("n", "seed", "rows", "working", "good"), COUNT),
    complete=TRUTH,
    batch=or_null(table("chance chance_low chance_high", knives=COUNT)),
    spreads=list_of(
        table("nominal? standard_deviation tolerance?", key=TEXT, unit=TEXT, kind=TEXT)
    ),
    results=by_name(_RESULT),
    targets=list_of(table("low? high? share?", name=TEXT, stated=TRUTH)),
    left_out={"output": TEXT, "knife": KNIFE},
)
TOLERANCE = of_blades("tolerance", _SPREAD_STUDY)
