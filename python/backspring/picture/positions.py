"""The spring in every position, drawn to scale and coloured by bending stress."""

from __future__ import annotations

from typing import overload

import numpy as np
from matplotlib.axes import Axes
from matplotlib.cm import ScalarMappable
from matplotlib.colors import Normalize
from matplotlib.figure import Figure, SubFigure

from backspring.design.design import Design
from backspring.picture import palette
from backspring.picture.canvas import Picture
from backspring.picture.position_forces import write_force_and_dial
from backspring.picture.position_layout import Box, Layout, make_layout
from backspring.picture.position_panel import PanelView, between_view, draw_parts, rest_views
from backspring.picture.position_words import (
    write_faces,
    write_heading,
    write_parts,
    write_scale,
    write_width,
)
from backspring.picture.spring_shape import SpringShape
from backspring.picture.subject import (
    NAME_IN,
    as_check,
    pins_mm,
    rear_pad_mm,
    write_name,
)
from backspring.question.check import Check
from backspring.report.display import STYLES
from backspring.units import System


@overload
def positions(
    check_or_design: Check | Design,
    fig: Figure | None = None,
    *,
    units: System | None = None,
    blade_angle_deg: float | None = None,
) -> Figure: ...
@overload
def positions(
    check_or_design: Check | Design,
    fig: SubFigure,
    *,
    units: System | None = None,
    blade_angle_deg: float | None = None,
) -> SubFigure: ...
def positions(
    check_or_design: Check | Design,
    fig: Figure | SubFigure | None = None,
    *,
    units: System | None = None,
    blade_angle_deg: float | None = None,
) -> Figure | SubFigure:
    """Draw the spring, the tang and both pins at every rest, one under the other.

    With a blade angle, only there. Colour is bending stress, tension positive, in a straight line
    from belly to back. The blade is an invented stub. `units` are the design's own when left out.
    Returns the figure, a new one when none is given.
    """
    check = as_check(check_or_design)
    system = units or check.design.units
    views = _views(check, blade_angle_deg)
    layout = make_layout(views, palette.WIDTH_IN if fig is None else fig.bbox.width / fig.dpi)
    name_in = 0.0
    if fig is None:
        name_in = NAME_IN
        fig = Picture(figsize=(layout.width_in, name_in + layout.total_in()), dpi=palette.DPI)
        write_name(fig, check.design.title)
    height_in = fig.bbox.height / fig.dpi - name_in
    norm = shared_norm([view.spring for view in layout.views], STYLES[system]["stress"].size)
    for view, box in zip(layout.views, layout.boxes(height_in), strict=True):
        _draw_panel(add_axes(fig, box), layout, view, system, norm)
    add_color_bar(fig, layout.bar_box(height_in), norm, system)
    return fig


def _views(check: Check, blade_angle_deg: float | None) -> list[PanelView]:
    return rest_views(check) if blade_angle_deg is None else [between_view(check, blade_angle_deg)]


def add_axes(fig: Figure | SubFigure, box: Box) -> Axes:
    """Put axes into a place of the figure."""
    width_in, height_in = fig.bbox.width / fig.dpi, fig.bbox.height / fig.dpi
    return fig.add_axes(
        (
            box.left_in / width_in,
            box.low_in / height_in,
            box.width_in / width_in,
            box.height_in / height_in,
        )
    )


def shared_norm(springs: list[SpringShape], stress_unit_mpa: float) -> Normalize:
    """Find one scale for all panels, even on both sides of 0."""
    stresses = [
        column for each in springs for column in (each.back_stress_mpa, each.belly_stress_mpa)
    ]
    limit = max(float(np.abs(stress).max()) for stress in stresses) / stress_unit_mpa
    return Normalize(-limit, limit) if limit > 0.0 else Normalize(-1.0, 1.0)


def _draw_panel(ax: Axes, layout: Layout, view: PanelView, system: System, norm: Normalize) -> None:
    ax.set_axis_off()
    ax.set_aspect("equal")
    ax.set_xlim(*layout.x_reach_mm())
    ax.set_ylim(*layout.y_reach_mm(view))
    draw_parts(ax, view, STYLES[system]["stress"].size, norm)
    write_heading(ax, view)
    write_force_and_dial(ax, view, system, layout.mm_an_inch)
    write_faces(ax, view, layout.mm_an_inch)
    if view is layout.views[0]:
        write_parts(ax, view)
    if view is layout.views[-1]:
        left_mm = _scale_mm(layout, view)
        write_scale(ax, left_mm, layout.mm_an_inch, system)
        write_width(ax, view.design.spring, left_mm, layout.mm_an_inch, system)
    for artist in ax.get_children():
        artist.set_clip_on(False)


def _scale_mm(layout: Layout, view: PanelView) -> float:
    """Where the scale begins: on the left, or under the pins where a tang hangs there."""
    return layout.left_mm if rear_pad_mm(view.design) is None else min(pins_mm(view.design))


def add_color_bar(fig: Figure | SubFigure, box: Box, norm: Normalize, system: System) -> None:
    """Put the scale of the stress colours into a place of the figure."""
    bar = fig.colorbar(
        ScalarMappable(norm, palette.STRESS_MAP), cax=add_axes(fig, box), orientation="horizontal"
    )
    unit = STYLES[system]["stress"].unit
    bar.set_label(
        f"bending stress [{unit}]: + tension, - compression", fontsize=palette.NORMAL, labelpad=2
    )
    bar.ax.tick_params(labelsize=palette.SMALL)
