"""What was read from a drawing: what was taken for what, and the joint put together from it."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import TYPE_CHECKING, Any

from matplotlib.patches import Circle

from backspring.outline.chain import Chain
from backspring.outline.named_parts import chains_of, holes_of, liner_of
from backspring.picture.canvas import Picture
from backspring.picture.palette import (
    BLUE,
    DPI,
    INK,
    LARGE,
    MUTED,
    NORMAL,
    SMALL,
    TANG,
    UNDERLAY,
    VERMILLION,
    WIDTH_IN,
)
from backspring.report.display import text

if TYPE_CHECKING:
    from backspring.outline.reading import OutlineReading

_SPRING = "#DCE9F5"
_STEP_RAD = math.radians(2.0)
_PIN_MM = 1.0
# Of the picture's width: its height where parts stand beside the joint, and the joint's share.
_TALL, _BESIDE = 0.5, 1.7


def outline_picture(reading: OutlineReading) -> Picture:
    """Draw the parts as the drawing has them, and put together with the rear pin out.

    Parts that lie one above the other, as on a scan, stand beside the joint.
    """
    is_tall = _is_tall(reading)
    height = _TALL if is_tall else 0.6
    figure = Picture(figsize=(WIDTH_IN, height * WIDTH_IN), dpi=DPI, layout="constrained")
    if is_tall:
        drawn, laid = figure.subplots(1, 2, width_ratios=(1.0, _BESIDE))
    else:
        drawn, laid = figure.subplots(2, 1)
    _drawn(drawn, reading, is_tall)
    _laid(laid, reading, is_tall)
    for axes in (drawn, laid):
        axes.set_aspect("equal")
        axes.margins(0.06, 0.06 if is_tall else 0.2)
        axes.set_axis_off()
    return figure


def _is_tall(reading: OutlineReading) -> bool:
    if reading.scan is None:
        return False
    outlines = reading.found.outlines
    places = [v.at_mm for chain in (outlines.spring, outlines.tang) for v in chain.vertices]
    places += [outlines.pivot_mm, outlines.middle_mm, outlines.rear_mm]
    x, y = [p.real for p in places], [p.imag for p in places]
    return max(y) - min(y) > 0.6 * (max(x) - min(x))


def _drawn(axes: Any, reading: OutlineReading, is_tall: bool) -> None:
    known = reading.found.known_by
    holes = dict(holes_of(reading.found, reading.several))
    axes.set_title("Taken for", loc="left", fontsize=LARGE, pad=30.0 if is_tall else 14.0)
    for kind, chain in reversed(chains_of(reading.found, reading.several)):
        _fill(axes, chain, _SPRING if kind == "spring" else TANG)
        front = _front(chain)
        words = f"{kind} ({known[kind]})"
        if reading.several and kind in holes:
            words += f", hole {text(holes[kind].diameter_mm, 'length', reading.units)}"
        axes.annotate(
            words, (front.real, front.imag), (10.0, 0.0), textcoords="offset points",
            va="center", fontsize=NORMAL, color=MUTED,
        )  # fmt: skip
    for name, hole in holes_of(reading.found, reading.several):
        away = {"middle hole": 24, "rear hole": -26 if reading.several else 24}.get(name, -40)
        _circle(axes, hole.center_mm, 0.5 * hole.diameter_mm or _PIN_MM, INK)
        if name.startswith("tang"):
            continue
        across = text(hole.diameter_mm, "length", reading.units)
        _named(axes, hole.center_mm, f"{name} {across}", away, is_tall)
    for name, place in liner_of(reading.found, reading.several):
        axes.plot([place.real], [place.imag], "+", color=BLUE, ms=11.0, mew=1.6)
        _named(axes, place, f"liner: {name}", -24, is_tall, BLUE)
    for place, width in reading.found.gaps:
        axes.plot([place.real], [place.imag], "o", mfc="none", color=VERMILLION, ms=10.0)
        _above(axes, place, f"gap {text(width, 'length', reading.units)}", 26, VERMILLION)


def _laid(axes: Any, reading: OutlineReading, is_tall: bool) -> None:
    joint, laid, units = reading.joint, reading.joint.laid, reading.units
    misses = text(joint.rear_pin_offset_mm, "length", units)
    preload = text(joint.preload_mm, "length", units)
    between = "\n" if is_tall else " "
    title = f"Put together: the rear hole misses its pin by {misses},{between}preload {preload}"
    if reading.several:
        each = (f"{b.name} {text(b.joint.preload_mm, 'length', units)}"
                for b in reading.several.joint.blades)  # fmt: skip
        title = f"On its pins, unbent; preload {', '.join(each)}"
    axes.set_title(
        title,
        loc="left",
        fontsize=LARGE,
        pad=36.0 if is_tall else 14.0,
    )
    tangs = [each.tang for each in reading.several.joint.blades] if reading.several else []
    for tang in tangs or [laid.tang]:
        _fill(axes, tang, TANG)
    _fill(axes, laid.spring, _SPRING)
    start, end = joint.pad_mm
    axes.plot([start, end], [laid.face_mm] * 2, color=VERMILLION, lw=3.0, solid_capstyle="butt")
    pad = f"pad {text(start, 'length', units)} to {text(end, 'length', units)}"
    _above(axes, complex(0.5 * (start + end), laid.face_mm), pad, 44, VERMILLION)
    pins = [(0j, "middle pin"), (laid.rear_pin_mm, "rear pin")]
    pivots = {laid.pivot_mm: "pivot"}
    if reading.several:
        pivots = {each.pivot_mm: f"pivot of {each.name}" for each in reading.several.joint.blades}
    for place, name in (*pivots.items(), *pins[: 1 if laid.rear_pin_mm == 0j else 2]):
        axes.plot([place.real], [place.imag], "+", color=BLUE, ms=11.0, mew=1.6)
        _above(axes, place, name, -32, BLUE)
    for hole, width in zip((0j, laid.rear_hole_mm), joint.pin_hole_mm, strict=True):
        _circle(axes, hole, 0.5 * width or _PIN_MM, INK)


def _fill(axes: Any, chain: Chain, color: str) -> None:
    places = [*_followed(chain)]
    x, y = [p.real for p in places], [p.imag for p in places]
    axes.fill(x, y, facecolor=color, edgecolor=INK, lw=1.2)


def _followed(chain: Chain) -> Iterator[complex]:
    for piece in chain.pieces:
        steps = max(1, math.ceil(abs(piece.sweep_rad) / _STEP_RAD))
        yield from (piece.point_mm(i / steps) for i in range(steps))


def _front(chain: Chain) -> complex:
    """Give a place at the right end, half-way up."""
    places = [*_followed(chain)]
    heights = [p.imag for p in places]
    return complex(max(p.real for p in places), 0.5 * (min(heights) + max(heights)))


def _named(
    axes: Any, place: complex, words: str, points: float, is_tall: bool, color: str = INK
) -> None:
    """Name a hole above or below it, or beside it where parts lie at any angle."""
    if not is_tall:
        _above(axes, place, words, points, color)
        return
    axes.annotate(
        words, (place.real, place.imag), (12.0, 18.0), textcoords="offset points", ha="left",
        va="bottom", fontsize=SMALL, color=color, bbox=UNDERLAY,
        arrowprops={"arrowstyle": "-", "color": color, "lw": 0.6},
    )  # fmt: skip


def _circle(axes: Any, center: complex, radius: float, color: str) -> None:
    axes.add_patch(Circle((center.real, center.imag), radius, fc="white", ec=color, lw=1.2))


def _above(
    axes: Any,
    place: complex,
    words: str,
    points: float,
    color: str = INK,
) -> None:
    axes.annotate(
        words, (place.real, place.imag), (0.0, points), textcoords="offset points", ha="center",
        va="bottom" if points > 0.0 else "top", fontsize=SMALL, color=color, bbox=UNDERLAY,
        arrowprops={"arrowstyle": "-", "color": color, "lw": 0.6},
    )  # fmt: skip
