"""Shapes of what drawings make and of what is drawn to cut by."""

from __future__ import annotations

from backspring.document.common import DESIGN
from backspring.document.shapes import NUMBER, TEXT, TRUTH, by_name, list_of, one_of, table

_SCAN = table(
    "px_per_mm reading_sd_mm preload_sd_mm thickness_sd_mm edge_mm moved_mm",
    scale_from=one_of("given", "file"),
    edges=by_name(table("rms_mm largest_mm")),
    holes=by_name(table("center_sd_mm diameter_sd_mm")),
    faces_sd_mm=by_name(NUMBER),
)
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
        left_out={"output": TEXT, "picture": TEXT, "scan": _SCAN},
    )
]
TEMPLATE = [table("width_mm height_mm", output=TEXT)]
CARD = [table(design=DESIGN, output=TEXT, cards=list_of(table(title=TEXT, blocks=list_of(TEXT))))]
