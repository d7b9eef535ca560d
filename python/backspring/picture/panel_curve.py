"""The pull curve of a panel, opening and closing, over the one it started from, as SVG."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from backspring import _core
from backspring.picture import palette, svg
from backspring.picture.svg import Points
from backspring.question.check import Check
from backspring.report.display import STYLES
from backspring.units import System

HEIGHT_PX = 250.0
_LEFT_PX, _RIGHT_PX, _TOP_PX, _FOOT_PX = 56.0, 12.0, 30.0, 42.0
_STEP_DEG = 1.0
# The axis keeps room for half as much again, so that it stands still while a slider moves.
_ROOM = 1.5


def pull_curves(check: Check) -> tuple[Points, Points]:
    """Angle, then pull to open and to close [N]: columns; torque [N mm] without a nail nick."""
    sweep = _core.sweep(check.design.core, _STEP_DEG)
    by = check.design.core.blade.nail_nick_mm or 1.0
    angle = sweep.blade_angle_deg
    return (
        np.column_stack((angle, sweep.opening_torque_nmm / by)),
        np.column_stack((angle, sweep.closing_torque_nmm / by)),
    )


def curve_parts(
    now: tuple[Points, Points],
    start: tuple[Points, Points],
    *,
    pulls: bool,
    blade_angle_deg: float,
    width_px: float,
    system: System,
) -> Iterator[str]:
    """Draw axes, the curve as it started, both curves now, and where the blade stands."""
    style = STYLES[system]["force" if pulls else "torque"]
    both = np.concatenate(start)[:, 1] / style.size, np.concatenate(now)[:, 1] / style.size
    low, high = (max((_ROOM * s, n), key=abs) for s, n in zip(*map(_ends, both), strict=True))
    right, foot = width_px - _RIGHT_PX, HEIGHT_PX - _FOOT_PX

    def place(points: Points, unit: float = style.size) -> Points:
        x = _LEFT_PX + points[:, 0] / 180.0 * (right - _LEFT_PX)
        y = foot - (points[:, 1] / unit - low) / (high - low) * (foot - _TOP_PX)
        return np.column_stack((x, y))

    for value in svg.ticks(low, high):
        line = place(np.array([[0.0, value], [180.0, value]]), 1.0)
        yield svg.curve(line, stroke=palette.INK if value == 0.0 else "#E4E4E4", width=1.0)
        yield svg.words(_LEFT_PX - 6.0, line[0, 1] + 4.0, f"{value:g}", anchor="end")
    for angle in range(0, 181, 30):
        ((x, _),) = place(np.array([[float(angle), 0.0]]))
        yield svg.words(x, foot + 16.0, f"{angle}", anchor="end" if angle == 180 else "middle")
    at = np.array([[blade_angle_deg, low], [blade_angle_deg, high]])
    yield svg.curve(place(at, 1.0), stroke=palette.MUTED, width=1.0, dash="2 3")
    yield svg.curve(place(start[0]), stroke=palette.FAINT, width=3.0)
    yield svg.curve(place(now[1]), stroke=palette.VERMILLION, dash="6 4")
    yield svg.curve(place(now[0]), stroke=palette.BLUE, width=2.5)
    yield from _legend("pull at the nail nick" if pulls else "torque", style.unit)
    middle = 0.5 * (_LEFT_PX + right)
    yield svg.words(middle, HEIGHT_PX - 8.0, "blade angle [deg]", anchor="middle")


def _ends(values: Points) -> tuple[float, float]:
    return min(float(values.min()), 0.0), max(float(values.max()), 0.0)


def _legend(what: str, unit: str) -> Iterator[str]:
    yield svg.words(8.0, 18.0, f"{what} [{unit}]")
    x = 230.0
    for said, color, dash in (
        ("opening", palette.BLUE, ""),
        ("closing", palette.VERMILLION, "6 4"),
        ("opening, as it started", palette.FAINT, ""),
    ):
        yield svg.curve(np.array([[x, 14.0], [x + 26.0, 14.0]]), stroke=color, dash=dash)
        yield svg.words(x + 32.0, 18.0, said)
        x += 118.0
