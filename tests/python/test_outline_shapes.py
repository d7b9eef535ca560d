"""Lines, arcs, hulls and offsets of outlines, against closed forms."""

from __future__ import annotations

import cmath
import math
from collections.abc import Callable

import pytest
from scipy.special import ellipe

from backspring.outline.chain import Chain, Piece, Vertex, closed_chain
from backspring.outline.curves import TOLERANCE_MM, arcs_of, distance_mm
from backspring.outline.hull import hull
from backspring.outline.offset import offset

QUARTER = math.tan(math.pi / 8.0)
ROUNDED = closed_chain(
    [
        Vertex(1 + 0j), Vertex(9 + 0j, QUARTER), Vertex(10 + 1j), Vertex(10 + 5j, QUARTER),
        Vertex(9 + 6j), Vertex(1 + 6j, QUARTER), Vertex(0 + 5j), Vertex(0 + 1j, QUARTER),
    ]
)  # fmt: skip
HOLLOW = closed_chain(
    [Vertex(0j), Vertex(6 + 0j), Vertex(6 + 2j), Vertex(2 + 2j), Vertex(2 + 6j), Vertex(6j)]
)


def test_a_rectangle_with_round_corners_has_its_area_and_length() -> None:
    assert ROUNDED.area_mm2 == pytest.approx(60.0 - (4.0 - math.pi), rel=1e-14)
    assert ROUNDED.length_mm == pytest.approx(24.0 + math.tau, rel=1e-14)


def test_a_line_across_meets_arcs_and_lines() -> None:
    drop = 1.0 - math.sqrt(0.75)
    assert ROUNDED.heights_mm(0.5) == pytest.approx([drop, 6.0 - drop], abs=1e-14)
    assert ROUNDED.heights_mm(5.0) == [0.0, 6.0]


def test_an_outline_drawn_the_other_way_round_is_the_same() -> None:
    backwards = [Vertex(piece.end_mm, -piece.bulge) for piece in reversed(ROUNDED.pieces)]
    assert closed_chain(backwards).area_mm2 == pytest.approx(ROUNDED.area_mm2, rel=1e-14)


@pytest.mark.parametrize("by_mm", [0.1, 2.0, -0.4])
def test_a_convex_outline_moved_out_gains_what_steiner_says(by_mm: float) -> None:
    # Steiner's formula, area + length k + pi k^2: from memory.
    moved = offset(ROUNDED, by_mm)
    expected = ROUNDED.area_mm2 + ROUNDED.length_mm * by_mm + math.pi * by_mm**2
    assert moved.area_mm2 == pytest.approx(expected, rel=1e-13)
    assert moved.length_mm == pytest.approx(ROUNDED.length_mm + math.tau * by_mm, rel=1e-13)


def test_a_hollow_corner_stays_sharp_and_those_that_stand_out_become_round() -> None:
    # Five corners gain a quarter disc each, the hollow one loses a square.
    expected = 20.0 + 0.5 * 24.0 + 5.0 * math.pi / 16.0 - 0.25
    assert offset(HOLLOW, 0.5).area_mm2 == pytest.approx(expected, rel=1e-14)


def test_a_hollow_narrower_than_the_cut_is_refused_with_its_place() -> None:
    notch = closed_chain(
        [Vertex(0j), Vertex(10 + 0j), Vertex(10 + 5j), Vertex(5.5 + 5j), Vertex(5.5 + 3j, -1.0),
         Vertex(4.5 + 3j), Vertex(4.5 + 5j), Vertex(5j)]
    )  # fmt: skip
    with pytest.raises(ValueError, match=r"hollow at \(5\.000, 2\.500\) is too narrow"):
        offset(notch, 0.6)


def test_the_hull_of_a_hollow_outline_bridges_the_hollow() -> None:
    corners = [arc.center_mm for arc in hull(HOLLOW)]
    assert {*corners} == {0j, 6 + 0j, 6 + 2j, 2 + 6j, 6j}
    turns = [
        (b - a).conjugate() * (c - b)
        for a, b, c in zip(corners, corners[1:], corners[2:], strict=False)
    ]
    assert all(turn.imag > 0.0 for turn in turns)


def test_the_hull_takes_every_direction_once() -> None:
    arcs = hull(ROUNDED)
    assert [arc.radius_mm for arc in arcs] == pytest.approx([1.0] * 4)
    assert arcs[0].from_rad == 0.0
    assert arcs[-1].to_rad == pytest.approx(math.tau)
    assert all(a.to_rad == b.from_rad for a, b in zip(arcs, arcs[1:], strict=False))


def _ellipse(share: float) -> complex:
    return complex(10.0 * math.cos(0.5 * math.pi * share), 4.0 * math.sin(0.5 * math.pi * share))


def _bezier(share: float) -> complex:
    t, s = share, 1.0 - share
    return 3.0 * s * s * t * 5j + 3.0 * s * t * t * (10.0 - 5j) + t**3 * 10.0


def _spiral(share: float) -> complex:
    return (1.0 + share) * cmath.exp(5j * share)


@pytest.mark.parametrize("curve", [_ellipse, _bezier, _spiral])
def test_arcs_keep_to_a_curve_and_meet_without_a_kink(curve: Callable[[float], complex]) -> None:
    pieces = arcs_of(curve)
    assert max(distance_mm(pieces, curve(i / 500)) for i in range(501)) <= TOLERANCE_MM
    turns = [
        abs(cmath.phase(b.direction(0.0) / a.direction(1.0)))
        for a, b in zip(pieces, pieces[1:], strict=False)
    ]
    assert max(turns) < 1e-5


def test_the_arcs_of_an_ellipse_are_as_long_as_it_is() -> None:
    # Length by the complete elliptic integral of the second kind, as SciPy has it.
    length = sum(piece.length_mm for piece in arcs_of(_ellipse))
    assert length == pytest.approx(10.0 * ellipe(1.0 - 0.16), rel=2e-5)


def test_a_straight_curve_is_lines() -> None:
    assert all(piece.bulge == 0.0 for piece in arcs_of(lambda share: complex(3.0 * share, share)))


def test_an_arc_knows_its_middle() -> None:
    half = Piece(1 + 0j, -1 + 0j, 1.0)
    assert half.point_mm(0.5) == pytest.approx(1j)
    assert half.length_mm == pytest.approx(math.pi)


def test_corners_that_coincide_are_one() -> None:
    chain = closed_chain([Vertex(0j), Vertex(0j), Vertex(2 + 0j), Vertex(2 + 1j), Vertex(1j)])
    assert isinstance(chain, Chain)
    assert len(chain.vertices) == 4
