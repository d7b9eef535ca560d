"""Rows of a spring as the file holds them."""

from __future__ import annotations

from typing import Any

from backspring import _core


def width_rows(spring: _core.Spring) -> float | list[list[float]]:
    """Return the width: one number, or rows of station and width."""
    if not spring.widths:
        return spring.width_mm
    return [[each.x_mm, each.width_mm] for each in spring.widths]


def mid_line_rows(spring: _core.Spring) -> list[list[float]] | None:
    """Return rows of station and height; None on a straight spring."""
    return [[each.x_mm, each.height_mm] for each in spring.mid_line] or None


def rows_under(key: str, spring: _core.Spring) -> dict[str, Any]:
    """Return the rows that a key of a study changes, by the file's own key."""
    if key.startswith("spring.width"):
        return {"spring.width": width_rows(spring)}
    return {"spring.thickness": [[each.x_mm, each.thickness_mm] for each in spring.thickness]}
