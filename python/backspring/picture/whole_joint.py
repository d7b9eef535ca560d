"""A spring with two blades, drawn to scale under both tangs and coloured by bending stress."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
from matplotlib.axes import Axes
from matplotlib.cm import ScalarMappable
from matplotlib.colors import Normalize
from matplotlib.figure import Figure

from backspring import _core
from backspring.design.design import Design
from backspring.picture import palette
from backspring.picture.canvas import Picture
from backspring.picture.position_panel import draw_cross, draw_spring, draw_tang, pivot_radius_mm
from backspring.picture.spring_shape import SpringShape
from backspring.picture.tang_shape import Points, TangShape, tang_shape
from backspring.question.check_two import TwoCheck, check_two, two_blades_of
from backspring.report.display import STYLES, reading
from backspring.units import System

_SPACING_MM = 0.2
_BAR_IN = 0.75
_HEADROOM_IN = 0.7
_FOOT_IN = 0.06
_TOP_IN = 0.08
_MARGIN_IN = 0.18
_PIN_SHARE = 0.25
_PAIRS = (("closed", "closed"), ("open", "closed"), ("closed", "open"), ("open", "open"))


@dataclass(frozen=True)
class _End:
    """One blade in a panel; places as the first blade counts, heights from the level face."""

    design: _core.Design
    contact: _core.Contact
    position: _core.Position
    tang: TangShape
    span_mm: float
    mirrored: bool

    def place(self, points: Points) -> Points:
        """Put places of this end's own frame into the picture's: small slopes, so heights shift."""
        design = self.design
        slope = -design.fit.preload_mm / design.tang.pivot_mm
        x, y = np.atleast_2d(points).T
        height = y - design.tang.open_mm - slope * x
        return np.column_stack((-self.span_mm - x if self.mirrored else x, height))

    def outline(self) -> TangShape:
        """Tang and blade in the picture."""
        kick = None if self.tang.kick is None else self.place(self.tang.kick)
        return TangShape(self.place(self.tang.body), kick, self.place(self.tang.blade))


@dataclass(frozen=True)
class _Panel:
    name: str
    ends: tuple[_End, _End]
    spring: SpringShape

    def corners(self) -> tuple[float, float, float, float]:
        """Least x, greatest x, least y, greatest y of all that is drawn [mm]."""
        shapes = [end.outline() for end in self.ends]
        points = [part for shape in shapes for part in (shape.body, shape.blade)]
        x = np.concatenate([self.spring.station_mm, *(each[:, 0] for each in points)])
        y = np.concatenate([self.spring.back_mm, *(each[:, 1] for each in points)])
        return float(x.min()), float(x.max()), float(y.min()), float(y.max())


def two_blades(check_or_design: TwoCheck | Design, *, units: System | None = None) -> Figure:
    """Draw the spring under both tangs: all pairs of open and closed, one under the other.

    The free working face is drawn level, so each tang stands tilted by its end's preload. Colour
    is bending stress, tension positive. The blades are invented stubs.
    """
    given = check_or_design
    check = given if isinstance(given, TwoCheck) else check_two(given)
    system = units or check.design.units
    panels = list(_panels(check))
    corners = np.array([panel.corners() for panel in panels])
    left, right = float(corners[:, 0].min()), float(corners[:, 1].max())
    mm_an_inch = (right - left) / (palette.WIDTH_IN - 2.0 * _MARGIN_IN)
    heights = [(high - low) / mm_an_inch + _HEADROOM_IN + _FOOT_IN for _, _, low, high in corners]
    total = _TOP_IN + sum(heights) + _BAR_IN
    figure = Picture(figsize=(palette.WIDTH_IN, total), dpi=palette.DPI)
    norm = _shared_norm(panels, STYLES[system]["stress"].size)
    top = total - _TOP_IN
    for panel, height, corner in zip(panels, heights, corners, strict=True):
        top -= height
        width = palette.WIDTH_IN - 2.0 * _MARGIN_IN
        box = (_MARGIN_IN / palette.WIDTH_IN, top / total, width / palette.WIDTH_IN, height / total)
        ax = figure.add_axes(box)
        ax.set_axis_off()
        ax.set_xlim(left, right)
        foot = corner[2] - _FOOT_IN * mm_an_inch
        ax.set_ylim(foot, foot + height * mm_an_inch)
        _draw(ax, panel, system, norm)
    _add_color_bar(figure, total, norm, system)
    return figure


def _panels(check: TwoCheck) -> Iterator[_Panel]:
    two = two_blades_of(check.design)
    support = two.first.spring.support
    span = support.rear_pin_mm if support.kind == _core.SupportKind.two_pins else 0.0
    for own, other in _PAIRS:
        first = check.first[other].positions.get(own)
        second = check.second[own].positions.get(other)
        if first is None or second is None:
            continue
        angles = first.blade_angle_deg, second.blade_angle_deg
        both = _core.two_contacts_at(two, *angles)
        along = _core.spring_along_two(two, *angles, _SPACING_MM)
        designs = two.first, _core.second_end(two)
        ends = (
            _End(designs[0], both.first, first, tang_shape(designs[0], angles[0]), span, False),
            _End(designs[1], both.second, second, tang_shape(designs[1], angles[1]), span, True),
        )
        shape = SpringShape(
            along.station_mm,
            along.deflection_mm,
            along.thickness_mm,
            along.back_stress_mpa,
            along.belly_stress_mpa,
        )
        yield _Panel(f"first {own}, second {other}", ends, shape)


def _shared_norm(panels: list[_Panel], stress_unit_mpa: float) -> Normalize:
    springs = [panel.spring for panel in panels]
    columns = [c for s in springs for c in (s.back_stress_mpa, s.belly_stress_mpa)]
    limit = max((float(np.abs(column).max()) for column in columns), default=0.0)
    return Normalize(-limit / stress_unit_mpa, limit / stress_unit_mpa) if limit else Normalize()


def _draw(ax: Axes, panel: _Panel, system: System, norm: Normalize) -> None:
    for end in panel.ends:
        draw_tang(ax, end.outline())
    draw_spring(ax, panel.spring, STYLES[system]["stress"].size, norm)
    for end in panel.ends:
        ((x, y),) = end.place(np.array([end.design.tang.pivot_mm, 0.0]))
        draw_cross(ax, x, y, pivot_radius_mm(end.design))
        _draw_forces(ax, end, panel.spring, system)
    _draw_pins(ax, panel)
    ax.text(0.5, 1.0, panel.name, transform=ax.transAxes, ha="center", va="top",
            fontsize=palette.LARGE, fontweight="bold")  # fmt: skip


def _draw_forces(ax: Axes, end: _End, spring: SpringShape, system: System) -> None:
    """Draw an arrow where the tang bears, and write force and reading beside it."""
    style = STYLES[system]
    places = [touch.x_mm for touch in end.contact.touches[: end.contact.count]]
    for x_mm in places:
        x = -end.span_mm - x_mm if end.mirrored else x_mm
        foot, top = spring.height_at(x, 0.0), spring.height_at(x, 1.0)
        ax.plot(x, foot, "o", ms=5.5, mfc=palette.VERMILLION, mec="white", zorder=6)
        arrow = {"arrowstyle": "<|-", "color": palette.VERMILLION, "lw": 1.5, "shrinkB": 0}
        ax.annotate("", (x, top), xytext=(0.0, 20.0), textcoords="offset points", arrowprops=arrow)
    x = end.design.tang.pivot_mm
    x = -end.span_mm - x if end.mirrored else x
    unit = style["reading"].unit
    said = reading(end.position.reading_loaded_mm, system).replace(" ", f" {unit} ")
    force = style["force"].text(end.position.force_n)
    ax.annotate(
        f"{end.position.name} at {end.position.blade_angle_deg:.1f} deg\n{force}, dial: {said}",
        (x, spring.height_at(x, 1.0)),
        xytext=(0.0, 24.0),
        textcoords="offset points",
        ha="center",
        fontsize=palette.SMALL,
        zorder=7,
    )


def _draw_pins(ax: Axes, panel: _Panel) -> None:
    span = panel.ends[0].span_mm
    holes = {hole.center_mm: hole for hole in panel.ends[0].design.spring.holes}
    for station in {0.0, -span}:
        low, high = panel.spring.height_at(station, 0.0), panel.spring.height_at(station, 1.0)
        radius, offset = _PIN_SHARE * (high - low), 0.0
        if station in holes:
            radius, offset = 0.5 * holes[station].diameter_mm, holes[station].offset_mm
        draw_cross(ax, station, 0.5 * (low + high) + offset, radius)


def _add_color_bar(figure: Figure, total_in: float, norm: Normalize, system: System) -> None:
    axes = figure.add_axes((0.25, 0.48 / total_in, 0.5, 0.13 / total_in))
    mappable = ScalarMappable(norm, palette.STRESS_MAP)
    bar = figure.colorbar(mappable, cax=axes, orientation="horizontal")
    unit = STYLES[system]["stress"].unit
    bar.set_label(
        f"bending stress [{unit}]: + tension, - compression", fontsize=palette.NORMAL, labelpad=2
    )
    bar.ax.tick_params(labelsize=palette.SMALL)
