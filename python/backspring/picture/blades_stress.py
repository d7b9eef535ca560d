"""Bending stress along a spring that several blades share."""

from __future__ import annotations

from collections.abc import Iterator

from matplotlib.axes import Axes

from backspring import _core
from backspring.picture import palette
from backspring.picture.chart import new_chart
from backspring.picture.mounting import Mounting, mounting
from backspring.picture.stress import Column, draw_limits, outer_stress_mpa
from backspring.question.check import BladesCheck
from backspring.report.display import STYLES
from backspring.units import System

Curve = tuple[str, palette.Line, Column, Column]
_OPEN_DEG = 180.0


def blades_stress(
    check: BladesCheck, ax: Axes | None = None, *, units: System | None = None
) -> Axes:
    """Draw bending stress against the first blade's stations.

    With all blades closed and all open, and at the worst of each blade's travel. Shown is the size
    of the stress in the outer fibre of back or belly, whichever is worse. `units` are the design's
    own when left out.
    """
    styles = STYLES[units or check.design.units]
    stress, length = styles["stress"], styles["length"]
    ax = new_chart(check.design.name)[1] if ax is None else ax
    for label, line, station, outer in stress_curves(check):
        ax.plot(
            station / length.size,
            outer / stress.size,
            line.style,
            color=line.color,
            lw=line.width,
            label=label,
        )
    peak = max(row.travel.peak_stress_mpa for each in check.blades.values() for row in each.beside)
    draw_limits(ax, check.design.core, peak, stress, length, columns=2)
    return ax


def stress_curves(check: BladesCheck) -> Iterator[Curve]:
    """Name, line, stations [mm] and stress [MPa] of each curve."""
    core = check.design.core
    mounted = {name: mounting(core, at) for at, name in enumerate(check.blades)}
    first, of_first = next(iter(check.blades.items()))
    cases = _core.cases(core)
    if "closed" in of_first.positions:
        angle = of_first.positions["closed"].blade_angle_deg
        line = palette.STRESS_LINES["closed"]
        yield "all closed", line, *_stress(mounted[first], cases[0], angle)
    yield "all open", palette.STRESS_LINES["open"], *_stress(mounted[first], cases[-1], _OPEN_DEG)
    for (name, each), line in zip(check.blades.items(), palette.worst_lines(), strict=False):
        seen = _core.cases(mounted[name].design)
        worst = max(range(len(seen)), key=lambda at: each.beside[at].travel.peak_stress_mpa)
        row = each.beside[worst]
        angle = row.travel.peak_stress_angle_deg
        label = f"worst, {name} at {angle:.0f} deg"
        yield label, line, *_stress(mounted[name], seen[worst], angle)


def _stress(mounted: Mounting, case: _core.Design, angle_deg: float) -> tuple[Column, Column]:
    station, outer = outer_stress_mpa(case, angle_deg)
    return mounted.station(station), outer
