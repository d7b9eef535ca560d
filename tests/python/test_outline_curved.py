"""Springs that are curved, stepped or rooted, drawn and read."""

from __future__ import annotations

import cmath
import math
from pathlib import Path

import pytest
from scipy.integrate import quad

import backspring as bs
from backspring import _core
from backspring.outline.chain import Chain, Vertex, closed_chain
from backspring.outline.lean import Lean, lean_of
from backspring.outline.reading import OutlineReading
from backspring.outline.roots import roots_of
from backspring.outline.thickness import Shape, shape_of
from backspring.outline.written import write_template
from outline_pen import VALUES, Pen, demo, numbers

# Invented: a bowed spring whose belly is straight over the pad.
ROWS = [[-38, 3.2], [-4, 3.8], [0, 3.8], [7, 3.1], [27, 2.4], [36.5, 2.5]]
MIDDLE = [[-38, 2.0], [-20, 3.3], [-2, 3.9], [5, 3.8], [17, 2.6], [27, 1.2], [36.5, 1.25]]
BOWED = demo("heron").replace(**{"spring.thickness": ROWS, "spring.mid_line": MIDDLE})


def _heights(core: _core.Design) -> list[float]:
    stations = [-38.0 + 0.5 * i for i in range(150)]
    return [_core.mid_line_mm(core.spring, core.pad, min(x, 36.5)) for x in stations]


@pytest.mark.parametrize("suffix", [".dxf", ".svg"])
def test_a_bowed_spring_drawn_out_and_read_back_is_the_same(suffix: str, tmp_path: Path) -> None:
    path = tmp_path / f"bowed{suffix}"
    write_template(BOWED, path)
    again = bs.read_outline(path, values=VALUES)
    read, drawn = again.design.core, BOWED.core
    assert numbers(read) == pytest.approx(numbers(drawn), rel=0.0, abs=1e-6)
    assert _heights(read) == pytest.approx(_heights(drawn), rel=0.0, abs=1e-6)
    assert bs.check(again.design).stiffness_n_per_mm == pytest.approx(
        bs.check(BOWED).stiffness_n_per_mm, rel=1e-7
    )


def test_a_step_of_the_thickness_comes_back(tmp_path: Path) -> None:
    rows = [[-38, 3.2], [0, 3.8], [12, 3.4], [12, 2.9], [36.5, 2.5]]
    stepped = demo("heron").replace(**{"spring.thickness": rows})
    write_template(stepped, tmp_path / "a.dxf")
    again = bs.read_outline(tmp_path / "a.dxf", values=VALUES).design.core
    assert numbers(again) == pytest.approx(numbers(stepped.core), rel=0.0, abs=1e-6)


def test_a_straight_belly_gets_no_mid_line() -> None:
    shape = Shape(((-38.0, 3.0), (36.0, 3.0)), ((-38.0, 1.5), (36.0, 1.5)))
    assert lean_of(shape, 32.0, 34.0) == Lean(0.0, 0.0, 0.0)
    assert not lean_of(shape, 32.0, 34.0).counts


def test_an_evenly_leaning_mid_line_gives_more_by_its_cosine() -> None:
    # 1/cos^4 all along, as dx/cos bends with t cos.
    rise = math.tan(math.radians(10.0))
    shape = Shape(((-40.0, 3.0), (40.0, 3.0)), ((-40.0, -40.0 * rise), (40.0, 40.0 * rise)))
    lean = lean_of(shape, 32.0, 34.0)
    assert lean.lean_rad == pytest.approx(math.radians(10.0), rel=1e-12)
    assert 1.0 + lean.compliance_share == pytest.approx(math.cos(math.radians(10.0)) ** -4)
    assert lean.counts


def _ring(outer: float, inner: float, half: float) -> Chain:
    """Draw a piece of a ring over its centre, hollow side down."""
    left, right = (1j * cmath.exp(1j * way) for way in (half, -half))
    bulge = math.tan(0.5 * half)
    return closed_chain(
        [
            Vertex(inner * left, -bulge),
            Vertex(inner * right),
            Vertex(outer * right, bulge),
            Vertex(outer * left),
        ]
    )


