"""A sheet on which steel is drawn with dimension lines and leaders."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from matplotlib.axes import Axes
from matplotlib.patches import Circle, Polygon

from backspring.picture import palette

Place = tuple[float, float]
_LETTER = 7.5
_BEHIND_TEXT = {"boxstyle": "square,pad=0.15", "fc": "white", "ec": "none"}
_THIN = 0.7
_OVER = 1.5
# A text farther from its dimension line than this is tied to it.
_BESIDE = 1.0


@dataclass(frozen=True)
class Sheet:
    """Draws on axes whose units are a picture's own."""

    axes: Axes

    def title(self, x: float, y: float, text: str) -> None:
        """Head a part of the sheet; x and y are its left end."""
        self.axes.text(x, y, text, fontsize=_LETTER + 1.5, fontweight="bold", color=palette.INK)

    def words(self, text: str, at: Place) -> None:
        """Write a text about its middle, so that it is read where a line passes behind it."""
        style: dict[str, Any] = {"ha": "center", "va": "center", "fontsize": _LETTER, "zorder": 5}
        self.axes.text(*at, text, color=palette.INK, bbox=_BEHIND_TEXT, **style)

    def steel(self, corners: Sequence[Place], blade: bool = False) -> None:
        """Fill an outline as the spring, or as a blade."""
        color = palette.BLADE if blade else palette.TANG
        self.axes.add_patch(Polygon([*corners], fc=color, ec=palette.INK, lw=1.2))

    def circle(
        self, center: Place, radius: float, *, filled: bool = False, dashed: bool = False
    ) -> None:
        """Draw a hole; filled, the pin in it; dashed, a place where none is."""
        color = palette.FAINT if filled else "none" if dashed else "white"
        style = "--" if dashed else "-"
        self.axes.add_patch(Circle(center, radius, fc=color, ec=palette.INK, lw=1.0, ls=style))

    def line(self, start: Place, end: Place, arrow: bool = False) -> None:
        """Draw a thin line, with an arrow at its end where one is asked for."""
        self._arrow("->" if arrow else "-", start, end)

    def chain_line(self, places: Sequence[Place]) -> None:
        """Draw a middle line."""
        self._followed(places, "-.")

    def dashed(self, places: Sequence[Place]) -> None:
        """Draw what is thought, or hidden."""
        self._followed(places, "--")

    def leader(self, text: str, to: Place, at: Place) -> None:
        """Write a text and point from it to a place."""
        self._arrow("->", at, to)
        self.words(text, at)

    def dimension(self, key: str, start: Place, end: Place, at: Place) -> None:
        """Draw a distance between two places, its key beside it or tied to it."""
        self._arrow("<->", start, end)
        middle = (0.5 * (start[0] + end[0]), 0.5 * (start[1] + end[1]))
        if math.dist(middle, at) > _BESIDE + 0.5 * math.dist(start, end):
            self._arrow("-", at, middle)
        self.words(key, at)

    def across(self, key: str, start: float, end: float, height: float, feature: float) -> None:
        """Draw a distance along the spring, with lines up to what it is measured between."""
        for x in (start, end):
            past = math.copysign(_OVER, height - feature) if height != feature else 0.0
            self.axes.plot([x, x], [feature, height + past], color=palette.MUTED, lw=_THIN)
        self._arrow("<->", (start, height), (end, height))
        self.words(key, (0.5 * (start + end), height))

    def _followed(self, places: Sequence[Place], style: str) -> None:
        across, up = zip(*places, strict=True)
        self.axes.plot(across, up, color=palette.MUTED, lw=_THIN, ls=style)

    def _arrow(self, style: str, start: Place, end: Place) -> None:
        drawn = {
            "arrowstyle": style,
            "lw": _THIN,
            "color": palette.BLUE,
            "shrinkA": 0,
            "shrinkB": 0,
        }
        self.axes.annotate("", xy=end, xytext=start, arrowprops=drawn)


def arc_places(center: Place, radius: float, from_deg: float, to_deg: float) -> list[Place]:
    """List places along an arc."""
    steps = 24
    angles = (math.radians(from_deg + (to_deg - from_deg) * i / steps) for i in range(steps + 1))
    return [
        (center[0] + radius * math.cos(angle), center[1] + radius * math.sin(angle))
        for angle in angles
    ]
