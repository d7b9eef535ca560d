"""Shapes of what drawings make and of what is drawn to cut by."""

from __future__ import annotations

from backspring.document.common import DESIGN
from backspring.document.shapes import NUMBER, TEXT, TRUTH, by_name, list_of, table

OUTLINE = [
    table(
        "tilt_rad rear_pin_offset_mm lean_rad belly_off_mm compliance_share",
        has_mid_line=TRUTH,
        text=TEXT,
        known_by=by_name(TEXT),
        notes=list_of(TEXT),
        gaps=list_of(table("x_mm y_mm width_mm")),
        outlines=by_name(table("area_mm2 length_mm")),
        not_taken=by_name(NUMBER),
        left_out={"output": TEXT, "picture": TEXT},
    )
]
TEMPLATE = [table("width_mm height_mm", output=TEXT)]
CARD = [table(design=DESIGN, output=TEXT, cards=list_of(table(title=TEXT, blocks=list_of(TEXT))))]
