"""W. C. Young, Roark's Formulas for Stress and Strain, table 17.1: hole through a bar that bends.

Bar of depth D and width t, hole of radius r on the mid-line, moment M in the plane of D. The
formula for the outer fibre was read, 6 M D/{t [D^3 - (2 r)^3]}; its figures are derived to 8
digits, hence 1e-8. The table's other value, the edge of the hole, needs a notch factor, which the
library leaves out.

A hole off the mid-line: derived, as the two strips that are left, about their common centroid.
"""

import pytest

from backspring import _core as core

CASES = [
    (6.0, 2.0, 0.75, 1000.0, 84.656085, 83.333333),
    (10.0, 3.0, 2.0, 5000.0, 106.837607, 100.0),
]


@pytest.mark.parametrize(("depth", "width", "radius", "moment", "pierced", "whole"), CASES)
def test_outer_fibre_at_a_hole_on_the_mid_line(
    depth: float, width: float, radius: float, moment: float, pierced: float, whole: float
) -> None:
    net = core.make_section(width, depth, 2.0 * radius)
    assert moment * core.outer_stress_per_moment(net) == pytest.approx(pierced, rel=1e-8)
    full = core.make_section(width, depth)
    assert moment * core.outer_stress_per_moment(full) == pytest.approx(whole, rel=1e-8)


@pytest.mark.parametrize(("depth", "width", "radius", "moment", "pierced", "whole"), CASES)
def test_outer_fibre_along_a_pierced_spring(
    depth: float, width: float, radius: float, moment: float, pierced: float, whole: float
) -> None:
    """The hole's centre sees the net section, the station just beside the hole the full one."""
    center, reach = 20.0, 40.0
    spring = core.Spring(
        thickness=[(0.0, depth), (reach, depth)],
        width_mm=width,
        support=core.Support(kind=core.SupportKind.clamped),
        holes=[core.Hole(center_mm=center, diameter_mm=2.0 * radius)],
        pad=core.Pad(start_mm=36.0, end_mm=reach),
    )

    def stress(x_mm: float) -> float:
        load = core.Load(x_mm=reach, force_n=moment / (reach - x_mm))
        return core.fibre_stress(spring, [load], x_mm).belly_mpa

    assert stress(center) == pytest.approx(pierced, rel=1e-8)
    assert stress(center + radius) == pytest.approx(whole, rel=1e-8)


@pytest.mark.parametrize("offset", [-0.9, -0.2, 0.0, 0.4, 1.1])
def test_section_with_a_hole_off_the_mid_line(offset: float) -> None:
    width, depth, chord = 2.5, 4.0, 1.6
    # Strips outside and inside of the hole: height, and centroid from the mid-line.
    above = (depth / 2.0 - offset - chord / 2.0, (depth / 2.0 + offset + chord / 2.0) / 2.0)
    below = (depth / 2.0 + offset - chord / 2.0, (offset - chord / 2.0 - depth / 2.0) / 2.0)
    area = width * (above[0] + below[0])
    centroid = width * (above[0] * above[1] + below[0] * below[1]) / area
    inertia = sum(
        width * height**3 / 12.0 + width * height * (middle - centroid) ** 2
        for height, middle in (above, below)
    )
    net = core.make_section(width, depth, chord, offset)
    assert net.area_mm2 == pytest.approx(area, rel=1e-12)
    assert net.inertia_mm4 == pytest.approx(inertia, rel=1e-12)
    assert net.back_mm == pytest.approx(depth / 2.0 - centroid, rel=1e-12)
    assert net.belly_mm == pytest.approx(depth / 2.0 + centroid, rel=1e-12)