def test_a_ring_has_the_thickness_and_middle_of_two_circles() -> None:
    shape = shape_of(_ring(63.0, 60.0, 0.4), 22.0, 0.0)

    def outer(x: float) -> float:
        return math.sqrt(63.0**2 - x * x)

    def inner(x: float) -> float:
        return math.sqrt(60.0**2 - x * x)

    for rows, curve in (
        (shape.thickness_mm, lambda x: outer(x) - inner(x)),
        (shape.mid_line_mm, lambda x: 0.5 * (outer(x) + inner(x))),
    ):
        for (x, value), (ahead, there) in zip(rows, rows[1:], strict=False):
            middle = 0.5 * (x + ahead)
            assert abs(0.5 * (value + there) - curve(middle)) < 0.002
    # The share of bending by the integral along the arc, of a ring's true thickness.
    lean = lean_of(shape, 20.0, 20.0)

    def arm(x: float) -> float:
        return 20.0 - abs(x)

    straight = quad(lambda x: arm(x) ** 2 / (outer(x) - inner(x)) ** 3, -20.0, 20.0)[0]
    leaning = quad(
        lambda x: arm(x) ** 2 / (outer(x) - inner(x)) ** 3 * (61.5**2 / (61.5**2 - x * x)) ** 2,
        -20.0,
        20.0,
    )[0]
    assert lean.compliance_share == pytest.approx(leaning / straight - 1.0, rel=0.03)


def _kinked(turn_deg: float) -> tuple[Chain, complex]:
    """Draw a belly that kinks at a corner rounded with 2 mm, + up to the back."""
    corner, ahead = 5.0 + 0j, cmath.exp(1j * math.radians(turn_deg))
    arm = 2.0 * math.tan(0.5 * math.radians(abs(turn_deg)))
    root = Vertex(corner - arm, math.tan(0.25 * math.radians(turn_deg)))
    end = corner + 30.0 * ahead
    places = [end, end + 3j, -40 + 3j]
    belly = [Vertex(-40 + 0j), root, Vertex(corner + arm * ahead)]
    return closed_chain([*belly, *map(Vertex, places)]), corner


def test_the_root_of_a_hollow_kink_is_told_and_drawn_sharp() -> None:
    hollow, corner = _kinked(-10.0)
    roots = roots_of(hollow, (-34.0, 30.0))
    assert roots.kink_radius_mm == pytest.approx(2.0, rel=1e-9)
    assert roots.curve_radius_mm is None
    assert min(abs(v.at_mm - corner) for v in roots.chain.vertices) < 1e-12
    assert len(roots.chain.vertices) == len(hollow.vertices) - 1


def test_a_kink_that_stands_out_has_no_root() -> None:
    assert roots_of(_kinked(10.0)[0], (-34.0, 30.0)).kink_radius_mm is None


def _hollowed(pen: Pen, deep: float) -> None:
    """Draw the belly behind the pad as one shallow arc."""
    vertices = list(pen.outlines.spring.vertices)
    belly = next(i for i, p in enumerate(pen.outlines.spring.pieces)
                 if p.end_mm.real > p.start_mm.real)  # fmt: skip
    length = abs(pen.outlines.spring.pieces[belly].end_mm - vertices[belly].at_mm)
    vertices[belly] = Vertex(vertices[belly].at_mm, -2.0 * deep / length)
    points = [(*pen.place(v.at_mm), v.bulge) for v in vertices]
    pen.space.add_lwpolyline(points, format="xyb", close=True, dxfattribs={"layer": "spring"})
    pen.chain("tang")
    pen.holes("spring", "tang", "liner")


def _read_hollow(deep: float, tmp_path: Path) -> OutlineReading:
    pen = Pen()
    _hollowed(pen, deep)
    return pen.read(tmp_path)


def test_a_hollow_belly_is_stated_by_mid_line_or_by_its_radius(tmp_path: Path) -> None:
    deep = _read_hollow(1.0, tmp_path)
    assert deep.joint.lean.counts
    assert "mid_line = [" in deep.text
    assert "curve_radius" not in deep.text
    shallow = _read_hollow(0.004, tmp_path)
    assert "mid_line = [" not in shallow.text
    assert shallow.joint.lean.belly_off_mm == pytest.approx(0.004, abs=1e-4)
