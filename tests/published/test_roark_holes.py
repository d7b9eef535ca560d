"""W. C. Young, Roark's Formulas for Stress and Strain, table 17.1: hole through a bar that bends.

Bar of depth D and width t, hole of radius r on the mid-line, moment M in the plane of D. The
formula for the outer fibre was read, 6 M D/{t [D^3 - (2 r)^3]}; its figures are derived to 8
digits, hence 1e-8. The table's other value is the edge of the hole, twice its nominal stress
12 M r/{t [D^3 - (2 r)^3]}.

The same table's hole in tension: polynomial read, figures evaluated to 5 decimals; one worked plate
(D = 7 in, r = 1 in, 4000 psi on the net section) is printed with 9475 psi.

A hole off the mid-line: derived, as the two strips that are left, about their common centroid.
"""

import pytest

from agreement import Agree
from backspring import _core as core
from stations import stations

CASES = [
    (6.0, 2.0, 0.75, 1000.0, 84.656085, 83.333333),
    (10.0, 3.0, 2.0, 5000.0, 106.837607, 100.0),
]


@pytest.mark.parametrize(("depth", "width", "radius", "moment", "pierced", "whole"), CASES)
def test_outer_fibre_at_a_hole_on_the_mid_line(
    agree: Agree,
    depth: float,
    width: float,
    radius: float,
    moment: float,
    pierced: float,
    whole: float,
) -> None:
    net = core.make_section(width, depth, 2.0 * radius)
    agree(
        f"depth {depth:g} mm, outer fibre beside the hole [MPa]",
        moment * core.outer_stress_per_moment(net),
        pierced,
        rel=1e-8,
    )
    full = core.make_section(width, depth)
    agree(
        f"depth {depth:g} mm, outer fibre without a hole [MPa]",
        moment * core.outer_stress_per_moment(full),
        whole,
        rel=1e-8,
    )


@pytest.mark.parametrize(("depth", "width", "radius", "moment", "pierced", "whole"), CASES)
def test_outer_fibre_along_a_pierced_spring(
    agree: Agree,
    depth: float,
    width: float,
    radius: float,
    moment: float,
    pierced: float,
    whole: float,
) -> None:
    """The hole's centre sees the net section, the station just beside the hole the full one."""
    center, reach = 20.0, 40.0
    spring = core.Spring(
        thickness=stations([(0.0, depth), (reach, depth)]),
        width_mm=width,
        support=core.Support(kind=core.SupportKind.clamped),
        holes=[core.Hole(center_mm=center, diameter_mm=2.0 * radius)],
    )

    def stress(x_mm: float) -> float:
        load = core.Load(x_mm=reach, force_n=moment / (reach - x_mm))
        return core.fibre_stress(spring, [load], x_mm).belly_mpa

    agree(f"spring of {depth:g} mm, stress at the hole [MPa]", stress(center), pierced, rel=1e-8)
    agree(
        f"spring of {depth:g} mm, stress just beside it [MPa]",
        stress(center + radius),
        whole,
        rel=1e-8,
    )


@pytest.mark.parametrize(
    ("depth", "width", "radius", "moment", "nominal", "edge"),
    [
        (6.0, 2.0, 0.75, 1000.0, 21.164021, 42.328042),
        (10.0, 3.0, 2.0, 5000.0, 42.735043, 85.470085),
    ],
)
def test_edge_of_a_hole_on_the_mid_line(
    agree: Agree,
    depth: float,
    width: float,
    radius: float,
    moment: float,
    nominal: float,
    edge: float,
) -> None:
    hole = core.Hole(center_mm=0.0, diameter_mm=2.0 * radius)
    found = core.hole_edge_stress(depth, width, hole, moment)
    agree(
        f"depth {depth:g} mm, nominal stress at the hole's edge [MPa]",
        found.nominal_mpa,
        nominal,
        rel=2e-8,
    )
    agree(f"depth {depth:g} mm, stress at the hole's edge [MPa]", found.local_mpa, edge, rel=2e-8)


@pytest.mark.parametrize(("ratio", "governs"), [(0.45, "face"), (0.55, "edge")])
def test_edge_governs_where_the_hole_is_wider_than_half_the_depth(
    agree: Agree, ratio: float, governs: str
) -> None:
    depth, width, moment = 4.0, 2.0, 1000.0
    hole = core.Hole(center_mm=0.0, diameter_mm=ratio * depth)
    edge = core.hole_edge_stress(depth, width, hole, moment).local_mpa
    net = core.make_section(width, depth, hole.diameter_mm)
    face = moment * core.outer_stress_per_moment(net)
    assert governs == ("edge" if edge > face else "face")
    # The two are as 2 d to D.
    agree(f"edge over face, hole {ratio:g} of the depth", edge / face, 2.0 * ratio, rel=1e-12)


@pytest.mark.parametrize(
    ("ratio", "factor"),
    [(0.1, 2.72207), (0.2, 2.50816), (0.3, 2.34909), (0.5, 2.15875), (0.0, 3.0)],
)
def test_hole_in_tension(agree: Agree, ratio: float, factor: float) -> None:
    agree(
        f"hole in tension, factor at d/D {ratio:g}",
        core.hole_tension_factor(ratio),
        factor,
        abs=5e-6,
    )


def test_worked_plate_with_a_hole_in_tension(agree: Agree) -> None:
    agree(
        "worked plate with a hole in tension [psi]",
        4000.0 * core.hole_tension_factor(2.0 / 7.0),
        9475.0,
        abs=0.5,
    )


@pytest.mark.parametrize("offset", [-0.9, -0.2, 0.0, 0.4, 1.1])
def test_section_with_a_hole_off_the_mid_line(agree: Agree, offset: float) -> None:
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
    agree(f"hole {offset:g} mm off the mid-line, area [mm2]", net.area_mm2, area, rel=1e-12)
    agree(
        f"hole {offset:g} mm off the mid-line, inertia [mm4]", net.inertia_mm4, inertia, rel=1e-12
    )
    agree(
        f"hole {offset:g} mm off the mid-line, centroid to back [mm]",
        net.back_mm,
        depth / 2.0 - centroid,
        rel=1e-12,
    )
    agree(
        f"hole {offset:g} mm off the mid-line, centroid to belly [mm]",
        net.belly_mm,
        depth / 2.0 + centroid,
        rel=1e-12,
    )
