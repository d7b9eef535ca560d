"""A few shapes and words as SVG, for drawings that are made anew as a slider moves."""

from __future__ import annotations

import html
from collections.abc import Iterable

import numpy as np
import numpy.typing as npt

Points = npt.NDArray[np.float64]
FONT_PX = 13


def polygon(points: Points, *, fill: str, stroke: str = "none", width: float = 1.0) -> str:
    """Write a filled outline."""
    return (
        f'<polygon points="{_places(points)}" fill="{fill}" stroke="{stroke}" '
        f'stroke-width="{width:g}" stroke-linejoin="round"/>'
    )


def curve(points: Points, *, stroke: str, width: float = 2.0, dash: str = "") -> str:
    """Write a line through points; `dash` as "6 4"."""
    dashed = f' stroke-dasharray="{dash}"' if dash else ""
    return (
        f'<polyline points="{_places(points)}" fill="none" stroke="{stroke}" '
        f'stroke-width="{width:g}"{dashed}/>'
    )


def circle(x: float, y: float, radius: float, *, fill: str, stroke: str = "none") -> str:
    """Write a circle."""
    return f'<circle cx="{x:.1f}" cy="{y:.1f}" r="{radius:.1f}" fill="{fill}" stroke="{stroke}"/>'


def words(x: float, y: float, said: str, *, anchor: str = "start") -> str:
    """Write words from a place on, about it with the anchor "middle", or up to it with "end"."""
    return f'<text x="{x:.1f}" y="{y:.1f}" text-anchor="{anchor}">{html.escape(said)}</text>'


def drawing(width: float, height: float, parts: Iterable[str], label: str) -> str:
    """Put shapes, words and a white ground together; `label` is read out in their place."""
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {width:g} {height:g}" role="img" '
        f'aria-label="{html.escape(label)}" font-family="sans-serif" font-size="{FONT_PX}" '
        f'style="max-width:{width:g}px;width:100%">'
        f'<rect width="{width:g}" height="{height:g}" fill="white"/>{"".join(parts)}</svg>'
    )


def ticks(low: float, high: float, most: int = 6) -> list[float]:
    """Round numbers from low to high, no more than asked for."""
    rough = (high - low) / most
    unit = 10.0 ** np.floor(np.log10(rough))
    step = next(float(unit * each) for each in (1.0, 2.0, 5.0, 10.0) if unit * each >= rough)
    first, last = int(np.ceil(low / step)), int(np.floor(high / step))
    return [step * each for each in range(first, last + 1)]


def _places(points: Points) -> str:
    return " ".join(f"{x:.1f},{y:.1f}" for x, y in points.tolist())
