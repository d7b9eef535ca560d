"""Shapes of design files that were made."""

from __future__ import annotations

from backspring.document.common import DESIGN, TARGETS
from backspring.document.shapes import NUMBER, TEXT, TRUTH, by_name, list_of, one_of, table

NEW = [table("pull_n? yield_margin?", design=DESIGN, text=TEXT, left_out={"output": TEXT})]
_PROPOSAL = table(
    "pull_n yield_margin? ligament edge_gap_mm? tip_mm?",
    kind=one_of("asked", "lighter", "shorter", "longer"),
    design=DESIGN,
    text=TEXT,
    sizes_mm=by_name(NUMBER),
    at_bounds=list_of(TEXT),
    kick=TRUTH,
    targets=TARGETS,
)
LAYOUT = [
    table(
        proposals=list_of(_PROPOSAL),
        ask_for=list_of(by_name(table("asked to"))),
        left_out={"output": TEXT},
    )
]
