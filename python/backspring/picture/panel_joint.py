"""The joint of a panel: spring, tang and blade at an angle, to scale, as SVG."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
from matplotlib.colors import LinearSegmentedColormap, to_hex

from backspring.picture import palette, svg
from backspring.picture.position_panel import PanelView, pivot_radius_mm
from backspring.picture.subject import pins_mm
from backspring.picture.svg import Points
from backspring.report.display import STYLES, reading
from backspring.units import System

_MARGIN_PX = 12.0
_HEAD_PX = 46.0
_KEY_PX = 24.0
_PIECES = 60
_SHADES = LinearSegmentedColormap.from_list(
    "stress", ["#F7F7F7", palette.ORANGE, palette.VERMILLION]
)
# One shade for each twentieth of the yield stress.
_COLORS = [to_hex(_SHADES(share)) for share in np.linspace(0.0, 1.0, 21)]


@dataclass(frozen=True)
class Frame:
    """A window that stays where it is while sizes change."""

    left_mm: float
    high_mm: float
    px_a_mm: float
    height_px: float

    def place(self, points: Points) -> Points:
        """Put places in mm on the drawing."""
        x, y = np.atleast_2d(points).T
        return np.column_stack(
            (
                _MARGIN_PX + (x - self.left_mm) * self.px_a_mm,
                _HEAD_PX + (self.high_mm - y) * self.px_a_mm,
            )
        )


def frame_of(views: list[PanelView], width_px: float) -> Frame:
    """Fit a window to all that some views show."""
    corners = np.array([view.corners() for view in views])
    left, low = corners[:, [0, 2]].min(axis=0)
    right, high = corners[:, [1, 3]].max(axis=0)
    scale = (width_px - 2.0 * _MARGIN_PX) / float(right - left)
    height = _HEAD_PX + float(high - low) * scale + _KEY_PX
    return Frame(float(left), float(high), scale, height)


def joint_parts(view: PanelView, frame: Frame, yield_mpa: float, system: System) -> Iterator[str]:
    """Draw all parts, then the words."""
    design, tang = view.design, view.tang
    yield svg.polygon(frame.place(tang.blade), fill=palette.BLADE, stroke=palette.MUTED)
    for piece in (tang.kick, tang.body):
        if piece is not None:
            yield svg.polygon(frame.place(piece), fill=palette.TANG, stroke=palette.INK)
    yield from _spring_parts(view, frame, yield_mpa)
    holes = {hole.center_mm: hole for hole in design.spring.holes}
    for x in pins_mm(design):
        hole = holes.get(x)
        y = view.spring.height_at(x, 0.5) + (hole.offset_mm if hole else 0.0)
        yield _circle(frame, x, y, 0.5 * hole.diameter_mm if hole else 0.4)
    yield _circle(frame, design.tang.pivot_mm, 0.0, pivot_radius_mm(design))
    for touch in view.touches:
        ((x, y),) = frame.place(np.array([touch.x_mm, touch.height_mm]))
        yield svg.circle(x, y, 4.0, fill=palette.VERMILLION, stroke="white")
    yield svg.words(_MARGIN_PX, 20.0, _said(view, system))
    yield from _key(frame)


def _said(view: PanelView, system: System) -> str:
    styles = STYLES[system]
    forces = " and ".join(styles["force"].text(touch.force_n) for touch in view.touches)
    dial = reading(view.reading_mm, system).replace(" ", f" {styles['reading'].unit} ")
    return (
        f"blade at {styles['angle'].text(view.blade_angle_deg)}: the tang presses with "
        f"{forces or 'nothing, it is loose'}; dial: {dial}"
    )


def _spring_parts(view: PanelView, frame: Frame, yield_mpa: float) -> Iterator[str]:
    """Shade the spring by its worse fibre, as a share of the yield stress."""
    spring = view.spring
    at = np.unique(np.linspace(0, spring.station_mm.size - 1, _PIECES + 1).astype(int))
    worst = np.maximum(np.abs(spring.back_stress_mpa), np.abs(spring.belly_stress_mpa))
    back = frame.place(np.column_stack((spring.station_mm, spring.back_mm)))
    belly = frame.place(np.column_stack((spring.station_mm, spring.face_mm)))
    for start, end in zip(at, at[1:], strict=False):
        piece = np.concatenate((back[start : end + 1], belly[start : end + 1][::-1]))
        share = min(float(worst[start : end + 1].max()) / yield_mpa, 1.0)
        color = _COLORS[round(share * (len(_COLORS) - 1))]
        yield svg.polygon(piece, fill=color, stroke=color, width=0.5)
    yield svg.polygon(np.concatenate((back, belly[::-1])), fill="none", stroke=palette.INK)


def _circle(frame: Frame, x_mm: float, y_mm: float, radius_mm: float) -> str:
    ((x, y),) = frame.place(np.array([x_mm, y_mm]))
    return svg.circle(x, y, radius_mm * frame.px_a_mm, fill="white", stroke=palette.INK)


def _key(frame: Frame) -> Iterator[str]:
    """Show what the shades mean."""
    y, width = frame.height_px - 18.0, 8.0
    yield svg.words(_MARGIN_PX, y + 10.0, "stress: 0")
    left = _MARGIN_PX + 62.0
    for place, color in enumerate(_COLORS):
        x = left + width * place
        box = np.array([[x, y], [x + width, y], [x + width, y + 10.0], [x, y + 10.0]])
        yield svg.polygon(box, fill=color)
    yield svg.words(left + width * len(_COLORS) + 6.0, y + 10.0, "yield and above")
