"""What measurements of a knife follow from, in turn; after these the depth off every stretch."""

from __future__ import annotations

from backspring.fit.result import FACES

CAUSES = (
    *FACES,
    "pad_tilt_rad",
    "pivot_play_mm",
    "extra_root_share",
    "friction",
    "youngs_modulus_mpa",
    "thickness_mm",
    "width_mm",
    "preload_mm",
    "corner_radius_mm",
    "hardness_hrc",
    "loaded_offset_mm",
)
PLACE = {name: place for place, name in enumerate(CAUSES)}
STIFFNESS = ("youngs_modulus_mpa", "thickness_mm", "width_mm")
# What a knife is built with before its faces are ground.
BUILT = ("friction", "preload_mm", "corner_radius_mm", *STIFFNESS)
