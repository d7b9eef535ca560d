"""What is said beside a picture: how large a pixel is, how wide a hole was drilled."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Any, Literal

from backspring.design.arguments import quantity
from backspring.unit_table import INCH_MM

# Kinds of pictures that are read as scans.
KINDS = (".png", ".jpg", ".jpeg", ".tif", ".tiff", ".bmp", ".webp")
_WIDEST_HOLE_MM = 20.0
_SCALE = re.compile(r"^\s*(.+?)\s*=\s*([0-9]*\.?[0-9]+)\s*px\s*$", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class ScanGiven:
    """A pixel's size, how near outlines are fitted, the width of the spring's drilled holes.

    Each may be left out.
    """

    mm_per_px: float | None = None
    fit_mm: float | None = None
    hole_mm: float | None = None


def given_hole_mm(hole: Any, units: Literal["mm", "in"]) -> float | None:
    """Read the width of the spring's holes; ValueError where it is none."""
    if hole is None:
        return None
    hole_mm = quantity(hole, "length", "hole", units)
    if not 0.0 < hole_mm < _WIDEST_HOLE_MM:
        raise ValueError(f"hole must be from 0 to {_WIDEST_HOLE_MM:g} mm, got {hole_mm:g} mm")
    return hole_mm


def given_mm_per_px(scale: str | None, dpi: Any, units: Literal["mm", "in"]) -> float | None:
    """Read a scale such as "50 mm = 1181 px", or dots an inch; None where neither is given.

    Raises ValueError where it cannot be meant.
    """
    if scale is not None and dpi is not None:
        raise ValueError("give --scale or --dpi, not both")
    if dpi is not None:
        dots = quantity(dpi, "number", "dpi")
        if not 0.0 < dots < 1e5:
            raise ValueError(f"dpi must be greater than 0, got {dots:g}")
        return INCH_MM / dots
    if scale is None:
        return None
    found = _SCALE.match(scale)
    if found is None:
        raise ValueError(f'scale must be as "50 mm = 1181 px", got "{scale}"')
    length, pixels = quantity(found[1], "length", "scale", units), float(found[2])
    if not (0.0 < length < 1e4 and 0.0 < pixels < 1e6):
        raise ValueError(f'scale must be greater than 0, as "50 mm = 1181 px", got "{scale}"')
    return length / pixels
